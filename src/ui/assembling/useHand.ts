import { useState } from 'react'
import type { JoinablePart } from '../../core/joints/equalPatterns.ts'
import { fastenerFor } from '../../core/joints/fastenerFor.ts'
import type { StandingPiece } from '../../core/joints/standingPieces.ts'
import type { Mouth } from '../../core/joints/types.ts'
import type { LoosePiece } from '../../core/joints/waysFor.ts'
import type { BoreMark, Joint } from '../../core/model/joints.ts'
import { dot, times } from '../../core/model/vectors.ts'

type Bare = Omit<Joint, 'id'>
export type By = 'holes' | 'faces' | 'drawn'

/** What a hand has picked on two pieces. */
interface Picks {
  readonly by: By
  /**
   * Pairs of mouths that are settled, before the one that is being picked: standing piece first.
   */
  readonly pairs: readonly (readonly [number, number])[]
  readonly first: number | null
  readonly second: number | null
  /** Turn, slide and gap, where they were typed. */
  readonly typed: Partial<Pick<Bare, 'turnDeg' | 'slideMm' | 'gapMm'>>
}

export interface Hand extends Picks {
  readonly joint: Bare | null
  readonly change: (patch: Partial<Picks>) => void
  readonly letGo: () => void
}

const NOTHING: Picks = { by: 'holes', pairs: [], first: null, second: null, typed: {} }

/** What is picked by hand, and the joint it makes; let go once `key` is another. */
export function useHand(
  key: string,
  stands: StandingPiece | undefined,
  loose: LoosePiece | undefined,
  shapes: Readonly<Record<string, JoinablePart>>,
): Hand {
  const [held, setHeld] = useState<Picks & { readonly key: string }>({ key, ...NOTHING })
  const picks = held.key === key ? held : NOTHING
  const made = stands && loose ? jointBy(picks, stands, loose, shapes) : null
  return {
    ...picks,
    joint: made && { ...made, ...picks.typed },
    change(patch) {
      setHeld({ ...picks, ...patch, key })
    },
    letGo() {
      setHeld({ key, ...NOTHING })
    },
  }
}

function jointBy(
  { by, pairs, first, second }: Picks,
  stands: StandingPiece,
  loose: LoosePiece,
  shapes: Readonly<Record<string, JoinablePart>>,
): Bare | null {
  const [onShape, ownShape] = [shapes[stands.partId], shapes[loose.partId]]
  if (onShape === undefined || ownShape === undefined) return null
  const ends = {
    a: { partId: stands.partId, piece: stands.piece, bores: [], face: null },
    b: { partId: loose.partId, piece: loose.piece, bores: [], face: null },
    mirrored: stands.isMirrored !== loose.isMirrored,
    turnDeg: 0,
    slideMm: 0,
    gapMm: 0,
    fastener: null,
  }
  if (by === 'drawn') return { ...ends, kind: 'drawn' }
  if (by === 'faces') {
    const [one, other] = [onShape.faces[first ?? -1], ownShape.faces[second ?? -1]]
    if (one === undefined || other === undefined) return null
    const a = { ...ends.a, face: { pointMm: one.centreMm, normal: one.normal } }
    const b = { ...ends.b, face: { pointMm: other.centreMm, normal: other.normal } }
    return { ...ends, a, b, kind: 'faces' }
  }
  const all = first === null || second === null ? pairs : [...pairs, [first, second] as const]
  const mouths = all.flatMap(([i, j]) => {
    const [one, other] = [onShape.mouths[i], ownShape.mouths[j]]
    return one === undefined || other === undefined ? [] : [[one, other] as const]
  })
  const [pair] = mouths
  if (pair === undefined) return null
  const [one, other] = pair
  const isShaft = (one.bore.kind === 'peg') !== (other.bore.kind === 'peg')
  const rod = [one, other].find(({ bore }) => bore.kind === 'peg')?.bore
  // A rod slides in its bore; a peg stands on its foot.
  const slides = isShaft && rod?.openLow === true && rod.openHigh
  const boresA = mouths.map(([{ bore }]) => bore)
  // Without faces both axes have to go one way: into the bore.
  const boresB = mouths.map(([m, n]) => (slides ? alongInto(m, n) : n.bore))
  // A peg's foot looks the way it goes, as a face does that touches.
  const face = ({ atMm, out }: Mouth) => (slides ? null : { pointMm: atMm, normal: out })
  // As far in as it goes.
  const deepMm = (other.lengthMm - one.lengthMm) / 2
  return {
    ...ends,
    a: { ...ends.a, bores: boresA, face: face(one) },
    b: { ...ends.b, bores: boresB, face: face(other) },
    slideMm: slides ? deepMm * (isAlong(one) ? 1 : -1) : 0,
    kind: isShaft ? 'shaft' : 'bores',
    fastener: isShaft ? null : fastenerFor(boresA, boresB),
  }
}

const isAlong = ({ bore, out }: Mouth): boolean => dot(bore.axis, out) > 0

/** b's bore with its axis the way that a's has, where a rod and its bore open to one side. */
function alongInto(a: Mouth, b: Mouth): BoreMark {
  const { axis, openLow, openHigh } = b.bore
  if (isAlong(a) === isAlong(b)) return b.bore
  return { ...b.bore, axis: times(axis, -1), openLow: openHigh, openHigh: openLow }
}
