import { useEffect } from 'react'
import { useActions, useAppState } from '../appContext.ts'
import { PlainButton } from '../fields/PlainButton.tsx'

/**
 * Undo and redo, by button and by Ctrl+Z / Ctrl+Shift+Z (also Ctrl+Y); text fields keep their own
 * undo.
 */
export function HistoryButtons() {
  const { undo, redo } = useActions()
  const undoLabel = useAppState((state) => state.undoLabel)
  const redoLabel = useAppState((state) => state.redoLabel)
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return
      const key = event.key.toLowerCase()
      if (key !== 'z' && key !== 'y') return
      event.preventDefault()
      if (key === 'y' || event.shiftKey) redo()
      else undo()
    }
    window.addEventListener('keydown', onKey)
    return () => {
      window.removeEventListener('keydown', onKey)
    }
  }, [undo, redo])
  if (undoLabel === null && redoLabel === null) return null
  return (
    <>
      <PlainButton
        className="quiet"
        isDisabled={undoLabel === null}
        onPress={undo}
        aria-label={undoLabel === null ? 'Undo' : `Undo: ${undoLabel}`}
      >
        Undo
      </PlainButton>
      <PlainButton
        className="quiet"
        isDisabled={redoLabel === null}
        onPress={redo}
        aria-label={redoLabel === null ? 'Redo' : `Redo: ${redoLabel}`}
      >
        Redo
      </PlainButton>
    </>
  )
}

const TEXT_TYPES = new Set(['text', 'search', 'url', 'email', 'tel', 'number', 'password'])

function isTyping(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true
  return target instanceof HTMLInputElement && TEXT_TYPES.has(target.type)
}
