import type { Candidate, Verdict } from './types.ts'

export interface Judged {
  readonly candidate: Candidate
  readonly verdict: Verdict
  /** Of posts between the faces; left out where they touch. mm */
  readonly gapMm?: number
}

/**
 * The best first: as drawn; no head shut in and nothing covered; by more holes; seated better;
 * going out further by two holes, touching more by others. `closes` tells how many loops each would
 * close.
 */
export function rankOffers<T extends Judged>(
  offers: readonly T[],
  closes: (offer: T) => number,
): readonly T[] {
  const keys = new Map(offers.map((offer) => [offer, keyOf(offer, closes(offer))]))
  return offers.toSorted((one, other) => {
    const [a, b] = [keys.get(one) ?? [], keys.get(other) ?? []]
    const place = a.findIndex((value, k) => Math.abs(value - b[k]!) > 1e-6)
    return place < 0 ? 0 : b[place]! - a[place]!
  })
}

function keyOf({ candidate, verdict }: Judged, closes: number): readonly number[] {
  return [
    candidate.isDrawn ? 1 : 0,
    -verdict.headsInside,
    -verdict.covered,
    closes,
    HOLES_OF[candidate.kind] ?? candidate.pairs.length,
    Math.round(10 * verdict.seated),
    // Two holes alone: what hangs on them goes out; what lies on more lies over what carries it.
    candidate.kind === 'bores' && candidate.pairs.length === 2 ? verdict.outMm : verdict.contactMm2,
  ]
}

/** Equal faces speak as two holes do; less than any do a shaft and lying as drawn. */
const HOLES_OF: Partial<Record<Candidate['kind'], number>> = { faces: 2, shaft: 1, drawn: 0 }
