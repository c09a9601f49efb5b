import { onceAMesh } from '../onceAMesh.ts'
import type { Mesh, Vec3 } from '../../model/mesh.ts'
import { dot, minus } from '../../model/vectors.ts'
import { findHoles, type Hole } from './findHoles.ts'
import { findPockets, type Pocket } from './findPockets.ts'
import { isOneAxis, offAxis } from './oneAxis.ts'

/** A hole as a drill meets it: its narrowest part, and what heads and nuts sit in. mm */
export interface WholeHole {
  /** A hexagon here has no bore on its axis. */
  readonly shape: 'round' | 'slot' | 'hexagon'
  readonly axis: Vec3
  /** On the axis, half-way down the narrowest part. */
  readonly centreMm: Vec3
  /**
   * Of the narrowest part, through the corners of its facets; width of a slot, flats of a hexagon.
   */
  readonly diameterMm: number
  /** Between the facets: what the drawing itself lets through. */
  readonly clearMm: number
  /** Between the middles of a slot's ends; 0 for others. */
  readonly stretchMm: number
  /** Unit vector along a slot. */
  readonly along: Vec3
  /** Of the narrowest part. */
  readonly depthMm: number
  /** Air is reached at the end the axis points away from, and at the other. */
  readonly openLow: boolean
  readonly openHigh: boolean
  readonly seats: readonly Seat[]
  /** Of a thin web across it that is to be drilled through; null where none is. */
  readonly webMm: number | null
}

/** Where a head or a nut sits. mm */
export interface Seat {
  readonly kind: 'countersink' | 'counterbore' | 'nut pocket'
  /** Of a cone its mouth; of a nut pocket across its flats. */
  readonly diameterMm: number
  /** Between its facets; of a cone its mouth. */
  readonly clearMm: number
  readonly depthMm: number
  /** At the end the axis points away from, or to. */
  readonly end: 'low' | 'high'
}

/**
 * A cone is there for a head if it opens by this factor and is this deep (mm); less is a chamfer.
 */
const SINK = { wider: 1.3, deepMm: 0.5 } as const
/** Wider than the bore by this factor: a counterbore. Less is a step. */
const STEP = 1.15
/** Bores on one axis with less between them are one hole. mm */
const WEB_MM = 0.02
/** Up to this it is a web of a layer or two, left so that the hole over it needs no support. mm */
const MOST_WEB_MM = 0.5
/** Slots no deeper than this are engraved letters. mm */
const ENGRAVED_MM = 0.6
/** How far off each other two of one axis may lie, as a share of the narrower one's radius. */
const OFF_AXIS = 0.1

interface Piece extends Omit<Hole, 'through' | 'facets'>, Pick<Pocket, 'stretch' | 'along'> {
  readonly shape: WholeHole['shape']
}

/** @param mesh in mm, faced outwards. */
export const wholeHoles = onceAMesh(holesOf)

function holesOf(mesh: Mesh): readonly WholeHole[] {
  const bores = findHoles(mesh).map((hole): Piece => {
    return { ...hole, shape: 'round', stretch: 0, along: [0, 0, 0] }
  })
  const pockets = findPockets(mesh).map(({ kind: shape, ...pocket }): Piece => {
    const { diameter } = pocket
    const plain = { clear: diameter, flareLow: 0, flareHigh: 0 }
    return { ...pocket, ...plain, shape, mouthLow: diameter, mouthHigh: diameter }
  })
  const onAxis = [...bores, ...pockets.filter(({ shape }) => shape === 'hexagon')]
  const chains = chainsOf(onAxis)
  return [
    ...chains.map(holeOf),
    ...pockets
      .filter(({ shape, depth }) => shape === 'slot' && depth > ENGRAVED_MM)
      .map((slot) => holeOf([slot])),
  ]
}

/** Pieces of one axis that open into each other, each chain along the axis of its first. */
function chainsOf(pieces: readonly Piece[]): readonly (readonly Piece[])[] {
  const chainOf = new Map(pieces.map((piece) => [piece, new Set([piece])]))
  for (const [i, one] of pieces.entries()) {
    for (const other of pieces.slice(i + 1)) {
      const gap = gapBetween(one, other)
      if (gap === null || gap > MOST_WEB_MM) continue
      const joined = new Set([...chainOf.get(one)!, ...chainOf.get(other)!])
      for (const piece of joined) chainOf.set(piece, joined)
    }
  }
  return [...new Set(chainOf.values())].map((chain) => {
    const [first] = chain
    const height = ({ centre }: Piece): number => dot(minus(centre, first!.centre), first!.axis)
    return [...chain].sort((a, b) => height(a) - height(b))
  })
}

/**
 * Of solid between the facing ends of two that stand on one axis, past their cones; null where they
 * do not.
 */
function gapBetween(one: Piece, other: Piece): number | null {
  if (!isOneAxis(one.axis, other.axis)) return null
  const between = minus(other.centre, one.centre)
  const along = dot(between, one.axis)
  const mostOff = (OFF_AXIS * Math.min(one.diameter, other.diameter)) / 2
  if (offAxis(between, one.axis) > mostOff) return null
  const ahead = along > 0
  const turn = dot(one.axis, other.axis)
  const cones =
    (ahead ? one.flareHigh : one.flareLow) + (ahead === turn > 0 ? other.flareLow : other.flareHigh)
  return Math.abs(along) - (one.depth + other.depth) / 2 - cones
}

function holeOf(chain: readonly Piece[]): WholeHole {
  const core = chain.reduce((least, each) => (each.diameter < least.diameter ? each : least))
  const heightOf = ({ centre }: Piece): number => dot(minus(centre, core.centre), core.axis)
  const sorted = [...chain].sort((a, b) => heightOf(a) - heightOf(b))
  const lowest = sorted[0]!
  const highest = sorted.at(-1)!
  const points = (piece: Piece): boolean => dot(piece.axis, core.axis) > 0
  const seats: Seat[] = []
  for (const piece of chain) {
    const end = heightOf(piece) < 0 ? 'low' : 'high'
    const { diameter: diameterMm, clear: clearMm, depth: depthMm } = piece
    if (piece === core || diameterMm < STEP * core.diameter) continue
    const kind = piece.shape === 'hexagon' ? 'nut pocket' : 'counterbore'
    seats.push({ kind, diameterMm, clearMm, depthMm, end })
  }
  for (const [piece, end] of [
    [lowest, 'low'],
    [highest, 'high'],
  ] as const) {
    const isLow = (end === 'low') === points(piece)
    const [depthMm, mouth] = isLow
      ? [piece.flareLow, piece.mouthLow]
      : [piece.flareHigh, piece.mouthHigh]
    if (depthMm < SINK.deepMm || mouth < SINK.wider * core.diameter) continue
    seats.push({ kind: 'countersink', diameterMm: mouth, clearMm: mouth, depthMm, end })
  }
  const webs = sorted.flatMap((piece, i) => {
    const next = sorted[i + 1]
    const gap = next === undefined ? null : gapBetween(piece, next)
    return gap !== null && gap > WEB_MM ? [gap] : []
  })
  return {
    shape: core.shape,
    axis: core.axis,
    centreMm: core.centre,
    diameterMm: core.diameter,
    clearMm: core.clear,
    stretchMm: core.stretch,
    along: core.along,
    depthMm: core.depth,
    openLow: points(lowest) ? lowest.openLow : lowest.openHigh,
    openHigh: points(highest) ? highest.openHigh : highest.openLow,
    seats,
    webMm: webs.length > 0 ? Math.max(...webs) : null,
  }
}
