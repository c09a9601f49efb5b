import { useState } from 'react'
import { Input, Label, TextField } from 'react-aria-components'
import { TEXT_LIMITS } from '../../core/data/limits.ts'

interface TextBoxProps {
  readonly label: string
  readonly value: string
  /** Called when the field is left, with what was typed; not called for an unchanged or empty text. */
  readonly onChange: (text: string) => void
  /** What is wrong with a text, as a sentence; null for one that will do. */
  readonly check?: (text: string) => string | null
}

/** A short text that is written once the field is left. What will not do is said below it, and the old text is back. */
export function TextBox({ label, value, onChange, check }: TextBoxProps) {
  const [typed, setTyped] = useState<string | null>(null)
  const [note, setNote] = useState<string | null>(null)
  const leave = () => {
    if (typed === null) return
    const text = typed.trim()
    const wrong = text === '' ? `“${label}” needs a few letters.` : (check?.(text) ?? null)
    setTyped(null)
    setNote(wrong === null ? null : `${wrong} The old text is back.`)
    if (wrong === null && text !== value) onChange(text)
  }
  return (
    <TextField
      className="field text-field"
      value={typed ?? value}
      onChange={setTyped}
      onBlur={leave}
      onKeyDown={(event) => {
        if (event.key === 'Enter') leave()
      }}
    >
      <Label>{label}</Label>
      <Input maxLength={TEXT_LIMITS.name} />
      {note === null ? null : (
        <p role="alert" className="field-note wrong-text">
          {note}
        </p>
      )}
    </TextField>
  )
}
