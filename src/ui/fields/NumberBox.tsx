import { FieldError, Group, Input, Label, NumberField, Text } from 'react-aria-components'

interface NumberBoxProps {
  readonly label: string
  readonly value: number
  readonly onChange: (value: number) => void
  readonly min?: number
  readonly max?: number
  readonly step?: number
  /** Shown behind the number; part of the accessible name. */
  readonly unit?: string
  /** Fraction digits shown at most. */
  readonly digits?: number
  readonly hint?: string
  /** Keeps the label for screen readers only. */
  readonly bare?: boolean
}

/** A number with its unit. Takes any local way of writing decimals; empty or senseless input falls back to the old value. */
export function NumberBox(props: NumberBoxProps) {
  const { label, value, onChange, min, max, step, unit, digits = 2, hint, bare = false } = props
  return (
    <NumberField
      className="field number-box"
      value={value}
      onChange={(next) => {
        if (Number.isFinite(next) && next !== value) onChange(next)
      }}
      {...(min === undefined ? {} : { minValue: min })}
      {...(max === undefined ? {} : { maxValue: max })}
      {...(step === undefined ? {} : { step })}
      {...(bare ? { 'aria-label': unit === undefined ? label : `${label}, ${unit}` } : {})}
      formatOptions={{ maximumFractionDigits: digits, useGrouping: false }}
    >
      {bare ? null : <Label>{label}</Label>}
      <Group className="number-line">
        <Input />
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
      <FieldError />
    </NumberField>
  )
}
