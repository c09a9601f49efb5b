import { useState } from 'react'
import { Input, Label, TextField } from 'react-aria-components'
import { TEXT_LIMITS } from '../../core/data/limits.ts'
import { TooLong } from '../fields/TooLong.tsx'
import { tooLongWords } from '../fields/tooLongWords.ts'

interface TextBoxProps {
  readonly label: string
  readonly value: string
  /** Letters at most; those of a name unless given. */
  readonly most?: number
  /**
   * Called when the field is left, with what was typed; not called for an unchanged text or one
   * that will not do.
   */
  readonly onChange: (text: string) => void
  /** What is wrong with a text, as a sentence; null for one that will do. */
  readonly check?: (text: string) => string | null
}

interface Draft {
  readonly text: string
  /** The text the field stood at meanwhile; once that changes, what was typed is out of date. */
  readonly of: string
  /** Why it was not taken; null while nobody asked. */
  readonly refused: string | null
}

/**
 * A text that is written once the field is left. What will not do stays as it was typed, with the
 * reason; Escape brings the old one back.
 */
export function TextBox({ label, value, most = TEXT_LIMITS.name, onChange, check }: TextBoxProps) {
  const [kept, setDraft] = useState<Draft | null>(null)
  const draft = kept?.of === value ? kept : null
  const wrongWith = (text: string) =>
    text === '' ? `“${label}” needs a few letters.` : (check?.(text) ?? null)
  const told = draft === null ? null : (tooLongWords(draft.text, most) ?? draft.refused)
  const leave = () => {
    if (draft === null || tooLongWords(draft.text, most) !== null) return
    const text = draft.text.trim()
    const refused = wrongWith(text)
    setDraft(refused === null ? null : { ...draft, refused })
    if (refused === null && text !== value) onChange(text)
  }
  return (
    <TextField
      className="field text-field"
      value={draft?.text ?? value}
      isInvalid={told !== null}
      onChange={(text) => {
        const wasRefused = draft !== null && draft.refused !== null
        setDraft({ text, of: value, refused: wasRefused ? wrongWith(text.trim()) : null })
      }}
      onBlur={leave}
      onKeyDown={(event) => {
        if (event.key === 'Enter') leave()
        else if (event.key === 'Escape' && draft !== null) setDraft(null)
        else event.continuePropagation()
      }}
    >
      <Label>{label}</Label>
      <Input />
      <TooLong words={told} />
    </TextField>
  )
}
