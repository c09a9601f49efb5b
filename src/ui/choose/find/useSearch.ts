import { useCallback, useEffect, useRef, useState } from 'react'
import type { PartShape } from '../../../state/store/types.ts'
import { useActions, useReadState } from '../../appContext.ts'
import { frameThen, type FrameThen } from '../chosenParts.ts'
import { searchFrame, type FindAsk, type Found, type SearchNews } from './searchFrame.ts'

/** Where a search is. What was found stays while the frame is what it was found for. */
export interface SearchState {
  readonly kind: 'idle' | 'running' | 'stopped' | 'done'
  readonly news: SearchNews | null
  readonly found: Found | null
  /** What it was found for. */
  readonly from: FrameThen | null
}

const IDLE: SearchState = { kind: 'idle', news: null, found: null, from: null }

export interface Search {
  readonly state: SearchState
  readonly start: (ask: FindAsk, shapes: ReadonlyMap<string, PartShape>) => void
  readonly stop: () => void
}

/**
 * A search that runs beside the page; leaving the sheet calls it off, and what was counted is kept.
 */
export function useSearch(): Search {
  const actions = useActions()
  const readState = useReadState()
  const running = useRef<AbortController | null>(null)
  const [state, setState] = useState(IDLE)

  const stop = useCallback(() => {
    running.current?.abort()
    running.current = null
    setState((before) => (before.kind === 'running' ? { ...before, kind: 'stopped' } : before))
  }, [])
  useEffect(
    () => () => {
      running.current?.abort()
    },
    [],
  )

  const start = useCallback(
    (ask: FindAsk, shapes: ReadonlyMap<string, PartShape>) => {
      running.current?.abort()
      const abort = new AbortController()
      running.current = abort
      const from = frameThen(readState())
      setState({ kind: 'running', news: null, found: null, from })
      const onNews = (news: SearchNews): void => {
        if (!abort.signal.aborted) setState({ kind: 'running', news, found: news.found, from })
      }
      void searchFrame(from, ask, shapes, actions, abort.signal, onNews).then((found) => {
        if (found === null || abort.signal.aborted) return
        running.current = null
        setState((before) => ({ ...before, kind: 'done', found, from }))
      })
    },
    [readState, actions],
  )
  return { state, start, stop }
}
