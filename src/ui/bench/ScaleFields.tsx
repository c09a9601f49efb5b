import { Choice } from '../fields/Choice.tsx'
import { READING_LIMITS } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'

/** The scale in use. */
export interface Scale {
  readonly stepG: number
  readonly tareG: number
}

export const SCALE_AT_FIRST: Scale = { stepG: 0.1, tareG: 0 }

const STEPS = [
  { id: '0.01', name: '0.01 g' },
  { id: '0.1', name: '0.1 g' },
  { id: '1', name: '1 g' },
] as const

interface ScaleFieldsProps {
  readonly scale: Scale
  readonly onChange: (scale: Scale) => void
}

/** How fine the scale shows, and what lies on it besides: they hold for what is weighed next. */
export function ScaleFields({ scale, onChange }: ScaleFieldsProps) {
  return (
    <div className="weigh-scale">
      <Choice
        label="Scale step"
        options={STEPS}
        value={STEPS.find(({ id }) => Number(id) === scale.stepG)?.id ?? null}
        onChange={(id) => {
          onChange({ ...scale, stepG: Number(id) })
        }}
      />
      <NumberBox
        label="Tare still on the scale"
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
