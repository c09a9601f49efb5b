import { after, apart, inverse, mapPoint, type RigidMap } from '../mesh/rigidMaps.ts'
import type { Judged } from './rankOffers.ts'
import type { Shape } from './shapeOf.ts'

/** Two ways to a part that put it within this of each other are one. mm */
const CLOSES_MM = 0.5

/** Two parts and the ways they could meet. */
export interface MeetingPair<P> {
  readonly a: P
  readonly b: P
  /** b's, after `mirror`: it stays as it is, or is mirrored in x before it goes anywhere. */
  readonly other: Shape
  readonly mirror: RigidMap
  readonly judged: readonly Judged[]
}

/** How many ways round over a third part come back to where each of the ways puts b. */
export function closedLoops<P>(pairs: readonly MeetingPair<P>[]): ReadonlyMap<Judged, number> {
  const from = new Map<P, { readonly to: P; readonly motion: RigidMap }[]>()
  const add = (a: P, to: P, motion: RigidMap) => {
    const known = from.get(a)
    if (known === undefined) from.set(a, [{ to, motion }])
    else known.push({ to, motion })
  }
  for (const { a, b, judged, mirror } of pairs) {
    if (a === b) continue
    for (const { candidate } of judged) {
      const motion = after(candidate.motion, mirror)
      add(a, b, motion)
      add(b, a, inverse(motion))
    }
  }
  const loops = new Map<Judged, number>()
  for (const { a, b, other, mirror, judged } of pairs) {
    if (a === b) continue
    const middle = mapPoint(mirror, other.centreMm)
    const first = from.get(a) ?? []
    const last = (from.get(b) ?? []).map(({ to, motion }) => ({ to, motion: inverse(motion) }))
    for (const each of judged) {
      const motion = after(each.candidate.motion, mirror)
      let count = 0
      for (const one of first) {
        if (one.to === b) continue
        for (const two of last) {
          if (two.to !== one.to) continue
          // From a to the third and from there to b.
          const round = after(one.motion, two.motion)
          if (apart(motion, round, middle, other.radiusMm) < CLOSES_MM) count++
        }
      }
      if (count > 0) loops.set(each, count)
    }
  }
  return loops
}
