import '../../styles/habits.css'
import { useMemo } from 'react'
import { Button } from 'react-aria-components'
import { HABIT_FIELDS } from '../../../core/data/habits.ts'
import { habitGrams } from '../../../core/frame/habitGrams.ts'
import { HABIT_DEFAULTS, type Habits, type KnownHabits } from '../../../core/model/habits.ts'
import { formatMass } from '../../../core/words/format.ts'
import { frameSum } from '../../../state/store/derived.ts'
import { useActions, useAppState } from '../../appContext.ts'
import { HabitField } from './HabitField.tsx'

const KEYS = Object.keys(HABIT_FIELDS) as (keyof Habits)[]
const NONE: KnownHabits = {}

/** Every habit of the printer: what is known of it is typed, all else is as usual. */
export function HabitFields() {
  const printer = useAppState((state) => state.frame.printer)
  const { doubt } = useAppState(frameSum)
  const { putPrinter } = useActions()
  const grams = useMemo(() => habitGrams(doubt, printer.id), [doubt, printer.id])
  const known = printer.habits ?? NONE
  const { habits: _habits, ...bare } = printer
  // It stays the same printer: more is known of it.
  const put = (habits: KnownHabits) => {
    putPrinter(Object.keys(habits).length === 0 ? bare : { ...bare, habits })
  }
  return (
    <>
      <p className="hint">
        Leave what you do not know. What you type has no doubt of its own any more; an emptied field
        goes back to the usual.
      </p>
      <ul className="habit-list">
        {KEYS.map((key) => {
          const { [key]: _old, ...others } = known
          const massG = grams[key]
          return (
            <li key={key}>
              <HabitField
                habit={key}
                value={known[key]}
                usual={HABIT_DEFAULTS[key]}
                doubt={massG === undefined ? null : `±\u{A0}${formatMass(massG)} of this frame`}
                onTell={(value) => {
                  put(value === null ? others : { ...others, [key]: value })
                }}
              />
            </li>
          )
        })}
      </ul>
      {Object.keys(known).length === 0 ? null : (
        <Button
          className="quiet"
          onPress={() => {
            put(NONE)
          }}
        >
          Forget them all
        </Button>
      )}
    </>
  )
}
