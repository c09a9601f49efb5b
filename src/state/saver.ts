import type { StoreApi } from 'zustand/vanilla'
import type { Frame } from '../core/frame.ts'
import type { Meshes } from './meshes.ts'
import type { Storage } from './storage.ts'
import type { AppState, StorageStatus } from './types.ts'

/** How long changes are gathered before they are written, ms. */
const GATHER_MS = 250

const SAVED: StorageStatus = { kind: 'saved' }
const SAVING: StorageStatus = { kind: 'saving' }

export interface Saver {
  /** Saving starts here, not before the last visit's frame is back. `failure`: why storage could not even be read. */
  start(failure: string | null): void
  /** Nothing is to be written in this visit, and why. */
  refuse(reason: string): void
  flush(): Promise<void>
  close(): void
}

/** Writes the frame to storage a moment after each change, and again when it changed in the meantime. */
export function createSaver(store: StoreApi<AppState>, storage: Storage, meshes: Meshes): Saver {
  let written: Frame | null = null
  let started = false
  let timer: ReturnType<typeof setTimeout> | null = null
  let writing: Promise<void> | null = null

  function tell(status: StorageStatus): void {
    if (store.getState().storage !== status) store.setState({ storage: status })
  }

  async function write(): Promise<void> {
    const { frame } = store.getState()
    if (frame === written) return
    try {
      await storage.saveFrame(frame, meshes.held(frame.parts.map((part) => part.meshHash)))
      written = frame
      if (store.getState().frame === frame) tell(SAVED)
    } catch (error) {
      // Not tried again until the next change; else a full disk would keep us busy for ever.
      written = frame
      tell({ kind: 'memory', reason: whyNot(error) })
    }
  }

  async function flush(): Promise<void> {
    if (timer !== null) clearTimeout(timer)
    timer = null
    if (!started) return
    while (writing !== null || store.getState().frame !== written) {
      writing ??= write().finally(() => {
        writing = null
      })
      await writing
    }
    // A change that was undone before it was written leaves nothing to write.
    if (store.getState().storage === SAVING) tell(SAVED)
  }

  const unsubscribe = store.subscribe((state, before) => {
    if (!started || state.frame === before.frame || state.frame === written) return
    if (state.storage.kind === 'saved') tell(SAVING)
    timer ??= setTimeout(() => void flush(), GATHER_MS)
  })

  return {
    start(failure) {
      started = true
      written = store.getState().frame
      if (failure !== null) tell({ kind: 'memory', reason: failure })
    },
    refuse(reason) {
      tell({ kind: 'memory', reason })
    },
    flush,
    close() {
      unsubscribe()
      if (timer !== null) clearTimeout(timer)
    },
  }
}

/** Plain words for what the browser says when it cannot keep something. */
export function whyNot(error: unknown): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : ''
  if (name === 'QuotaExceededError') {
    return 'The browser has no room left for this frame. Save it as a project file, or free disk space.'
  }
  if (name === 'SecurityError' || name === 'InvalidStateError') {
    return 'The browser does not let this page keep anything, as in a private window. Save the frame as a project file before you close it.'
  }
  if (name === 'NotFoundError' || name === 'NotReadableError') {
    return 'A dropped file changed or moved before it could be kept. Drop it again, or save the frame as a project file.'
  }
  const words = error instanceof Error && error.message !== '' ? ` (${error.message})` : ''
  return `The browser could not keep this frame${words}. Save it as a project file before you close the page.`
}
