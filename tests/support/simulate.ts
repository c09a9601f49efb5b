import type { CrossSection, ManifoldToplevel } from 'manifold-3d'
import { moreOf } from '../../src/core/data/printerMore.ts'
import type { Printer } from '../../src/core/model/figures.ts'
import { planLayers } from '../../src/core/census/cut/layerPlan.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import type { GeometrySettings, Recipe } from '../../src/core/model/settings.ts'
import type { Path, Rings } from './layTool.ts'
import { halfTurnSine, loopFrom, pathLength, seamCorners, zigzags } from './layTool.ts'
import { gyroidRows, honeycombRows, windings } from './layCurves.ts'
import { toSolid } from './solidCensus.ts'

type LineKind = 'wall' | 'skin' | 'infill'
type SpeedKind = 'outer' | 'inner' | 'small' | 'skin' | 'top' | 'strand' | 'infill'

/** One line with the way to it from where the last one ended. */
interface LaidLine {
  readonly kind: LineKind
  readonly hopMm: number
  readonly path: Path
  /** Of every move of the path. */
  readonly speeds: readonly SpeedKind[]
}

/** A part as lines in the order they are laid. */
interface Laid {
  readonly lineMm: number
  readonly layers: readonly { readonly heightMm: number; readonly lines: readonly LaidLine[] }[]
  readonly lengthMm: Readonly<Record<LineKind, number>>
}

type Point = readonly [x: number, y: number]

/** What the layers of a part hold, whatever pattern and share it is filled with. */
export interface CutLayers {
  readonly layers: readonly {
    readonly heightMm: number
    /** Of its middle. */
    readonly atMm: number
    /** Every wall line of the layer, closed. */
    readonly walls: readonly Loop[]
    readonly skin: Rings
    /** What of the skin is laid over a room or over air, and what of the rest shows on top. */
    readonly strand: Rings
    readonly top: Rings
    readonly room: Rings
  }[]
}

/**
 * The slow oracle, first third: cuts the layers with manifold-3d into wall lines, skins and infill
 * rooms. Rooms below `leastRoomMm2` are skin.
 */
export function cutLayers(
  wasm: ManifoldToplevel,
  mesh: Mesh,
  recipe: GeometrySettings,
  leastRoomMm2: number,
): CutLayers {
  const solid = toSolid(wasm, mesh)
  const plan = planLayers(solid.boundingBox().max[2], recipe.layerMm, recipe.firstLayerMm)
  const slices: CrossSection[] = []
  for (let i = 0; i < plan.count; i++) slices.push(solid.slice(plan.cutMm[i]!).simplify(0.002))
  const nothing = wasm.CrossSection.square(0)
  const { lineMm } = recipe
  let roomBelow = nothing
  const layers = slices.map((slice, i) => {
    const inset = slice.offset(-recipe.walls * lineMm, 'Round', 2, 64)
    let room = inset
    for (let j = i - recipe.bottomSkins; j <= i + recipe.topSkins; j++) {
      if (j !== i) room = room.intersect(slices[j] ?? nothing)
    }
    const rooms = room.decompose().filter((piece) => piece.area() >= leastRoomMm2)
    room = rooms.length > 0 ? wasm.CrossSection.union(rooms) : nothing
    const walls: Loop[] = []
    for (let k = 0; k < recipe.walls; k++) {
      const line = slice.offset(-(k + 0.5) * lineMm, 'Miter', 3).simplify(0.002)
      for (const ring of ringsOf(line)) {
        // The edge it follows is a turn's worth longer, or shorter around a hole.
        const edgeMm =
          pathLength(loopFrom(ring, 0)) + senseOf(ring) * (2 * k + 1) * lineMm * Math.PI
        const speed = edgeMm <= SMALL_LOOP_MM ? 'small' : k === 0 ? 'outer' : 'inner'
        walls.push({ ring, seams: seamCorners(ring), speed })
      }
    }
    const skin = inset.subtract(room)
    const below = slices[i - 1]
    const strand = below ? skin.subtract(below).add(skin.intersect(roomBelow)) : nothing
    const top = skin.subtract(strand).subtract(slices[i + 1] ?? nothing)
    roomBelow = room
    return {
      heightMm: plan.heightMm[i]!,
      atMm: plan.cutMm[i]!,
      walls,
      skin: ringsOf(skin),
      strand: ringsOf(strand),
      top: ringsOf(top),
      room: ringsOf(room),
    }
  })
  return { layers }
}

/**
 * The slow oracle, second third: lays every wall line, skin line and infill line as a path: walls,
 * then skins, then infill, each time the nearest next line, from either end; walls from one of
 * their sharpest corners, the corners of holes as sharp as they are drawn. Zigzags are tried from
 * the left and from the right and laid the way that makes fewer of them, or else begins nearer.
 * Patterns: lines, grid, gyroid as its surface is cut at the layer's height, and honeycomb of
 * regular cells, along x and along y by turns.
 */
export function layLines(cut: CutLayers, recipe: Recipe): Laid {
  const { lineMm } = recipe
  const lengthMm = { wall: 0, skin: 0, infill: 0 }
  let here: Point = [0, 0]
  const layers = cut.layers.map((layer, i) => {
    const along = (i % 2) as 0 | 1
    const lines: LaidLine[] = []
    const go = (kind: LineKind, laid: Path, speed: SpeedKind): void => {
      const path = speed === 'skin' ? chopped(laid, layer) : laid
      const speeds = path
        .slice(1)
        .map((q, k) => (speed === 'skin' ? skinSpeed(path[k]!, q, layer) : speed))
      lines.push({ kind, path, speeds, hopMm: distance(here, path[0]!) })
      lengthMm[kind] += pathLength(path)
      here = path.at(-1)!
    }
    let { walls } = layer
    while (walls.length > 0) {
      const next = nearest(
        walls.map(({ ring, seams }) => seams.map((seam) => ring[seam]!)),
        here,
      )
      const { ring, seams, speed } = walls[next.stop]!
      walls = walls.filter((_, k) => k !== next.stop)
      go('wall', loopFrom(ring, seams[next.place]!), speed)
    }
    const layZigzags = (kind: LineKind, ways: readonly (readonly Path[])[]): void => {
      const [left, right] = ways
      const ends = (paths: readonly Path[]): Point[][] =>
        paths.map((path) => [path[0]!, path.at(-1)!])
      const fewer =
        right!.length - left!.length ||
        nearest(ends(right!), here).mm - nearest(ends(left!), here).mm
      let paths = fewer < 0 ? right! : left!
      while (paths.length > 0) {
        const next = nearest(ends(paths), here)
        const path = paths[next.stop]!
        paths = paths.filter((_, k) => k !== next.stop)
        go(kind, next.place === 0 ? path : path.toReversed(), kind === 'skin' ? 'skin' : 'infill')
      }
    }
    const straight = (rings: Rings, way: 0 | 1, spacingMm: number): readonly Path[][] =>
      [false, true].map((high) => zigzags(rings, way, spacingMm, lineMm, high))
    layZigzags('skin', straight(layer.skin, along, lineMm))
    if (recipe.infillPct > 0 && layer.room.length > 0) {
      for (const ways of infillWays(layer, along, recipe, straight)) layZigzags('infill', ways)
    }
    return { heightMm: layer.heightMm, lines }
  })
  return { lineMm, layers, lengthMm }
}

type Ways = readonly Path[][]

/** The zigzags of every direction of a layer's infill, begun at the low end and at the high one. */
function infillWays(
  { room, atMm }: CutLayers['layers'][number],
  along: 0 | 1,
  { pattern, infillPct, lineMm }: Recipe,
  straight: (rings: Rings, way: 0 | 1, spacingMm: number) => Ways,
): readonly Ways[] {
  const fullMm = (100 * lineMm) / infillPct
  if (pattern === 'lines') return [straight(room, along, fullMm)]
  if (pattern === 'grid') return [straight(room, 0, 2 * fullMm), straight(room, 1, 2 * fullMm)]
  const values = ([0, 1] as const).map((axis) => room.flat().map((p) => p[axis]))
  const reach = {
    low: [Math.min(...values[0]!), Math.min(...values[1]!)],
    high: [Math.max(...values[0]!), Math.max(...values[1]!)],
  } as const
  const wind = (rows: readonly Path[], way: 0 | 1, spacingMm: number): Ways =>
    [false, true].map((high) => windings(room, rows, way === 0 ? 1 : 0, spacingMm, lineMm, high))
  if (pattern === 'honeycomb') {
    const spacingMm = (4 / 3) * fullMm
    return [wind(honeycombRows(reach, along, spacingMm), along, spacingMm)]
  }
  const spacingMm = GYROID_LONGER * fullMm
  const { along: way, rows } = gyroidRows(reach, spacingMm, atMm)
  return [wind(rows, way, spacingMm)]
}

/** Its lines are so much longer than straight ones; see figures/infill.ts and its test. */
const GYROID_LONGER = 1.227

interface Loop {
  readonly ring: Path
  readonly seams: readonly number[]
  readonly speed: SpeedKind
}

/** Common practice, no source. */
const SMALL_LOOP_MM = 30

/** 1 for an outer ring, −1 for a hole. */
function senseOf(ring: Path): number {
  const twice = ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length]!
    return sum + p[0] * q[1] - q[0] * p[1]
  }, 0)
  return Math.sign(twice)
}

type SkinRegions = Pick<CutLayers['layers'][number], 'strand' | 'top'>

/** Long moves cut where the kind of skin beneath them may change; not where there is only one. */
function chopped(path: Path, { strand, top }: SkinRegions): Path {
  if (strand.length === 0 && top.length === 0) return path
  return path.flatMap((q, i) => {
    if (i === 0) return [q]
    const p = path[i - 1]!
    const pieces = Math.ceil(distance(p, q) / PIECE_MM)
    return Array.from({ length: pieces }, (_, k): Point => {
      const t = (k + 1) / pieces
      return [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]
    })
  })
}
const PIECE_MM = 3

function skinSpeed(p: Point, q: Point, { strand, top }: SkinRegions): SpeedKind {
  const middle: Point = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]
  if (isInside(middle, strand)) return 'strand'
  return isInside(middle, top) ? 'top' : 'skin'
}

/** By the even-odd rule. */
function isInside([x, y]: Point, rings: Rings): boolean {
  let inside = false
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!
      if (p[1] <= y === q[1] <= y) return
      if (x < p[0] + ((y - p[1]) / (q[1] - p[1])) * (q[0] - p[0])) inside = !inside
    })
  }
  return inside
}

function ringsOf(section: CrossSection): Rings {
  return section.toPolygons().map((ring) => ring.map(([x, y]) => [x, y] as const))
}

const distance = (p: Point, q: Point): number => Math.hypot(p[0] - q[0], p[1] - q[1])

/** Of stops that can be entered at several places, the nearest stop and its nearest place. */
function nearest(
  stops: readonly (readonly Point[])[],
  here: Point,
): { stop: number; place: number; mm: number } {
  let best = { stop: 0, place: 0, mm: Infinity }
  stops.forEach((places, stop) => {
    places.forEach((point, place) => {
      const mm = distance(point, here)
      if (mm < best.mm) best = { stop, place, mm }
    })
  })
  return best
}

/** Seconds of driving the lines, start-up left out. */
interface Driven {
  readonly timeS: number
  readonly laidS: Readonly<Record<LineKind, number>>
  readonly hopS: Readonly<Record<LineKind, number>>
  readonly hops: Readonly<Record<LineKind, number>>
  readonly retracts: Readonly<Record<LineKind, number>>
}

/**
 * The slow oracle, last third: drives each path with full look-ahead — forward and backward over
 * every single move, so that no corner is taken faster than its limit and no ramp is steeper than
 * the acceleration — and each layer for as long as it must take at least, or as its slowest speed
 * makes of it.
 */
export function driveLines(laid: Laid, printer: Printer): Driven {
  const kinds = { wall: 0, skin: 0, infill: 0 }
  const total = {
    laidS: { ...kinds },
    hopS: { ...kinds },
    hops: { ...kinds },
    retracts: { ...kinds },
  }
  const { outerWallMmS, smallLoopMmS, topSkinMmS, strandMmS, floorMmS } = moreOf(printer)
  const wanted: Readonly<Record<SpeedKind, number>> = {
    outer: outerWallMmS,
    inner: printer.wallMmS,
    small: smallLoopMmS,
    skin: printer.skinMmS,
    top: topSkinMmS,
    strand: strandMmS,
    infill: printer.infillMmS,
  }
  let timeS = 0
  laid.layers.forEach(({ heightMm, lines }, i) => {
    let layerS = 0
    let restS = printer.layerChangeS
    let pathMm = 0
    for (const { kind, path, speeds, hopMm } of lines) {
      const limit = i === 0 ? printer.firstLayerMmS : Infinity
      const melt = printer.flowMm3S / (laid.lineMm * heightMm)
      const accel = kind === 'wall' ? printer.wallAccelMmS2 : printer.accelMmS2
      const laidS = driveSeconds(
        path,
        speeds.map((speed) => Math.min(wanted[speed], limit, melt)),
        accel,
        printer.cornerMmS,
        kind === 'infill',
      )
      const hopS = travelSeconds(hopMm, printer)
      layerS += laidS
      restS += hopS
      pathMm += pathLength(path)
      total.laidS[kind] += laidS
      total.hopS[kind] += hopS
      total.hops[kind]++
      if (hopMm > RETRACT_BEYOND_MM) total.retracts[kind]++
    }
    timeS += restS + Math.max(layerS, Math.min(printer.leastLayerS - restS, pathMm / floorMmS))
  })
  return { timeS, ...total }
}

/** Common practice, no source. */
const RETRACT_BEYOND_MM = 1.5

function travelSeconds(mm: number, printer: Printer): number {
  const { travelMmS: v, travelAccelMmS2: a } = printer
  const moving = mm >= (v * v) / a ? mm / v + v / a : 2 * Math.sqrt(mm / a)
  return moving + (mm > RETRACT_BEYOND_MM ? printer.retractS : 0)
}

/**
 * Look-ahead over one path: entry speeds from the corner rule, and where facets stand for a curve
 * no more sideways than it accelerates (v²/r ≤ a); then no ramp steeper than the acceleration,
 * either way.
 */
function driveSeconds(
  path: Path,
  speeds: readonly number[],
  a: number,
  cornerMmS: number,
  curved: boolean,
): number {
  const lengths = path.slice(1).map((q, i) => distance(q, path[i]!))
  const at = path.map((q, i) => {
    if (i === 0 || i === path.length - 1) return 0
    const speed = Math.min(speeds[i - 1]!, speeds[i]!)
    const turn = halfTurnSine(path[i - 1]!, q, path[i + 1]!)
    const corner = Math.min(speed, turn > 0 ? (cornerMmS * Math.SQRT1_2) / turn : speed)
    if (!curved || turn > FACET_TURN || turn === 0) return corner
    const radius = (lengths[i - 1]! + lengths[i]!) / 2 / (2 * Math.asin(turn))
    return Math.min(corner, Math.sqrt(a * radius))
  })
  for (let i = 1; i < at.length; i++)
    at[i] = Math.min(at[i]!, Math.sqrt(at[i - 1]! ** 2 + 2 * a * lengths[i - 1]!))
  for (let i = at.length - 2; i >= 0; i--)
    at[i] = Math.min(at[i]!, Math.sqrt(at[i + 1]! ** 2 + 2 * a * lengths[i]!))
  return lengths.reduce(
    (seconds, mm, i) => seconds + rampSeconds(mm, at[i]!, at[i + 1]!, speeds[i]!, a),
    0,
  )
}

/** sin(half the turn) up to which a corner is one of a curve's facets: 25°. */
const FACET_TURN = 0.216

function rampSeconds(mm: number, from: number, to: number, speed: number, a: number): number {
  const peak = Math.min(speed, Math.sqrt((2 * a * mm + from * from + to * to) / 2))
  const ramps = (2 * peak * peak - from * from - to * to) / (2 * a)
  return (2 * peak - from - to) / a + Math.max(0, mm - ramps) / speed
}
