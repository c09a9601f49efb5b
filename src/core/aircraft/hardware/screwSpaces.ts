import { pieceKey, type PlacedPieces } from '../../joints/placePieces.ts'
import { mapPoint } from '../../mesh/rigidMaps.ts'
import type { Joint, JointFastener } from '../../model/joints.ts'
import type { Vec3 } from '../../model/mesh.ts'
import { dot, minus, plus, times, unit } from '../../model/vectors.ts'
import { nutStandardOf } from './chooseScrew.ts'
import { HEADS, NUTS, THREADS, WASHERS } from './data.ts'
import type { JointHardware } from './jointHardware.ts'
import type { Bore, Column } from './screwColumn.ts'

/**
 * A piece of a fastener that takes up room: a cylinder on the screw's axis, in the frame's axes. mm
 */
export interface FastenerSpace {
  readonly joint: Joint
  /** `end`: what of the screw stands out beyond a nut or a thread. */
  readonly kind: 'head' | 'nut' | 'end'
  readonly fromMm: Vec3
  readonly toMm: Vec3
  readonly radiusMm: number
  /** Pieces that the screw holds, by key. */
  readonly own: ReadonlySet<string>
}

/** Shorter ends than this are in nobody's way. mm */
const LEAST_END_MM = 0.05

/**
 * The room that heads, nuts and ends of the screws take which end in joints whose pieces all have a
 * place. Heads and nuts let into a part lie where its narrow bore begins. None of joints that no
 * stocked screw does for.
 */
export function screwSpaces(
  hardware: readonly (JointHardware & { readonly joint: Joint })[],
  motions: PlacedPieces['motions'],
): readonly FastenerSpace[] {
  return hardware.flatMap(({ joint, columns, chosen }) => {
    const { fastener } = joint
    if (fastener === null || chosen === null || chosen.lengthMm === null) return []
    const { lengthMm, washers } = chosen
    return columns.flatMap((column) =>
      spacesOf(column, fastener, lengthMm, washers, motions).map((space) => ({ joint, ...space })),
    )
  })
}

function spacesOf(
  column: Column,
  { thread, end }: JointFastener,
  lengthMm: number,
  washers: number,
  motions: PlacedPieces['motions'],
): readonly Omit<FastenerSpace, 'joint'>[] {
  const axis = screwAxis(column, end, motions)
  if (axis === null) return []
  const { crossed, bitten, hole } = column
  const { to, way, reach } = axis
  const all = bitten === null ? crossed : [...crossed, bitten]
  const [bottom, top] = reach(crossed)
  const head = HEADS['ISO 4762'][thread]
  const seat = top + washers * WASHERS[thread].heightMm
  const tip = seat - lengthMm
  const own = new Set(all.concat(hole.a, hole.b).map(({ at }) => pieceKey(at)))
  const space = (
    kind: FastenerSpace['kind'],
    a: number,
    b: number,
    radiusMm: number,
  ): Omit<FastenerSpace, 'joint'> => ({
    kind,
    fromMm: plus(to, times(way, a)),
    toMm: plus(to, times(way, b)),
    radiusMm,
    own,
  })
  const spaces =
    head === undefined ? [] : [space('head', seat, seat + head.heightMm, head.widthMm / 2)]
  const nut = end === 'nut' ? NUTS[nutStandardOf(thread)][thread] : undefined
  const far = bitten === null ? bottom - (nut?.[1] ?? 0) : reach([bitten])[0]
  if (nut !== undefined) spaces.push(space('nut', far, bottom, nut[0] / 2))
  if (end !== 'post' && tip < far - LEAST_END_MM) {
    spaces.push(space('end', tip, far, THREADS[thread].diameterMm / 2))
  }
  return spaces
}

/**
 * The straight a screw goes along, towards its head, from the middle of a bore near that. In the
 * frame's axes.
 */
export interface ScrewAxis {
  readonly to: Vec3
  readonly way: Vec3
  /** Least and greatest of what bores take up of it. mm */
  readonly reach: (bores: readonly Bore[]) => readonly [number, number]
}

/**
 * Null where a piece has no place, or its bores meet on one spot, as half-lapped ones do, and tell
 * no way.
 */
export function screwAxis(
  column: Column,
  end: JointFastener['end'],
  motions: PlacedPieces['motions'],
): ScrewAxis | null {
  const { crossed, bitten } = column
  const [low, high] = endsOf(column, end)
  const [from, to] = [centreOf(low, motions), centreOf(high, motions)]
  const all = bitten === null ? crossed : [...crossed, bitten]
  if (from === null || to === null) return null
  if (all.some((bore) => centreOf(bore, motions) === null)) return null
  const apart = minus(to, from)
  if (!(dot(apart, apart) > 1e-6)) return null
  const way = unit(apart)
  const reach: ScrewAxis['reach'] = (bores) => {
    const spans = bores.map((bore) => {
      const middle = dot(minus(centreOf(bore, motions) ?? to, to), way)
      return [middle - bore.mark.depthMm / 2, middle + bore.mark.depthMm / 2] as const
    })
    return [Math.min(...spans.map(([a]) => a)), Math.max(...spans.map(([, b]) => b))]
  }
  return { to, way, reach }
}

/** Two bores of a screw: the one nearer to its end, and the one nearer to its head. */
function endsOf(
  { hole, bitten, crossed }: Column,
  end: JointFastener['end'],
): readonly [Bore, Bore] {
  const first = crossed[0] ?? hole.a
  if (end === 'nut') return [hole.b, hole.a]
  if (end === 'post') return [first === hole.a ? hole.b : hole.a, first]
  return [bitten ?? hole.b, first]
}

function centreOf({ at, mark }: Bore, motions: PlacedPieces['motions']): Vec3 | null {
  const motion = motions.get(pieceKey(at))
  return motion === undefined ? null : mapPoint(motion, mark.centreMm)
}
