import { useRef, useState, type KeyboardEvent } from 'react'
import { Group, Input, Label, NumberField, Text } from 'react-aria-components'
import { emptyWords, lettersWords, outsideWords, type Bounds } from './numberWords.ts'
import { useRefusedInput } from './useRefusedInput.ts'

interface NumberBoxProps extends Bounds {
  /** Null shows an empty box; only for a number that may be left out. */
  readonly value: number | null
  readonly onChange: (value: number) => void
  /** Called when the box is emptied; without it an empty box takes its old number back. */
  readonly onEmpty?: () => void
  /** What the arrow keys add; ten times as much with the page keys. Any number between may be typed. */
  readonly step?: number
  /** Fraction digits at most. */
  readonly digits?: number
  readonly hint?: string
  /** Keeps the label for screen readers only. */
  readonly bare?: boolean
}

const STEPS: Readonly<Record<string, number>> = {
  ArrowUp: 1,
  ArrowDown: -1,
  PageUp: 10,
  PageDown: -10,
}

/**
 * A number with its unit. Takes any local way of writing decimals. What is out of bounds is taken as the nearest number
 * that is allowed, and what is no number leaves the old one; either is said below the box.
 */
export function NumberBox(props: NumberBoxProps) {
  const { label, value, onChange, onEmpty, min, max, step = 1, unit, digits = 2 } = props
  const { hint, bare = false } = props
  const [note, setNote] = useState<string | null>(null)
  const group = useRef<HTMLDivElement>(null)
  useRefusedInput(group, () => {
    setNote(lettersWords(props, digits))
  })
  const take = (next: number) => {
    if (!Number.isFinite(next) && onEmpty !== undefined && Number.isNaN(next)) {
      onEmpty()
      return
    }
    const kept = Math.min(max ?? next, Math.max(min ?? next, next))
    if (!Number.isFinite(kept)) {
      setNote(emptyWords(props))
      return
    }
    if (kept !== next) setNote(outsideWords(props, kept))
    // Leaving the box writes its text back, which holds fewer digits than the number may have.
    if (value === null || rounded(kept, digits) !== rounded(value, digits)) onChange(kept)
  }
  const stepBy = (event: KeyboardEvent, typed: number) => {
    if (event.key === 'Enter') setNote(null)
    const steps = STEPS[event.key]
    if (steps === undefined || event.altKey || event.ctrlKey || event.metaKey) return
    event.preventDefault()
    event.stopPropagation()
    const from = Number.isFinite(typed) ? typed : (value ?? min ?? 0)
    const next = rounded(from + steps * step, digits)
    setNote(null)
    take(Math.min(max ?? next, Math.max(min ?? next, next)))
  }
  return (
    <NumberField
      className="field number-box"
      value={value ?? Number.NaN}
      onChange={take}
      isWheelDisabled
      {...(bare ? { 'aria-label': unit === undefined ? label : `${label}, ${unit}` } : {})}
      formatOptions={{ maximumFractionDigits: digits, useGrouping: false }}
    >
      {({ state }) => (
        <>
          {bare ? null : <Label>{label}</Label>}
          <Group
            ref={group}
            className="number-line"
            onBlurCapture={() => {
              setNote(null)
            }}
            onKeyDownCapture={(event) => {
              stepBy(event, state.numberValue)
            }}
          >
            <Input {...(value === null ? { placeholder: '–' } : {})} />
            {unit === undefined ? null : (
              <span className="unit" aria-hidden={bare}>
                {unit}
              </span>
            )}
          </Group>
          {hint === undefined ? null : (
            <Text slot="description" className="hint">
              {hint}
            </Text>
          )}
          {note === null ? null : (
            <p role="alert" className="field-note wrong-text">
              {note}
            </p>
          )}
        </>
      )}
    </NumberField>
  )
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits))
}
