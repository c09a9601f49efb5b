import { useEffect, useRef } from 'react'
import { withSign } from '../../core/words/format.ts'
import { allUpMassG, frameSummary } from '../../state/store/derived.ts'
import type { AppState } from '../../state/store/types.ts'
import { useAppState } from '../appContext.ts'
import { showGrams, showMass } from '../show.ts'
import { formatAddress, SHEETS, type SheetId } from './address.ts'
import { chosenItem } from './chosenItem.ts'
import { useAddress } from './useAddress.ts'
import { massUnit } from '../../core/words/shownUnits.ts'

/** One quiet line to every sheet, each with one live figure of what stands on it. */
export function SheetLinks() {
  const { sheet } = useAddress()
  const figures = {
    frame: useAppState(partWords),
    part: useAppState(chosenWords),
    choose: '',
    carbon: useAppState(carbonWords),
    aircraft: useAppState(aircraftWords),
    bench: useAppState(benchWords),
  } satisfies Record<SheetId, string>
  const place = useRef<HTMLElement>(null)
  useEffect(() => {
    // On a phone the line is wider than the page; only the line itself may be moved.
    const line = place.current
    const link = line?.querySelector<HTMLElement>('[aria-current]')
    if (line === null || link === null || link === undefined) return
    line.scrollTo({ left: link.offsetLeft - 40 })
  }, [sheet])
  const item = useAppState(chosenItem)
  return (
    <nav className="sheet-links" aria-label="Sheets" ref={place}>
      {SHEETS.map(({ id, name }) => (
        <a
          key={id}
          href={formatAddress(id, id === 'part' ? item : null)}
          aria-current={id === sheet ? 'page' : undefined}
        >
          {name}
          {figures[id] === '' ? null : <small> {figures[id]}</small>}
        </a>
      ))}
    </nav>
  )
}

function partWords({ frame }: AppState): string {
  return `${frame.parts.length} ${frame.parts.length === 1 ? 'part' : 'parts'}`
}

function chosenWords(state: AppState): string {
  const item = chosenItem(state)
  return `${item} ${state.frame.parts[item - 1]?.name ?? ''}`
}

function carbonWords(state: AppState): string {
  const difference = frameSummary(state).sum.carbon
  return difference === null
    ? ''
    : `${withSign(difference.massG.mid, showGrams(difference.massG).mid)} ${massUnit()}`
}

function aircraftWords(state: AppState): string {
  const massG = allUpMassG(state)
  return massG === null ? '' : showMass(massG)
}

function benchWords({ frame }: AppState): string {
  const count =
    frame.parts.filter(({ weighIn }) => weighIn !== undefined).length + (frame.wholes?.length ?? 0)
  return count === 0 ? '' : `${count} weighed`
}
