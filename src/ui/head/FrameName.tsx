import { useState } from 'react'
import { TEXT_LIMITS } from '../../core/data/limits.ts'
import { useActions, useAppState } from '../appContext.ts'
import { tooLongWords } from '../fields/tooLongWords.ts'

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
    <span className="frame-name">
      <input
        type="text"
        aria-label="Name of the frame"
        aria-invalid={tooLong !== null}
        aria-describedby={tooLong === null ? undefined : 'frame-name-note'}
        value={draft ?? name}
        onChange={(event) => {
          setDraft(event.target.value)
        }}
        onBlur={keep}
        onKeyDown={(event) => {
          if (event.key === 'Enter') keep()
          if (event.key === 'Escape') setDraft(null)
        }}
      />
      {tooLong === null ? null : (
        <span id="frame-name-note" role="alert" className="field-note wrong-text">
          {tooLong}
        </span>
      )}
    </span>
  )
}
