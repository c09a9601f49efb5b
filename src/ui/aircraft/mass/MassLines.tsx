import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { newId } from '../../../state/store/newId.ts'
import type { MassLine } from '../../../core/model/aircraft.ts'
import { crossings } from '../../../core/frame/crossings.ts'
import { MASS_LINES, RULES_NOTE } from '../../../core/data/massLines.ts'
import { massOdds } from '../../../core/frame/odds.ts'
import type { AircraftView } from '../../../state/store/aircraftView.ts'
import { useAppState } from '../../appContext.ts'
import { usePutAircraft } from '../useAircraft.ts'
import { formatMass } from '../../../core/words/format.ts'
import { chanceWords, VERDICT_WORDS } from '../../../core/frame/sayings.ts'
import { dayOf } from '../../../core/words/day.ts'
import { tenthMass } from '../words.ts'
import { MassLineForm } from './MassLineForm.tsx'

/** Masses at which rules change, and where this aircraft stands against each. */
export function MassLines({ view }: { readonly view: AircraftView }) {
  const lines = useAppState((state) => state.frame.aircraft.massLines)
  const put = usePutAircraft()
  const [editedId, setEditedId] = useState<string | null>(null)
  const massG = view.ledger.basicMassG
  const stands = useMemo(
    () =>
      crossings(massG, lines)
        .map((standing) => ({ ...standing, odds: massOdds(view.doubt, standing.line.thresholdG) }))
        .toSorted((a, b) => a.line.thresholdG - b.line.thresholdG),
    [massG, lines, view.doubt],
  )
  const replace = (line: MassLine) => {
    put(
      { massLines: lines.map((each) => (each.id === line.id ? line : each)) },
      `change mass line “${line.name}”`,
    )
  }
  const add = () => {
    const id = `own-${newId()}`
    const line: MassLine = {
      id,
      name: 'My line',
      thresholdG: Math.max(1, Math.round(massG)),
      meaning: 'Type what changes there',
      readOn: dayOf(new Date()),
      source: 'your own',
    }
    put({ massLines: [...lines, line] }, 'add a mass line')
    setEditedId(id)
  }
  return (
    <>
      <h4>Mass lines</h4>
      <p className="hint">
        Where rules change, as read on the day named. They are no legal advice and may have changed
        since: check your authority’s rules. Below means strictly below.
      </p>
      <ul className="mass-lines">
        {stands.map(({ line, below, leftG, odds }) => (
          <li key={line.id} className={below ? undefined : 'mass-line-crossed'}>
            <div className="mass-line">
              <span className="mass-line-name">
                {line.name}
                <span className="range">read {line.readOn}</span>
              </span>
              <span className="mass-line-stand figures">
                {apartWords(Math.abs(leftG))}
                <span className="range">
                  {below ? 'below it' : leftG === 0 ? 'on it' : 'above it'}
                </span>
              </span>
              <span className="mass-line-odds figures">
                {chanceWords(odds.chanceBelow)} below
                <span className="range">{VERDICT_WORDS[odds.verdict]}</span>
              </span>
              <Button
                className="quiet"
                aria-label={`Edit mass line ${line.name}`}
                aria-expanded={editedId === line.id}
                onPress={() => {
                  setEditedId(editedId === line.id ? null : line.id)
                }}
              >
                Edit
              </Button>
            </div>
            <p className="hint">{meaningWords(line.meaning)}.</p>
            {editedId === line.id ? (
              <MassLineForm
                line={line}
                onChange={replace}
                onRemove={() => {
                  setEditedId(null)
                  put(
                    { massLines: lines.filter((each) => each.id !== line.id) },
                    `remove mass line “${line.name}”`,
                  )
                }}
              />
            ) : null}
          </li>
        ))}
      </ul>
      <div className="button-line">
        <Button className="quiet" onPress={add}>
          Add a mass line
        </Button>
        {lines === MASS_LINES ? null : (
          <Button
            className="quiet"
            onPress={() => {
              put({ massLines: MASS_LINES }, 'take the built-in mass lines')
            }}
          >
            Back to the built-in lines
          </Button>
        )}
      </div>
    </>
  )
}

/** What the head of the list says of all lines is not said again of each. */
function meaningWords(meaning: string): string {
  return meaning.replace(`; ${RULES_NOTE}`, '')
}

/** Near a line tenths count; kilograms away they do not. */
function apartWords(apartG: number): string {
  return apartG < 1000 ? tenthMass(apartG) : formatMass(apartG)
}
