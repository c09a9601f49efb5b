import { useState } from 'react'
import { shownNumber } from './shownNumber.ts'
import { parseNumber } from '../../core/words/parseNumber.ts'
import type { Bounds } from './numberWords.ts'
import { readNumber } from './readNumber.ts'

interface Draft {
  readonly text: string
  /** The number the box stood at meanwhile; once that changes, what was typed is out of date. */
  readonly of: number | null
  /** Why it was not taken; null while nobody asked. */
  readonly refused: string | null
}

interface NumberDraft {
  readonly text: string
  readonly refused: string | null
  readonly isTyped: boolean
  type(text: string): void
  /** Takes what was typed, or says why not; false when it was refused. */
  settle(): boolean
  /** Back to the number that holds. */
  revert(): void
  /** One step up or down, kept inside the bounds. */
  step(by: number): void
}

export interface DraftOptions extends Bounds {
  readonly value: number | null
  readonly digits: number
  /** Decimals that can have been typed, see `shownNumber`. */
  readonly finest: number
  readonly onChange: (value: number) => void
  readonly onEmpty?: (() => void) | undefined
}

/** What stands in a number box: the number, or what was typed and not yet taken. */
export function useNumberDraft(options: DraftOptions): NumberDraft {
  const { value, digits, finest, min, max, onChange, onEmpty } = options
  const [kept, setDraft] = useState<Draft | null>(null)
  const draft = kept !== null && Object.is(kept.of, value) ? kept : null
  const shown = value === null ? '' : shownNumber(value, digits, finest)

  function read(text: string): { value: number | null } | { refused: string } {
    return text.trim() === '' && onEmpty !== undefined ? { value: null } : readNumber(text, options)
  }

  return {
    text: draft?.text ?? shown,
    refused: draft?.refused ?? null,
    isTyped: draft !== null,
    type(text) {
      const still = draft === null || draft.refused === null ? null : read(text)
      const refused = still !== null && 'refused' in still ? still.refused : null
      setDraft({ text, of: value, refused })
    },
    settle() {
      if (draft === null || draft.text === shown) {
        setDraft(null)
        return true
      }
      const taken = read(draft.text)
      if ('refused' in taken) {
        setDraft({ ...draft, refused: taken.refused })
        return false
      }
      setDraft(null)
      if (taken.value === null) {
        if (value !== null) onEmpty?.()
      } else if (taken.value !== value) {
        onChange(taken.value)
      }
      return true
    },
    revert() {
      setDraft(null)
    },
    step(by) {
      const from = (draft === null ? null : parseNumber(draft.text)) ?? value ?? min ?? 0
      const next = Number((from + by).toFixed(digits))
      const bounded = Math.min(max ?? next, Math.max(min ?? next, next))
      setDraft(null)
      if (bounded !== value) onChange(bounded)
    },
  }
}
