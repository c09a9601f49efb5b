type Point = readonly [x: number, y: number]

/**
 * A box as a printer might lay it: loops, skins in lines to and fro, infill in one or two
 * directions.
 */
export interface BoxRecipe {
  readonly sizeMm: readonly [x: number, y: number]
  readonly layers: number
  readonly layerMm: number
  readonly firstMm: number
  readonly lineMm: number
  readonly walls: number
  readonly bottomSkins: number
  readonly topSkins: number
  /** 0–1. */
  readonly infill: number
  readonly pattern: 'lines' | 'grid'
  readonly filamentMm: number
  /**
   * How far skins reach beyond the inner edge of the walls; half a line less than to it where left
   * out. mm
   */
  readonly lapMm?: number
  /** Plastic of the lowest top skin, × that of the others. */
  readonly strand?: number
  /** From this layer on the box is wider, with so many solid layers over the air beneath. */
  readonly shelf?: {
    readonly layer: number
    readonly sizeMm: readonly [x: number, y: number]
    readonly skins: number
  }
}

/** A small one with everything in it. */
export const SMALL_BOX: BoxRecipe = {
  sizeMm: [40, 30],
  layers: 20,
  layerMm: 0.2,
  firstMm: 0.2,
  lineMm: 0.45,
  walls: 2,
  bottomSkins: 3,
  topSkins: 4,
  infill: 0.2,
  pattern: 'lines',
  filamentMm: 1.75,
}

/** How a toolpath is spoken. */
export interface Tongue {
  readonly relativeExtruder: boolean
  readonly relativeMoves: boolean
  readonly inches: boolean
  /** The extruder's count begins anew with every layer. */
  readonly resets: boolean
  readonly crlf: boolean
}

export const PLAIN: Tongue = {
  relativeExtruder: false,
  relativeMoves: false,
  inches: false,
  resets: false,
  crlf: false,
}

/** G-code of a box, and the mm of filament that all its lines take. */
export function writeBox(
  whole: BoxRecipe,
  tongue: Tongue = PLAIN,
): { readonly text: string; readonly filamentMm: number } {
  const pen = penOf(whole, tongue)
  const { shelf } = whole
  for (let layer = 0; layer < whole.layers; layer++) {
    const past = shelf ? layer - shelf.layer : -1
    const box = shelf && past >= 0 ? { ...whole, sizeMm: shelf.sizeMm } : whole
    const heightMm = layer === 0 ? box.firstMm : box.layerMm
    pen.rise(box.firstMm + layer * box.layerMm)
    for (let wall = 0; wall < box.walls; wall++) pen.lay(loop(box, wall), heightMm)
    const hung = shelf !== undefined && past >= 0 && past < shelf.skins
    const solid = hung || layer < box.bottomSkins || layer >= box.layers - box.topSkins
    if (solid) {
      const times = layer === box.layers - box.topSkins ? (box.strand ?? 1) : 1
      for (const path of hatch(box, box.lineMm, layer % 2 === 1, box.lapMm)) {
        pen.lay(path, heightMm * times)
      }
    } else if (box.infill > 0) {
      const ways = box.pattern === 'grid' ? [false, true] : [layer % 2 === 1]
      const spacingMm = (ways.length * box.lineMm) / box.infill
      for (const way of ways) for (const path of hatch(box, spacingMm, way)) pen.lay(path, heightMm)
    }
  }
  return pen.done()
}

/** Corners of the box stand off the axes' zero. mm */
const CORNER: Point = [30, 40]

function loop({ sizeMm: [w, d], lineMm }: BoxRecipe, wall: number): readonly Point[] {
  const inset = (wall + 0.5) * lineMm
  const [left, bottom] = [CORNER[0] + inset, CORNER[1] + inset]
  const [right, top] = [CORNER[0] + w - inset, CORNER[1] + d - inset]
  return [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
    [left, bottom],
  ]
}

/** Lines across the room, one path each, to and fro. */
function hatch(
  { sizeMm: [w, d], lineMm, walls }: BoxRecipe,
  spacingMm: number,
  upright: boolean,
  lapMm = -lineMm / 2,
): readonly (readonly Point[])[] {
  const inset = walls * lineMm
  const [across, along] = upright ? [w, d] : [d, w]
  const paths: (readonly Point[])[] = []
  const from = inset + Math.min(spacingMm, across - 2 * inset) / 2
  for (let at = from, k = 0; at <= across - inset - lineMm / 2 + 1e-9; at += spacingMm, k++) {
    const ends: readonly Point[] = [inset - lapMm, along - inset + lapMm].map((end): Point =>
      upright ? [CORNER[0] + at, CORNER[1] + end] : [CORNER[0] + end, CORNER[1] + at],
    )
    paths.push(k % 2 === 0 ? ends : ends.toReversed())
  }
  return paths
}

function penOf({ lineMm, filamentMm }: BoxRecipe, tongue: Tongue) {
  const unit = tongue.inches ? 25.4 : 1
  const lines = [
    tongue.inches ? 'G20' : 'G21',
    tongue.relativeMoves ? 'G91' : 'G90',
    tongue.relativeExtruder ? 'M83' : 'M82',
    'G92 E0',
  ]
  let at: readonly [number, number, number] = [0, 0, 0]
  let counted = 0
  let all = 0
  const say = (value: number): string => (value / unit).toFixed(6)
  const go = (to: readonly [number, number, number], rest: string): void => {
    const words = ['X', 'Y', 'Z'].map((axis, k) => {
      const value = tongue.relativeMoves ? to[k]! - at[k]! : to[k]!
      return `${axis}${say(value)}`
    })
    lines.push(`G1 ${words.join(' ')}${rest}`)
    at = to
  }
  return {
    rise(topMm: number): void {
      if (tongue.resets) {
        lines.push('G92 E0')
        counted = 0
      }
      go([at[0], at[1], topMm], ` F${(6000 / unit).toFixed(3)} ; up`)
    },
    lay(path: readonly Point[], heightMm: number): void {
      const [first, ...others] = path
      go([first![0], first![1], at[2]], ` F${(6000 / unit).toFixed(3)}`)
      for (const [x, y] of others) {
        const length = Math.hypot(x - at[0], y - at[1])
        const pushed = (length * lineMm * heightMm) / ((Math.PI * filamentMm ** 2) / 4)
        all += pushed
        counted += pushed
        const told = tongue.relativeExtruder ? pushed : counted
        go([x, y, at[2]], ` E${say(told)} F${(2400 / unit).toFixed(3)}`)
      }
    },
    done: () => ({
      text: `${lines.join(tongue.crlf ? '\r\n' : '\n')}\n`,
      filamentMm: all,
    }),
  }
}
