import { alongBox, boxOfMesh } from '../../mesh/boxOfMesh.ts'
import type { Bounds, Mesh, Vec3 } from '../../model/mesh.ts'
import type { Grip, GripBore, LoadCase } from './types.ts'

export const AXIS_NAMES = ['x', 'y', 'z'] as const
export type AxisName = (typeof AXIS_NAMES)[number]
/** Ends of the part as it lies on the bed. */
export const END_NAMES = ['x-low', 'x-high', 'y-low', 'y-high', 'z-low', 'z-high'] as const
export type EndName = (typeof END_NAMES)[number]

/** What a builder says of how a part is held and pushed; `auto` where nobody did. */
export interface LoadPick {
  readonly hold: 'auto' | EndName
  readonly push: 'auto' | EndName
  /** Of the bed. */
  readonly direction: 'auto' | AxisName
}

export const LOAD_PICK_AUTO: LoadPick = { hold: 'auto', push: 'auto', direction: 'auto' }

/** A load case with how it came about. */
export interface ChosenLoad {
  readonly load: Pick<LoadCase, 'hold' | 'push' | 'direction'>
  readonly held: 'joints' | EndName
  readonly pushed: 'bores' | EndName
  readonly direction: AxisName
}

/**
 * Joints spread over more of the part than this hold all of it; then one of its ends is held
 * instead.
 */
const MOST_SPREAD = 0.6
/** What is pushed by its bores has them this near to its free end. Share of its length */
const NEAR_END = 0.35
/** A hand or a vice takes hold of so much of an end, but never less than the second. Share, mm */
const GRIP_SHARE = 0.05
const LEAST_GRIP_MM = 2
/** Larger bores hold tubes, not screws. mm */
const SCREW_MM = 6.5

/**
 * How a part is held and pushed: by its joints and at the screw bores of its free end (a motor, a
 * foot), or from end to end along its longest axis, upwards or, standing, sideways.
 *
 * @param mesh placed: mm, as it lies on the bed. Bores in the same place.
 */
export function chooseLoad(
  mesh: Mesh,
  jointBores: readonly GripBore[],
  freeBores: readonly GripBore[],
  pick: LoadPick,
): ChosenLoad {
  const box = boxOfMesh(mesh)
  const axis = longestAxis(box)
  const byJoints = pick.hold === 'auto' ? jointEnd(box, axis, jointBores) : null
  const held: ChosenLoad['held'] =
    byJoints !== null ? 'joints' : pick.hold === 'auto' ? `${axis}-low` : pick.hold
  const free: EndName =
    pick.push !== 'auto' ? pick.push : byJoints !== null ? byJoints : otherEnd(held as EndName)
  const freeAxis = free[0] as AxisName
  const atEnd = pick.push === 'auto' ? boresAtEnd(box, free, freeBores) : []
  const direction = pick.direction === 'auto' ? (freeAxis === 'z' ? 'x' : 'z') : pick.direction
  return {
    load: {
      hold: byJoints !== null ? { kind: 'bores', bores: jointBores } : gripOf(box, held as EndName),
      push: atEnd.length > 0 ? { kind: 'bores', bores: atEnd } : gripOf(box, free),
      direction: UNIT[direction],
    },
    held,
    pushed: atEnd.length > 0 ? 'bores' : free,
    direction,
  }
}

const UNIT: Readonly<Record<AxisName, Vec3>> = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] }
function longestAxis({ min, max }: Bounds): AxisName {
  const sides = AXIS_NAMES.map((_, k) => max[k]! - min[k]!)
  return AXIS_NAMES[sides.indexOf(Math.max(...sides))]!
}

function otherEnd(end: EndName): EndName {
  const [axis, side] = end.split('-') as [AxisName, 'low' | 'high']
  return `${axis}-${side === 'low' ? 'high' : 'low'}`
}

function gripOf(box: Bounds, end: EndName): Grip {
  const [axis, side] = end.split('-') as [AxisName, 'low' | 'high']
  const length = alongBox(box, axis, 1) - alongBox(box, axis, 0)
  const [x, y, z] = UNIT[axis]
  const outward: Vec3 = side === 'high' ? [x, y, z] : [-x, -y, -z]
  return { kind: 'end', outward, depthMm: Math.max(LEAST_GRIP_MM, GRIP_SHARE * length) }
}

/** Where a bore lies on an axis of the part, 0–1. */
function shareAlong(box: Bounds, axis: AxisName, { centreMm }: GripBore): number {
  const low = alongBox(box, axis, 0)
  return (centreMm[AXIS_NAMES.indexOf(axis)]! - low) / (alongBox(box, axis, 1) - low)
}

/** The end away from joints that hold one part of the part; null where none do. */
function jointEnd(box: Bounds, axis: AxisName, bores: readonly GripBore[]): EndName | null {
  if (bores.length < 2) return null
  const at = bores.map((bore) => shareAlong(box, axis, bore))
  if (Math.max(...at) - Math.min(...at) > MOST_SPREAD) return null
  const mean = at.reduce((sum, share) => sum + share, 0) / at.length
  return mean < 0.5 ? `${axis}-high` : `${axis}-low`
}

function boresAtEnd(box: Bounds, end: EndName, bores: readonly GripBore[]): GripBore[] {
  const [axis, side] = end.split('-') as [AxisName, 'low' | 'high']
  const near = bores.filter((bore) => {
    const share = shareAlong(box, axis, bore)
    return (
      bore.diameterMm <= SCREW_MM && (side === 'low' ? share <= NEAR_END : share >= 1 - NEAR_END)
    )
  })
  return near.length >= 2 ? near : []
}
