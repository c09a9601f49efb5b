import { Input, Label, TextField } from 'react-aria-components'

interface TextBoxProps {
  readonly label: string
  readonly value: string
  /** Called when the field is left, with what was typed; not called for an unchanged or empty text. */
  readonly onChange: (text: string) => void
}

/** A short text that is written once the field is left. */
export function TextBox({ label, value, onChange }: TextBoxProps) {
  return (
    <TextField
      key={value}
      className="field text-field"
      defaultValue={value}
      onBlur={(event) => {
        const text = event.target.value.trim()
        if (text !== '' && text !== value) onChange(text)
      }}
    >
      <Label>{label}</Label>
      <Input maxLength={200} />
    </TextField>
  )
}
