import type { FlightSetup, Item, Place } from '../../model/aircraft.ts'
import type { Vec3 } from '../../model/mesh.ts'
import { pieceKey, type PlacedPieces } from '../../joints/placePieces.ts'
import { bodyLump } from './bodyLump.ts'
import type { Lump } from './lump.ts'
import { joinLumps, pointLump } from './lump.ts'
import type { PartMoments } from './partMoments.ts'
import { placeLump, ringPoints } from './places.ts'
import { spreadMass } from './spreadMass.ts'

/** A printed part on its way into the balance. */
export interface BalancePart {
  readonly partId: string
  readonly name: string
  /** Pieces that fly. */
  readonly quantity: number
  /** Of one piece. */
  readonly massG: number
  /** Null while the mesh is not at hand. */
  readonly moments: PartMoments | null
  /** See `shellShare`; 0 spreads the mass evenly. */
  readonly shellShare: number
}

/** One thing in its place, for the drawing and for the sum. */
export interface PlacedMass {
  /** Part or item id. */
  readonly id: string
  readonly name: string
  readonly massG: number
  readonly centreMm: Vec3
}

/** Mass, centre and inertia of everything that has a place. Frame axes: x forward, y left, z up. */
export interface FrameBalance {
  readonly massG: number
  readonly cgMm: Vec3
  /** About axes through the centre of gravity: roll (x), pitch (y), yaw (z). kg m² */
  readonly inertiaKgM2: Vec3
  /** Products ∫xy, ∫yz, ∫zx about the same point; zero for a symmetric aircraft. kg m² */
  readonly productsKgM2: Vec3
  /** Centre of gravity from the middle of the motors, level: forward and left positive. mm */
  readonly offsetMm: readonly [forward: number, left: number]
  readonly placed: readonly PlacedMass[]
  /** Mass that has no place and is not in here. */
  readonly unplacedG: number
  /** Names of what has no place. */
  readonly unplaced: readonly string[]
  /** Names of items put on the motor circle because they are as many as the motors. */
  readonly onMotors: readonly string[]
}

const KG_M2_PER_G_MM2 = 1e-9

/**
 * Balances what has a place: parts by their mesh integrals, items as points, those of joints where
 * each sits, those with a body as boxes and cylinders where joints put them. Drive items without a
 * position, in whole sets of the motors, are put on the motor circle at height 0, first motor half
 * a step from forward; for three motors and more that turn does not change the result. Null when
 * nothing has a place and a mass.
 *
 * @param input.motions where pieces of items with a body are, by piece; left out, none has a place
 *   by joints.
 * @param input.thrustCentreMm where the motors push, level; the frame's origin unless given.
 */
export function frameBalance(input: {
  readonly parts: readonly BalancePart[]
  readonly places: readonly Place[]
  readonly items: readonly Item[]
  readonly motions?: PlacedPieces['motions']
  readonly flight: Pick<FlightSetup, 'motors' | 'motorRadiusMm'> | null
  readonly thrustCentreMm?: readonly [x: number, y: number]
}): FrameBalance | null {
  const lumps: Lump[] = []
  const placed: PlacedMass[] = []
  const unplaced: string[] = []
  const onMotors: string[] = []
  let unplacedG = 0
  const put = (id: string, name: string, lump: Lump): void => {
    lumps.push(lump)
    placed.push({ id, name, massG: lump.amount, centreMm: lump.centreMm })
  }
  const leave = (name: string, massG: number): void => {
    unplacedG += massG
    if (massG > 0) unplaced.push(name)
  }

  for (const part of input.parts) {
    const { moments, quantity } = part
    // Places beyond the pieces that fly are left over from a larger quantity.
    const places = input.places.filter(({ partId }) => partId === part.partId).slice(0, quantity)
    if (moments) {
      const lump = spreadMass(moments, part.massG, part.shellShare)
      for (const place of places) put(part.partId, part.name, placeLump(lump, place))
    }
    leave(part.name, (quantity - (moments ? places.length : 0)) * part.massG)
  }
  for (const item of input.items) {
    if (item.sitesMm !== undefined) {
      // Screws are many and small: one mass, spread as they are.
      const { id, name, quantity, massG, sitesMm } = item
      if (sitesMm.length > 0) put(id, name, joinLumps(sitesMm.map((at) => pointLump(massG, at))))
      leave(name, (quantity - sitesMm.length) * massG)
      continue
    }
    const laid = laidPieces(item, input.motions)
    if (laid.length > 0) {
      for (const lump of laid) put(item.id, item.name, lump)
      leave(item.name, (item.quantity - laid.length) * item.massG)
      continue
    }
    const points = pointsOf(item, input.flight)
    if (points.length > 1) onMotors.push(item.name)
    const each = (item.quantity * item.massG) / points.length
    for (const point of points) put(item.id, item.name, pointLump(each, point))
    if (points.length === 0) leave(item.name, item.quantity * item.massG)
  }

  const all = joinLumps(lumps)
  if (!(all.amount > 0)) return null
  const [xx, yy, zz, xy, yz, zx] = all.second
  const [thrustX, thrustY] = input.thrustCentreMm ?? [0, 0]
  return {
    massG: all.amount,
    cgMm: all.centreMm,
    inertiaKgM2: scaled([yy + zz, zz + xx, xx + yy]),
    productsKgM2: scaled([xy, yz, zx]),
    offsetMm: [all.centreMm[0] - thrustX, all.centreMm[1] - thrustY],
    placed,
    unplacedG,
    unplaced,
    onMotors,
  }
}

/** Pieces of an item that joints, or a typed place, have put somewhere as a body. */
function laidPieces(
  { id, body, quantity, massG }: Item,
  motions: PlacedPieces['motions'] | undefined,
): readonly Lump[] {
  if (body === undefined || motions === undefined) return []
  return Array.from({ length: quantity }, (_, piece) =>
    motions.get(pieceKey({ partId: id, piece })),
  )
    .filter((motion) => motion !== undefined)
    .map((motion) => bodyLump(body, massG, motion))
}

function pointsOf(
  item: Item,
  flight: Pick<FlightSetup, 'motors' | 'motorRadiusMm'> | null,
): readonly Vec3[] {
  if (item.positionMm) return [item.positionMm]
  const motors = flight?.motors ?? 0
  const sets = item.group === 'drive' && motors > 1 && item.quantity > 0
  if (!flight || !sets || item.quantity % motors !== 0) return []
  return ringPoints({
    count: motors,
    radiusMm: flight.motorRadiusMm,
    firstDeg: 180 / motors,
    positionMm: [0, 0, 0],
  })
}

function scaled([x, y, z]: Vec3): Vec3 {
  return [x * KG_M2_PER_G_MM2, y * KG_M2_PER_G_MM2, z * KG_M2_PER_G_MM2]
}
