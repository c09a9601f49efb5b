import { useEffect, useRef } from 'react'
import { crossedLines } from '../../core/ledger/crossings.ts'
import { useActions, useAppState } from '../appContext.ts'
import { useAircraft } from './useAircraft.ts'
import { tenthG } from './words.ts'

interface Seen {
  readonly frameId: string
  readonly basicG: number
  readonly marginG: number | null
}

/** Says at once when a change takes the aircraft over a mass line or its own limit, or back below it. Draws nothing. */
export function CrossingWatch() {
  const { aircraft, view } = useAircraft()
  const frameId = useAppState((state) => state.frame.id)
  const { tell } = useActions()
  const seen = useRef<Seen | null>(null)
  useEffect(() => {
    // While layers are counted the sum moves by itself; an aircraft of printed parts alone does not fly.
    if (!view.settled || view.missing.length > 0 || aircraft.items.length === 0) return
    const { basicMassG, marginG } = view.ledger
    const before = seen.current
    seen.current = { frameId, basicG: basicMassG, marginG }
    if (before?.frameId !== frameId) return
    const words: string[] = []
    const crossed = crossedLines(before.basicG, basicMassG, aircraft.massLines)
    if (crossed.length > 0) {
      const names = crossed.map(({ line }) => line.name).join(', ')
      const way = crossed[0]?.below === true ? 'now below' : 'no longer below'
      words.push(`${tenthG(basicMassG)} g all-up: ${way} ${names}. Check your authority’s rules.`)
    }
    if (marginG !== null && before.marginG !== null && marginG < 0 !== before.marginG < 0) {
      words.push(
        marginG < 0
          ? `Over your mass limit by ${tenthG(-marginG)} g, growth included.`
          : `Back within your mass limit, ${tenthG(marginG)} g to spare after growth.`,
      )
    }
    if (words.length > 0) tell(words.join(' '))
  }, [aircraft, view, frameId, tell])
  return null
}
