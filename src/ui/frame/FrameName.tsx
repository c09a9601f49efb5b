import { useState } from 'react'
import { Input, TextField } from 'react-aria-components'
import { useActions, useAppState } from '../appContext.ts'

/** The frame's name, written straight on the page. */
export function FrameName() {
  const name = useAppState((state) => state.frame.name)
  const { renameFrame } = useActions()
  const [draft, setDraft] = useState<string | null>(null)
  const keep = () => {
    const next = draft?.trim() ?? ''
    if (next !== '' && next !== name) renameFrame(next)
    setDraft(null)
  }
  return (
    <TextField
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
    </TextField>
  )
}
