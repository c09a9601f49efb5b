import { Choice } from '../fields/Choice.tsx'
import { READING_LIMITS } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { shownAs, keptOf } from '../../core/words/shownUnits.ts'
import { formatAll } from '../../core/words/format.ts'

/** The scale in use. */
export interface Scale {
  readonly stepG: number
  readonly tareG: number
}

export const SCALE_AT_FIRST: Scale = { stepG: 0.1, tareG: 0 }

/** Steps that scales have, in the unit that is shown. */
const STEPS = { g: [0.01, 0.1, 1], oz: [0.001, 0.005, 0.01, 0.05] } as const

function stepOptions() {
  const as = shownAs('g')
  const steps: readonly number[] = as.label === 'oz' ? STEPS.oz : STEPS.g
  return steps.map((step) => ({
    id: String(keptOf(step, as)),
    name: `${formatAll(step, 3)} ${as.label}`,
  }))
}

interface ScaleFieldsProps {
  readonly scale: Scale
  readonly onChange: (scale: Scale) => void
}

/** How fine the scale shows, and what lies on it besides: they hold for what is weighed next. */
export function ScaleFields({ scale, onChange }: ScaleFieldsProps) {
  const options = stepOptions()
  return (
    <div className="weigh-scale">
      <Choice
        label="Scale step"
        options={options}
        value={options.find(({ id }) => Number(id) === scale.stepG)?.id ?? null}
        onChange={(id) => {
          onChange({ ...scale, stepG: Number(id) })
        }}
      />
      <NumberBox
        label="Tare still on the scale"
        help="tare"
        limits={READING_LIMITS.tareG}
        value={scale.tareG}
        step={scale.stepG}
        unit="g"
        onChange={(tareG) => {
          onChange({ ...scale, tareG })
        }}
      />
    </div>
  )
}
