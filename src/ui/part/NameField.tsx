import { useState } from 'react'
import { Input, Label, TextField } from 'react-aria-components'
import type { PartEdit } from './usePartEdit.ts'

export function NameField({ name, write }: { readonly name: string; readonly write: PartEdit }) {
  const [draft, setDraft] = useState<string | null>(null)
  const keep = () => {
    const next = draft?.trim() ?? ''
    if (next !== '' && next !== name) write.edit({ name: next })
    setDraft(null)
  }
  return (
    <TextField
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
    </TextField>
  )
}
