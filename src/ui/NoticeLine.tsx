import { useEffect } from 'react'
import { useActions, useAppState } from './appContext.ts'
import { PlainButton } from './fields/PlainButton.tsx'

const SHOWN_MS = 8000

/** The last thing that happened, for a while, with its undo. */
export function NoticeLine() {
  const notice = useAppState((state) => state.notice)
  const { dismissNotice, undo } = useActions()
  useEffect(() => {
    if (notice === null) return
    const timer = setTimeout(dismissNotice, SHOWN_MS)
    return () => {
      clearTimeout(timer)
    }
  }, [notice, dismissNotice])
  return (
    <div className="notice-place" role="status" aria-live="polite">
      {notice === null ? null : (
        <div className="notice">
          <span>{notice.text}</span>
          {notice.canUndo ? (
            <PlainButton className="quiet" onPress={undo}>
              Undo
            </PlainButton>
          ) : null}
          <PlainButton className="quiet" onPress={dismissNotice} aria-label="Dismiss this note">
            Dismiss
          </PlainButton>
        </div>
      )}
    </div>
  )
}
