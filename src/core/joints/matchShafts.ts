import { flatAxes } from '../mesh/holes/fitCircle.ts'
import { mapAxes } from '../mesh/rigidMaps.ts'
import { dot, minus, times } from '../model/vectors.ts'
import { boresFit } from './boresFit.ts'
import type { Shape } from './shapeOf.ts'
import type { Candidate, Mouth } from './types.ts'

/** Thinner ones are pins and rims. mm */
const LEAST_SHAFT_MM = 2.5
/** Of many pegs or bores only so many pairs are tried. */
const MOST = 24

/**
 * A peg or a tube of one part in a bore of the other, in as far as it goes: a foot on the mouth, a
 * rod's end at the bore's. Its turn and, for a rod, its slide stay free.
 */
export function matchShafts(a: Shape, b: Shape): readonly Candidate[] {
  const found: Candidate[] = []
  a.mouths.forEach((one, i) => {
    b.mouths.forEach((other, j) => {
      if (found.length < MOST && isShaft(one, other)) found.push(shaftIn(one, other, i, j))
    })
  })
  return found
}

function isShaft(a: Mouth, b: Mouth): boolean {
  if (a.bore.kind === b.bore.kind || a.sunk || b.sunk) return false
  const shaft = a.bore.kind === 'peg' ? a.bore : b.bore
  return shaft.diameterMm >= LEAST_SHAFT_MM && boresFit(a.bore, b.bore)
}

function shaftIn(a: Mouth, b: Mouth, i: number, j: number): Candidate {
  const [bore, peg] = a.bore.kind === 'peg' ? [b, a] : [a, b]
  // A rod ends where the bore does; its way on is then out of the mouth.
  const isRod = peg.bore.openLow && peg.bore.openHigh
  const atBore = isRod ? minus(bore.atMm, times(bore.out, bore.lengthMm)) : bore.atMm
  const [goal, at] = a === bore ? [atBore, b.atMm] : [a.atMm, atBore]
  const into = times(b.out, isRod ? 1 : -1)
  const from = flatAxes(into)
  const to = flatAxes(a.out)
  const motion = mapAxes([from.right, from.up, into], [to.right, to.up, a.out], at, goal)
  return {
    kind: 'shaft',
    pairs: [[i, j]],
    motion,
    direction: a.out,
    planeMm: isRod ? null : dot(a.atMm, a.out),
    offMm: 0,
    areaMm2: 0,
    isDrawn: false,
  }
}
