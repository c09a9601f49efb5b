import { memo, useState } from 'react'
import { Input, Label, TextField } from 'react-aria-components'
import { TEXT_LIMITS } from '../../core/data/limits.ts'
import { TooLong } from '../fields/TooLong.tsx'
import { tooLongWords } from '../fields/tooLongWords.ts'
import type { PartEdit } from './usePartEdit.ts'

interface NameFieldProps {
  readonly name: string
  readonly write: PartEdit
}

export const NameField = memo(function NameField({ name, write }: NameFieldProps) {
  const [draft, setDraft] = useState<string | null>(null)
  const tooLong = tooLongWords(draft ?? '', TEXT_LIMITS.name)
  const keep = () => {
    if (tooLong !== null) return
    const next = draft?.trim() ?? ''
    if (next !== '' && next !== name) write.edit({ name: next })
    setDraft(null)
  }
  return (
    <TextField
      isInvalid={tooLong !== null}
      className="field name-field"
      value={draft ?? name}
      onChange={setDraft}
      onBlur={keep}
      onKeyDown={(event) => {
        if (event.key === 'Enter') keep()
        else event.continuePropagation()
      }}
    >
      <Label>Name</Label>
      <Input />
      <TooLong words={tooLong} />
    </TextField>
  )
})
