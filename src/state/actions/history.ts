import type { StoreApi } from 'zustand/vanilla'
import type { Frame, Part } from '../../core/model/frame.ts'
import { keepRatios } from './keepRatios.ts'
import { whyNotKept } from '../storage/whyNotKept.ts'
import type { AppState } from '../store/types.ts'

/** A frame as it was, and the words for what was then done to it. */
interface Step {
  readonly frame: Frame
  readonly label: string
  readonly gesture: string | null
}

export interface CommitOptions {
  /** Commits in a row with the same gesture are undone together. */
  readonly gesture?: string | undefined
  /** Other state that changes with the frame, such as a notice. */
  readonly also?: Partial<AppState>
}

/**
 * Undo and redo as whole frames: they are immutable and share what did not change, so a step costs
 * next to nothing.
 */
export interface History {
  /** Makes `frame` the present one. Does nothing to the history when it is the same object. */
  commit(label: string, frame: Frame, options?: CommitOptions): void
  undo(): void
  redo(): void
  /** Makes `frame` the present one, with nothing before it to go back to. */
  reset(frame: Frame, also?: Partial<AppState>): void
  /** Gives a project its new name in every step, so that undo does not take it back by the way. */
  rename(projectId: string, name: string): void
  /**
   * Changes a part now and in every step before and after, so that undo neither sees nor takes it
   * back.
   */
  amendPart(id: string, patch: Pick<Part, 'countsFully'>): void
}

const MAX_STEPS = 500

export function createHistory(store: StoreApi<AppState>): History {
  let past: readonly Step[] = []
  let future: readonly Step[] = []

  function show(frame: Frame, also: Partial<AppState>): void {
    const { openPartId, selection, notice } = store.getState()
    const here = new Set(frame.parts.map((part) => part.id))
    store.setState({
      frame,
      selection: selection.every((id) => here.has(id))
        ? selection
        : selection.filter((id) => here.has(id)),
      openPartId: openPartId !== null && here.has(openPartId) ? openPartId : null,
      // The undo a notice offers would now undo something else.
      notice: notice?.canUndo === true ? null : notice,
      undoLabel: past.at(-1)?.label ?? null,
      redoLabel: future.at(-1)?.label ?? null,
      ...also,
    })
  }

  /** Whether `next` would change a project that another tab has; then that is said instead. */
  function isRefused(next: Frame): boolean {
    const { frame, elsewhere } = store.getState()
    if (elsewhere?.projectId !== frame.id || next.id !== frame.id) return false
    const text = `Nothing was changed: “${frame.name}” is open in another tab. Take it over or open a copy first.`
    store.setState({ notice: { text, canUndo: false } })
    return true
  }

  return {
    commit(label, frame, { gesture, also = {} } = {}) {
      const before = store.getState().frame
      if (frame === before) {
        store.setState(also)
        return
      }
      if (isRefused(frame)) return
      // What a reload would lose is not done in the first place.
      const why = whyNotKept(before, frame)
      if (why !== null) {
        store.setState({ notice: { text: why, canUndo: false } })
        return
      }
      const continues = gesture !== undefined && past.at(-1)?.gesture === gesture
      if (!continues) {
        past = [...past, { frame: before, label, gesture: gesture ?? null }].slice(-MAX_STEPS)
      }
      future = []
      show(keepRatios(store.getState(), frame), also)
    },
    undo() {
      const step = past.at(-1)
      if (step === undefined || isRefused(step.frame)) return
      past = past.slice(0, -1)
      future = [...future, { ...step, frame: store.getState().frame, gesture: null }]
      show(step.frame, {})
    },
    redo() {
      const step = future.at(-1)
      if (step === undefined || isRefused(step.frame)) return
      future = future.slice(0, -1)
      past = [...past, { ...step, frame: store.getState().frame, gesture: null }]
      show(step.frame, {})
    },
    reset(frame, also = {}) {
      past = []
      future = []
      show(frame, also)
    },
    rename(projectId, name) {
      const renamed = (step: Step): Step =>
        step.frame.id === projectId ? { ...step, frame: { ...step.frame, name } } : step
      past = past.map(renamed)
      future = future.map(renamed)
    },
    amendPart(id, patch) {
      const { frame } = store.getState()
      if (isRefused(frame)) return
      const amended = (each: Frame): Frame => ({
        ...each,
        parts: each.parts.map((part) => (part.id === id ? { ...part, ...patch } : part)),
      })
      const inStep = (step: Step): Step => ({ ...step, frame: amended(step.frame) })
      past = past.map(inStep)
      future = future.map(inStep)
      show(amended(frame), {})
    },
  }
}
