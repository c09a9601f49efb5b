import { useState } from 'react'
import { Input, TextField } from 'react-aria-components'
import { TEXT_LIMITS } from '../../core/data/limits.ts'
import { TooLong, tooLongWords } from '../fields/TooLong.tsx'
import { useActions, useAppState } from '../appContext.ts'

/** The frame's name, written straight on the page. */
export function FrameName() {
  const name = useAppState((state) => state.frame.name)
  const { renameFrame } = useActions()
  const [draft, setDraft] = useState<string | null>(null)
  const tooLong = tooLongWords(draft ?? '', TEXT_LIMITS.name)
  const keep = () => {
    if (tooLong !== null) return
    const next = draft?.trim() ?? ''
    if (next !== '' && next !== name) renameFrame(next)
    setDraft(null)
  }
  return (
    <TextField
      isInvalid={tooLong !== null}
      className="frame-name"
      aria-label="Name of the frame"
      value={draft ?? name}
      onChange={setDraft}
      onBlur={keep}
      onKeyDown={(event) => {
        if (event.key === 'Enter') keep()
        if (event.key === 'Escape') setDraft(null)
        event.continuePropagation()
      }}
    >
      <Input />
      <TooLong words={tooLong} />
    </TextField>
  )
}
