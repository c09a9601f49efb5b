import type { CrossSection, ManifoldToplevel } from 'manifold-3d'
import { planLayers } from '../../src/core/census/cut/layerPlan.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import type { GeometrySettings, Recipe } from '../../src/core/model/settings.ts'
import { distance, drawn } from './drawnLine.ts'
import type { DrawnLine, Laid, LaidLine, LineKind, Point, SpeedKind } from './drawnLine.ts'
import type { Path, Rings } from './layTool.ts'
import { loopFrom, pathLength, seamCorners, zigzags } from './layTool.ts'
import { gyroidRows, honeycombRows, windings } from './layCurves.ts'
import { toSolid } from './solidCensus.ts'

/** What the layers of a part hold, whatever pattern and share it is filled with. */
export interface CutLayers {
  readonly layers: readonly {
    readonly heightMm: number
    /** Of its middle. */
    readonly atMm: number
    /** Every wall line of the layer, closed. */
    readonly walls: readonly Loop[]
    /** Zigzags of the skin, begun at the low end and at the high one. */
    readonly skinWays: Ways
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
  const layers = slices.map((slice, i): CutLayers['layers'][number] => {
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
        walls.push({ ring, seams: seamCorners(ring), speed, begun: new Map() })
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
      skinWays: zigzags(ringsOf(skin), (i % 2) as 0 | 1, lineMm, lineMm),
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
    const go = (kind: LineKind, line: DrawnLine): void => {
      lines.push({ kind, line, hopMm: distance(here, line.path[0]!) })
      lengthMm[kind] += line.lengthMm
      here = line.path.at(-1)!
    }
    let { walls } = layer
    while (walls.length > 0) {
      const next = nearest(
        walls.map(({ ring, seams }) => seams.map((seam) => ring[seam]!)),
        here,
      )
      const loop = walls[next.stop]!
      walls = walls.filter((_, k) => k !== next.stop)
      go('wall', begunAt(loop, loop.seams[next.place]!))
    }
    const layZigzags = (kind: 'skin' | 'infill', ways: Ways): void => {
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
        const way = next.place === 0 ? path : path.toReversed()
        const isSkin = kind === 'skin'
        go(kind, isSkin ? skinLine(path, next.place, way, layer) : drawn(way, () => 'infill'))
      }
    }
    layZigzags('skin', layer.skinWays)
    if (recipe.infillPct > 0 && layer.room.length > 0) {
      for (const ways of infillWays(layer, along, recipe)) layZigzags('infill', ways)
    }
    return { heightMm: layer.heightMm, lines }
  })
  return { lineMm, layers, lengthMm }
}

type Ways = readonly (readonly Path[])[]

/** The zigzags of every direction of a layer's infill, begun at the low end and at the high one. */
function infillWays(
  { room, atMm }: CutLayers['layers'][number],
  along: 0 | 1,
  { pattern, infillPct, lineMm }: Recipe,
): readonly Ways[] {
  const fullMm = (100 * lineMm) / infillPct
  const straight = (rings: Rings, way: 0 | 1, spacingMm: number): Ways =>
    zigzags(rings, way, spacingMm, lineMm)
  if (pattern === 'lines') return [straight(room, along, fullMm)]
  if (pattern === 'grid') return [straight(room, 0, 2 * fullMm), straight(room, 1, 2 * fullMm)]
  const values = ([0, 1] as const).map((axis) => room.flat().map((p) => p[axis]))
  const reach = {
    low: [Math.min(...values[0]!), Math.min(...values[1]!)],
    high: [Math.max(...values[0]!), Math.max(...values[1]!)],
  } as const
  const wind = (rows: readonly Path[], way: 0 | 1, spacingMm: number): Ways =>
    windings(room, rows, way === 0 ? 1 : 0, spacingMm, lineMm)
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
  /** By the corner it was begun at so far. */
  readonly begun: Map<number, DrawnLine>
}

function begunAt({ ring, speed, begun }: Loop, seam: number): DrawnLine {
  const line = begun.get(seam) ?? drawn(loopFrom(ring, seam), () => speed)
  begun.set(seam, line)
  return line
}

/*
 * Walls and skins are the same whatever the layer is filled with: what is told of a line is told once
 * for all patterns, shares and printers.
 */
const skinLines = new WeakMap<Path, DrawnLine[]>()

/** A skin line laid one way or, at place 1, back. */
function skinLine(path: Path, place: number, way: Path, regions: SkinRegions): DrawnLine {
  const known = skinLines.get(path) ?? []
  known[place] ??= drawn(chopped(way, regions), (p, q) => skinSpeed(p, q, regions))
  skinLines.set(path, known)
  return known[place]
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
