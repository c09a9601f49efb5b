import { turnedOver } from '../mesh/turnedOver.ts'
import { nextBore } from '../mesh/holes/boreEnds.ts'
import { findHoles, type Hole } from '../mesh/holes/findHoles.ts'
import type { BoreMark } from '../model/joints.ts'
import type { Mesh } from '../model/mesh.ts'
import { dot, lengthOf, minus, plus, times } from '../model/vectors.ts'
import type { Mouth } from './types.ts'

/** A cone that goes on further than this is there for a head; less is a chamfer. mm */
const CHAMFER_MM = 0.8
/**
 * Wider at its mouth than inside by this factor, a counterbore takes a head: those of ISO 4762 are
 * 1.55 to 1.72 times their clearance holes (ISO 273, medium), seats of heat-set inserts no more
 * than 1.38 times (Accu hole charts).
 */
const STEP = 1.45
/** A seat is wider than what goes on below it by this factor at least. */
const SEAT = 1.05
/** Shorter for their width than this, round outsides are discs and not pegs. */
const STUBBY = 0.4
/** Wider ones are bodies (mm; common practice, no source). */
const WIDEST_PEG_MM = 60

/**
 * Ends of the bores of a mesh and feet of its pegs: where another part can meet it.
 *
 * @param mesh in mm, faced outwards.
 */
export function findMouths(mesh: Mesh): readonly Mouth[] {
  const bores = findHoles(mesh)
  return [
    ...bores.flatMap((hole) => mouthsOf(hole, bores)),
    // What turns inwards on the mesh turned over turns outwards on the part.
    ...findHoles(turnedOver(mesh)).flatMap(feetOf),
  ]
}

function mouthsOf(hole: Hole, all: readonly Hole[]): readonly Mouth[] {
  return ([-1, 1] as const).flatMap((way): readonly Mouth[] => {
    const isOpen = way < 0 ? hole.openLow : hole.openHigh
    if (!isOpen || nextBore(hole, way, all) !== null) return []
    const chain = chainFrom(hole, way < 0 ? 1 : -1, all)
    const narrowest = chain.reduce((least, each) => (each.diameter < least.diameter ? each : least))
    const flare = way < 0 ? hole.flareLow : hole.flareHigh
    const out = times(hole.axis, way)
    const atMm = plus(hole.centre, times(out, hole.depth / 2 + flare))
    const last = chain.at(-1)!
    const lengthMm = lengthOf(minus(atMm, last.centre)) + last.depth / 2
    const sunk = flare > CHAMFER_MM || hole.diameter > STEP * narrowest.diameter
    // What bites in an insert bites in its seat.
    const isSeat = !sunk && hole.diameter > SEAT * narrowest.diameter
    return [{ bore: markOf(isSeat ? hole : narrowest, 'bore'), atMm, out, lengthMm, sunk }]
  })
}

function chainFrom(first: Hole, way: -1 | 1, all: readonly Hole[]): readonly Hole[] {
  const chain = [first]
  let along = way
  for (let next = nextBore(first, way, all); next !== null; next = nextBore(next, along, all)) {
    if (chain.includes(next)) break
    if (dot(next.axis, chain.at(-1)!.axis) < 0) along = along < 0 ? 1 : -1
    chain.push(next)
  }
  return chain
}

/** Of a peg on a foot, the foot; of a rod, free at both ends, each end as if it were one. */
function feetOf(hole: Hole): readonly Mouth[] {
  if (hole.diameter > WIDEST_PEG_MM || hole.depth < STUBBY * hole.diameter) return []
  // Seen from inside the solid a free end is a floor, a foot goes on.
  const bore: BoreMark = {
    ...markOf(hole, 'peg'),
    openLow: !hole.openLow,
    openHigh: !hole.openHigh,
  }
  return ([-1, 1] as const).flatMap((way): readonly Mouth[] => {
    const tipIsFree = way < 0 ? bore.openLow : bore.openHigh
    if (!tipIsFree) return []
    const out = times(hole.axis, way)
    const atMm = plus(hole.centre, times(out, -hole.depth / 2))
    return [{ bore, atMm, out, lengthMm: hole.depth, sunk: false }]
  })
}

/** What is kept of a hole by which a joint knows it again, in the hole's own unit. */
export function markOf(hole: Hole, kind: BoreMark['kind']): BoreMark {
  const { axis, centre, diameter, depth, openLow, openHigh } = hole
  return {
    kind,
    centreMm: centre,
    axis,
    diameterMm: diameter,
    depthMm: depth,
    openLow,
    openHigh,
  }
}
