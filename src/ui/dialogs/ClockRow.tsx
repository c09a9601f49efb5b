import { Button } from 'react-aria-components'
import { NumberBox } from '../fields/NumberBox.tsx'

interface ClockRowProps {
  /** Real hours ÷ estimated hours; null until a print was timed. */
  readonly factor: number | null
  readonly onChange: (factor: number | null) => void
}

/** What the user's own clock says of the hours. */
export function ClockRow({ factor, onChange }: ClockRowProps) {
  return (
    <>
      <NumberBox
        label="Your clock"
        value={factor ?? 1}
        min={0.2}
        max={5}
        step={0.01}
        unit="real ÷ estimated"
        hint={
          factor === null
            ? 'Not timed yet: hours claim ±15 %. Time a print, divide by the estimate and type it here; hours then claim ±8.5 %.'
            : 'Hours are multiplied by this, and claim ±8.5 %.'
        }
        onChange={onChange}
      />
      {factor !== null && (
        <Button
          className="quiet"
          onPress={() => {
            onChange(null)
          }}
        >
          Forget the clock
        </Button>
      )}
    </>
  )
}
