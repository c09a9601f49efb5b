import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { FrameRow } from '../../core/frame/types.ts'
import type { ClockTime } from '../../core/model/readings.ts'
import { formatHours, formatRange } from '../../core/words/format.ts'
import { fateWords, learnedHoursWords, strayTimeWords } from '../../core/words/learned.ts'
import { frameSum } from '../../state/store/derived.ts'
import { useActions, useAppState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { PIECES_LIMITS, READING_LIMITS } from '../../core/data/limits.ts'
import { dayOf } from '../../core/words/day.ts'
import { NumberBox } from '../fields/NumberBox.tsx'

const RUN = 'all printed parts'
const NONE: readonly ClockTime[] = []

/** What the user's own clock said of prints; the hours of all the others follow. */
export function ClockRow() {
  const { rows: all, strays, readings, learnedHours } = useAppState(frameSum)
  const rows = all.filter(({ figures }) => figures !== null)
  const clocks = useAppState((state) => state.frame.clocks) ?? NONE
  const startS = useAppState((state) => state.frame.printer.startS)
  const { putReadings, forgetLessons } = useActions()
  const hasCarried = useAppState(({ workshop, frame }) =>
    workshop.lessons.some(({ id, of }) => of === 'time' && !id.startsWith(`${frame.id}/`)),
  )
  const [pieces, setPieces] = useState<ClockTime['pieces']>({})
  const [minutes, setMinutes] = useState<number | null>(null)
  const put = (next: readonly ClockTime[]) => {
    putReadings({ clocks: next }, 'keep a print’s time')
  }
  const calculatedS = runS(rows, pieces, startS)
  const keep = () => {
    if (minutes === null || Object.keys(pieces).length === 0) return
    put([...clocks, clockOf(pieces, minutes * 60, calculatedS)])
    setMinutes(null)
    setPieces({})
  }
  return (
    <div className="clock" role="group" aria-label="Your clock">
      <p className="hint">
        Choose what you printed and type how long it took: the hours of all other parts follow.
      </p>
      <Choice
        label="Printed"
        value={null}
        placeholder={Object.keys(pieces).length === 0 ? 'choose a part' : 'and one more'}
        options={[
          ...rows.map(({ part: { id, name } }) => ({ id, name })),
          { id: RUN, name: 'All parts in one print' },
        ]}
        onChange={(id) => {
          setPieces(id === RUN ? allPieces(rows) : { ...pieces, [id]: 1 })
        }}
      />
      {rows.flatMap(({ part: { id, name } }) => {
        const count = pieces[id]
        if (count === undefined) return []
        return [
          <NumberBox
            key={id}
            label={`${name} in that print`}
            limits={PIECES_LIMITS.spares}
            value={count}
            unit="×"
            onChange={(next) => {
              const { [id]: _old, ...others } = pieces
              setPieces(next === 0 ? others : { ...others, [id]: next })
            }}
          />,
        ]
      })}
      <NumberBox
        label="It took"
        limits={READING_LIMITS.clockMin}
        value={minutes}
        digits={1}
        unit="min"
        {...(calculatedS > 0 ? { hint: `Calculated: ${formatHours(calculatedS)}.` } : {})}
        onChange={setMinutes}
        onEmpty={() => {
          setMinutes(null)
        }}
      />
      <Button
        className="outlined"
        isDisabled={minutes === null || Object.keys(pieces).length === 0}
        onPress={keep}
      >
        Keep this time
      </Button>
      <ul className="learned-list">
        {clocks.map((clock) => {
          const stray = strays.find(({ id }) => id === clock.id)
          const told = readings.find(({ id }) => id === clock.id)
          const name = told?.name ?? ''
          return (
            <li key={clock.id}>
              {name}: {formatHours(clock.timeS)}
              {told === undefined ? '' : `, ${fateWords(told.fate, told.ratio)}`}{' '}
              <Button
                className="quiet"
                onPress={() => {
                  put(clocks.filter(({ id }) => id !== clock.id))
                }}
              >
                Forget
              </Button>
              {stray === undefined ? null : (
                <span className="caution">
                  {strayTimeWords(
                    name,
                    formatHours(clock.timeS),
                    formatRange(stray.foretold, (value) => formatHours(value)),
                    formatRange(stray.taken, (value) => formatHours(value)),
                  )}{' '}
                  <Button
                    className="quiet"
                    onPress={() => {
                      put(clocks.map((one) => (one === clock ? { ...one, trusted: true } : one)))
                    }}
                  >
                    I stand by it
                  </Button>
                </span>
              )}
            </li>
          )
        })}
      </ul>
      {learnedHours === null ? null : (
        <p className="hint">
          {learnedHoursWords(learnedHours.factor, learnedHours.from)}{' '}
          {hasCarried ? (
            <Button
              className="quiet"
              onPress={() => {
                forgetLessons(null, learnedHours.printer)
              }}
            >
              Forget earlier frames
            </Button>
          ) : null}
        </p>
      )}
    </div>
  )
}

function clockOf(pieces: ClockTime['pieces'], timeS: number, calculatedS: number): ClockTime {
  const now = new Date()
  const date = dayOf(now)
  return { id: `clock-${now.getTime()}`, pieces, timeS, calculatedS, date, trusted: false }
}

function allPieces(rows: readonly FrameRow[]): ClockTime['pieces'] {
  return Object.fromEntries(
    rows.flatMap(({ part: { id, quantity, spares } }) =>
      quantity + spares > 0 ? [[id, quantity + spares]] : [],
    ),
  )
}

/** Each piece is calculated with a start of its own; a print starts once. */
function runS(rows: readonly FrameRow[], pieces: ClockTime['pieces'], startS: number): number {
  let wholeS = 0
  let starts = -1
  for (const { part, figures } of rows) {
    const count = pieces[part.id] ?? 0
    wholeS += count * (figures?.timeS.mid ?? 0)
    starts += count
  }
  return Math.max(0, wholeS - Math.max(0, starts) * startS)
}
