import { fillSpecks } from './fillSpecks.ts'
import type { Plan } from './rooms.ts'
import { AIR, ROOM, SKIN } from './rooms.ts'

/** Recipes with more skins than this are not told apart. Layers */
const MOST_SKINS = 8
/** Further off a bare place nothing is carried on from it. mm */
const FURTHEST_MM = 8
/** Distances are told apart so far. mm */
const STEP_MM = 0.1
const STEPS = Math.round(FURTHEST_MM / STEP_MM)
/** Skin beside bare places, and room within reach of them, that are enough to tell. mm² */
const ENOUGH_MM2 = 150

/** How far skins go on into rooms around the places that need them. */
export interface SkinBands {
  /** Layers come from the bed up. */
  readonly add: (plan: Plan) => void
  /** No more layers, or the next one begins another object. */
  readonly finish: () => void
  /**
   * The width of band that, laid around every bare place, comes to as much skin as was laid; null
   * where there is too little of it. mm
   */
  readonly widthMm: (skins: number) => number | null
}

interface KeptLayer {
  readonly cells: Uint8Array
  readonly box: Plan['box']
}

/**
 * A place is bare that one of so many layers above or below leaves open. Of what lies inside the
 * walls around bare places the distance from them is told, and whether it is skin: a band of width
 * d takes all that is nearer than d. What cannot be room, for it is laid solid right to the next
 * wall, is nearer than the band or fills a narrow place; rooms far from anything bare say nothing.
 * Counts for every number of skins, since that is known last. The eight layers on the bed are left
 * out: how many of them are solid is another question.
 *
 * Measured: bands laid by the test come back up to half a millimetre too wide (cells are 0.4 mm).
 * Widths that make the census of a mesh come to the plastic of its toolpath were 2.8, 3.5 and
 * 4.6 mm for three parts of one maker and less than 2 for two of another; read were 2.7, 3.6, 5.2,
 * and 0.8 and 0.6. Specks between lines, taken for air, came to a third of that.
 */
export function skinBands(): SkinBands {
  const nearMm2 = Array.from({ length: MOST_SKINS + 1 }, () => new Float64Array(STEPS + 1))
  const skinMm2 = new Float64Array(MOST_SKINS + 1)
  const roomMm2 = new Float64Array(MOST_SKINS + 1)
  /** The last layers, the newest at the end; one is looked at when all above it are there. */
  const kept: (KeptLayer | null)[] = []
  let pitchMm = 1

  const look = (layer: KeptLayer): void => {
    const open = new Uint8Array(layer.cells.length)
    for (let off = MOST_SKINS; off >= 1; off--) {
      for (const at of [MOST_SKINS - off, MOST_SKINS + off]) markOpen(open, layer, kept[at], off)
    }
    for (let skins = 2; skins <= MOST_SKINS; skins++) tell(layer, open, skins)
  }

  const tell = ({ cells, box }: KeptLayer, open: Uint8Array, skins: number): void => {
    const width = box.right - box.left
    const far = Math.round((FURTHEST_MM / pitchMm) * STRAIGHT)
    const buckets: number[][] = [[]]
    const known = new Uint8Array(cells.length)
    for (let cell = 0; cell < cells.length; cell++) {
      const inside = cells[cell] === SKIN || cells[cell] === ROOM
      if (inside && open[cell]! > 0 && open[cell]! <= skins) buckets[0]!.push(cell)
    }
    if (buckets[0]!.length === 0) return
    for (let at = 0; at < Math.min(buckets.length, far); at++) {
      for (const cell of buckets[at] ?? []) {
        if (known[cell] === 1) continue
        known[cell] = 1
        if (at > 0) count(cells[cell]!, (at / STRAIGHT) * pitchMm, skins)
        const column = cell % width
        for (const [step, cost, dx] of [
          [-1, STRAIGHT, -1],
          [1, STRAIGHT, 1],
          [-width, STRAIGHT, 0],
          [width, STRAIGHT, 0],
          [-width - 1, SLANTED, -1],
          [-width + 1, SLANTED, 1],
          [width - 1, SLANTED, -1],
          [width + 1, SLANTED, 1],
        ] as const) {
          const next = cell + step
          const beyond = column + dx < 0 || column + dx >= width
          if (beyond || next < 0 || next >= cells.length || known[next] === 1) continue
          if (cells[next] !== SKIN && cells[next] !== ROOM) continue
          ;(buckets[at + cost] ??= []).push(next)
        }
      }
    }
  }

  const count = (state: number, mm: number, skins: number): void => {
    const mm2 = pitchMm * pitchMm
    // From edge to edge, not from middle to middle.
    const step = Math.min(STEPS, Math.max(0, Math.round((mm - pitchMm / 2) / STEP_MM)))
    nearMm2[skins]![step]! += mm2
    if (state === SKIN) skinMm2[skins]! += mm2
    else roomMm2[skins]! += mm2
  }

  const push = (layer: KeptLayer | null): void => {
    kept.push(layer)
    if (kept.length > 2 * MOST_SKINS + 1) kept.shift()
    const middle = kept[MOST_SKINS]
    if (middle && kept.length === 2 * MOST_SKINS + 1) look(middle)
  }

  return {
    add(plan) {
      const { size } = plan
      pitchMm = plan.pitchMm
      const { left, bottom, right, top } = plan.box
      const cells = new Uint8Array((right - left) * (top - bottom))
      for (let row = bottom; row < top; row++) {
        const from = row * size
        cells.set(plan.cells.subarray(from + left, from + right), (row - bottom) * (right - left))
      }
      fillSpecks(cells, right - left)
      push({ cells, box: plan.box })
    },
    finish() {
      for (let i = 0; i < MOST_SKINS; i++) push(null)
      kept.length = 0
    },
    widthMm(skins) {
      const near = nearMm2[skins]
      if (!near || skinMm2[skins]! < ENOUGH_MM2 || roomMm2[skins]! < ENOUGH_MM2) return null
      let left = skinMm2[skins]!
      for (let step = 0; step < STEPS; step++) {
        if (left <= near[step]!) return (step - 0.5 + left / near[step]!) * STEP_MM
        left -= near[step]!
      }
      return null
    },
  }
}

/** Steps from a cell to the next, straight and slanted; within 4 % of the distance. */
const STRAIGHT = 5
const SLANTED = 7

/** Marks with `off` the cells of a layer that another, so many layers off, leaves open. */
function markOpen(
  open: Uint8Array,
  { box }: KeptLayer,
  other: KeptLayer | null | undefined,
  off: number,
): void {
  const width = box.right - box.left
  for (let row = box.bottom; row < box.top; row++) {
    const to = (row - box.bottom) * width - box.left
    if (!other || row < other.box.bottom || row >= other.box.top) {
      open.fill(off, to + box.left, to + box.right)
      continue
    }
    const { left, right, bottom } = other.box
    const from = (row - bottom) * (right - left) - left
    for (let column = box.left; column < box.right; column++) {
      const beyond = column < left || column >= right
      if (beyond || other.cells[from + column] === AIR) open[to + column] = off
    }
  }
}
