import { Button } from 'react-aria-components'
import type { MassLine } from '../../../core/model/aircraft.ts'
import { MASS_LIMITS, TEXT_LIMITS } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { TextBox } from '../TextBox.tsx'

interface MassLineFormProps {
  readonly line: MassLine
  readonly onChange: (line: MassLine) => void
  readonly onRemove: () => void
}

export function MassLineForm({ line, onChange, onRemove }: MassLineFormProps) {
  return (
    <div className="craft-inset" role="group" aria-label={`Mass line ${line.name}`}>
      <TextBox
        label="Name"
        value={line.name}
        onChange={(name) => {
          onChange({ ...line, name })
        }}
      />
      <NumberBox
        label="Threshold"
        limits={MASS_LIMITS.thresholdG}
        value={line.thresholdG}
        step={0.01}
        unit="g"
        onChange={(thresholdG) => {
          onChange({ ...line, thresholdG })
        }}
      />
      <TextBox
        label="What changes there"
        value={line.meaning}
        most={TEXT_LIMITS.words}
        onChange={(meaning) => {
          onChange({ ...line, meaning: meaning.replace(/\.$/, '') })
        }}
      />
      <TextBox
        label="Read on"
        value={line.readOn}
        check={(text) =>
          isDay(text) ? null : `“Read on” takes a day as year-month-day, such as ${line.readOn}.`
        }
        onChange={(readOn) => {
          onChange({ ...line, readOn })
        }}
      />
      <TextBox
        label="Source"
        value={line.source}
        most={TEXT_LIMITS.words}
        onChange={(source) => {
          onChange({ ...line, source })
        }}
      />
      <div className="button-line">
        <Button className="quiet" onPress={onRemove}>
          Remove this line
        </Button>
      </div>
    </div>
  )
}

function isDay(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(text))
}
