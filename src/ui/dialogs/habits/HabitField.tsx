import { HABIT_FIELDS, type HabitRange } from '../../../core/data/habits.ts'
import { HABIT_LIMITS } from '../../../core/data/limits.ts'
import type { HabitNumber, Habits } from '../../../core/model/habits.ts'
import { Choice } from '../../fields/Choice.tsx'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { showNumber } from '../../show.ts'
import { HabitPicture } from './HabitPicture.tsx'
import { shownOf, shownAs } from '../../../core/words/shownUnits.ts'

type HabitValue = Habits[keyof Habits]

interface HabitFieldProps {
  readonly habit: keyof Habits
  /** Undefined while nobody told. */
  readonly value: HabitValue | undefined
  readonly usual: HabitValue
  /** What it may change while it is not known; null where that is nothing or it is known. */
  readonly doubt: string | null
  /** Null forgets it. */
  readonly onTell: (value: HabitValue | null) => void
}

/** One habit: a picture of it, what it is in a sentence, and what is known of it. */
export function HabitField({ habit, value, usual, doubt, onTell }: HabitFieldProps) {
  const field = HABIT_FIELDS[habit]
  const limits = HABIT_LIMITS[habit as HabitNumber]
  const behind = doubt === null ? '' : ` Not knowing it: ${doubt}.`
  return (
    <div className="habit">
      <HabitPicture habit={habit} />
      {'choices' in field ? (
        <Choice
          label={field.name}
          value={value === undefined ? UNKNOWN : String(value)}
          hint={`${field.what} Usually ${wordOf(field, usual)}.${behind}`}
          options={[
            { id: UNKNOWN, name: 'Not known' },
            ...field.choices.map((choice) => ({
              id: String(choice),
              name: wordOf(field, choice),
            })),
          ]}
          onChange={(id) => {
            onTell(field.choices.find((choice) => String(choice) === id) ?? null)
          }}
        />
      ) : (
        <NumberBox
          label={field.name}
          {...(habit === 'holdMm' ? { help: 'hold' as const } : {})}
          limits={limits}
          value={typeof value === 'number' ? value : null}
          usual={showIn(Number(usual), field.unit)}
          step={limits.max > 10 ? 0.5 : 0.05}
          unit={field.unit === 'share' ? 'of wall' : field.unit}
          hint={`${field.what} ${spanWords(Number(usual), field)}${behind}`}
          onChange={onTell}
          onEmpty={() => {
            onTell(null)
          }}
        />
      )}
    </div>
  )
}

const UNKNOWN = 'not known'

/** "Usually 1, from 0.8 to 1.3." */
function spanWords(usual: number, { low, high, unit }: Pick<HabitRange, 'low' | 'high' | 'unit'>) {
  const [is, from, to] = [usual, low, high].map((value) => showIn(value, unit))
  return `Usually\u{A0}${is}, from\u{A0}${from} to\u{A0}${to}.`
}

/** Up to three significant digits, in the unit that the field is typed in. */
function showIn(value: number, unit: string): string {
  const as = shownAs(unit)
  return showNumber(shownOf(value, as), 2 + as.finer)
}

function wordOf(
  field: { readonly choices: readonly HabitValue[]; readonly words: readonly string[] },
  choice: HabitValue,
): string {
  return (field.words[field.choices.indexOf(choice)] ?? String(choice)).toLowerCase()
}
