import { useCallback, useEffect, useState } from 'react'
import type { OffersAnswer } from '../../state/store/types.ts'
import { useJoinable } from '../useJoinable.ts'
import { newId } from '../../state/store/newId.ts'
import { useActions, useAppState } from '../appContext.ts'

export type Offers =
  | { readonly kind: 'looking' | 'failed' }
  | ({ readonly kind: 'found'; readonly id: string } & OffersAnswer)

/**
 * What could be joined, looked for anew whenever a part, its unit or its count changes; and how to
 * look again.
 */
export function useOffers(): readonly [Offers, () => void] {
  const { listJointOffers } = useActions()
  const parts = useJoinable()
  const meshes = useAppState((state) => state.frame.parts)
  const [offers, setOffers] = useState<Offers>({ kind: 'looking' })
  const [asked, setAsked] = useState(0)
  // What else of a part may change leaves its holes where they are.
  const asks = JSON.stringify([
    meshes.map(({ meshHash, unit, keepsHairs }) => [meshHash, unit, keepsHairs === true]),
    parts.map(({ id, quantity, mirrored, body }) => [id, quantity, mirrored, body]),
  ])
  useEffect(() => {
    const abort = new AbortController()
    void listJointOffers(abort.signal).then((answer) => {
      if (abort.signal.aborted) return
      setOffers(answer === null ? { kind: 'failed' } : { kind: 'found', id: newId(), ...answer })
    })
    return () => {
      abort.abort()
    }
  }, [asks, asked, listJointOffers])
  const again = useCallback(() => {
    setOffers({ kind: 'looking' })
    setAsked((before) => before + 1)
  }, [])
  return [offers, again]
}
