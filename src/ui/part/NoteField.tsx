import { useState } from 'react'
import { Label, TextArea, TextField } from 'react-aria-components'
import { TEXT_LIMITS } from '../../core/data/limits.ts'
import { TooLong } from '../fields/TooLong.tsx'
import { tooLongWords } from '../fields/tooLongWords.ts'
import type { PartEdit } from './usePartEdit.ts'

/** Free words about a part; written when the field is left, so that a note is one undo step. */
export function NoteField({ note, write }: { readonly note: string; readonly write: PartEdit }) {
  const [draft, setDraft] = useState<string | null>(null)
  const tooLong = tooLongWords(draft ?? '', TEXT_LIMITS.note)
  return (
    <TextField
      isInvalid={tooLong !== null}
      className="field note-field"
      value={draft ?? note}
      onChange={setDraft}
      onBlur={() => {
        if (tooLong !== null) return
        if (draft !== null && draft !== note) write.edit({ note: draft })
        setDraft(null)
      }}
    >
      <Label>Note</Label>
      <TextArea rows={2} />
      <TooLong words={tooLong} />
    </TextField>
  )
}
