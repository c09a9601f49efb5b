import { useEffect, useRef } from 'react'
import { crossingWords, type MassStanding } from '../../core/frame/crossings.ts'
import { useActions, useAppState } from '../appContext.ts'
import { boughtAircraft } from '../../state/store/derived.ts'
import { useAircraft } from './useAircraft.ts'

interface Seen {
  readonly frameId: string
  readonly standing: MassStanding
}

/**
 * Says at once when a change takes the aircraft over a mass line or its own limit, or back below
 * it. Draws nothing.
 */
export function CrossingWatch() {
  const { view } = useAircraft()
  const aircraft = useAppState(boughtAircraft)
  const frameId = useAppState((state) => state.frame.id)
  const { tell } = useActions()
  const seen = useRef<Seen | null>(null)
  useEffect(() => {
    // While layers are counted the sum moves by itself; an aircraft of printed parts alone does not
    // fly.
    if (!view.settled || view.missing.length > 0 || aircraft.items.length === 0) return
    const before = seen.current
    seen.current = { frameId, standing: view.ledger }
    if (before?.frameId !== frameId) return
    const words = crossingWords(before.standing, view.ledger, aircraft.massLines)
    if (words !== null) tell(words)
  }, [aircraft, view, frameId, tell])
  return null
}
