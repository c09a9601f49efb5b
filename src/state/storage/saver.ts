import type { StoreApi } from 'zustand/vanilla'
import type { Frame } from '../../core/model/frame.ts'
import type { Claims } from './claims.ts'
import { frameSum } from '../store/derived.ts'
import { meshHashesOf } from './meshHashesOf.ts'
import type { Meshes } from './meshes.ts'
import type { Storage } from './storage.ts'
import type { AppState, Elsewhere, StorageStatus } from '../store/types.ts'
import { whyNot } from '../actions/whyNot.ts'

/** How long changes are gathered before they are written, ms. */
const GATHER_MS = 250

const SAVED: StorageStatus = { kind: 'saved' }
const SAVING: StorageStatus = { kind: 'saving' }

export interface Saver {
  /**
   * Saving starts here, not before the last visit's frame is back. `failure`: why storage could not
   * even be read.
   */
  start(failure: string | null): void
  /** This frame is in storage as it is here, at this revision. */
  know(frame: Frame, revision: number): void
  /** The stored project changed in a way that its frame here did not. */
  forget(id: string, revision: number | null): void
  flush(): Promise<void>
  close(): void
}

/**
 * Writes the frame to storage a moment after each change, and again when it changed in the
 * meantime. A project this tab does not have, or that another tab changed, is not written:
 * `elsewhere` then says so.
 */
export function createSaver(
  store: StoreApi<AppState>,
  storage: Storage,
  meshes: Meshes,
  claims: Claims,
): Saver {
  /** What is stored of each project, by id, as far as this visit knows. */
  const written = new Map<string, Frame>()
  const revisions = new Map<string, number>()
  const masses = new Map<string, number | null>()
  /**
   * Frames to write, by id: when another project is shown, the last change of the one before still
   * has to go.
   */
  const dirty = new Map<string, Frame>()
  let started = false
  let timer: ReturnType<typeof setTimeout> | null = null
  let writing: Promise<void> | null = null
  /**
   * The project another tab is about to get: it is still written, but not to be changed any more.
   */
  let yielded: string | null = null
  /** What could not be written, tried again with the next change. */
  const unkept = new Map<string, Frame>()
  /** Why the last write failed; null when it did not. */
  let trouble: string | null = null

  function tell(status: StorageStatus): void {
    if (store.getState().storage !== status) store.setState({ storage: status })
  }

  function lose(projectId: string, why: Elsewhere['why']): void {
    const { frame, elsewhere } = store.getState()
    if (frame.id !== projectId || elsewhere?.projectId === projectId) return
    store.setState({ elsewhere: { projectId, why } })
  }

  claims.onTaken(async (id) => {
    yielded = id
    lose(id, 'taken')
    await flush()
    yielded = null
  })

  async function write(frame: Frame): Promise<void> {
    const { id } = frame
    const isAsWritten = written.get(id) === frame && !unkept.has(id)
    written.set(id, frame)
    if (!(await claims.hold(id))) {
      lose(id, 'open')
      return
    }
    // Gone back to for a moment and left again: it is stored, and not the one that is open.
    if (isAsWritten && store.getState().frame.id !== id) return
    // The empty frame that a visit begins with is stored only once it is gone back to.
    const isStored = isAsWritten && revisions.has(id)
    const basedOn = revisions.get(id) ?? null
    const massG = masses.get(id) ?? null
    try {
      const revision = isStored
        ? await storage.openProject(id, basedOn)
        : await storage.saveFrame({
            frame,
            meshes: meshes.held(meshHashesOf(frame)),
            massG,
            basedOn,
            open: store.getState().frame.id === id,
          })
      unkept.delete(id)
      if (unkept.size === 0) trouble = null
      if (revision === null) lose(id, 'changed')
      else {
        revisions.set(id, revision)
        if (store.getState().elsewhere?.projectId === id && yielded !== id) {
          store.setState({ elsewhere: null })
        }
        if (masses.get(id) !== massG) keepMass(id)
      }
    } catch (error) {
      // Not tried again at once; else a full disk would keep us busy for ever.
      unkept.set(id, frame)
      trouble = whyNot(error)
    }
  }

  async function writeAll(): Promise<void> {
    for (;;) {
      const [frame] = dirty.values()
      if (frame === undefined) break
      dirty.delete(frame.id)
      await write(frame)
    }
    claims.keepOnly(store.getState().frame.id)
    tell(trouble === null ? SAVED : { kind: 'memory', reason: trouble })
  }

  async function flush(): Promise<void> {
    if (timer !== null) clearTimeout(timer)
    timer = null
    if (!started) return
    while (writing !== null || dirty.size > 0) {
      writing ??= writeAll().finally(() => {
        writing = null
      })
      await writing
    }
    // A change that was undone before it was written leaves nothing to write.
    if (store.getState().storage === SAVING) tell(SAVED)
  }

  /** The mass is known only some time after the change that brought it about. */
  function keepMass(id: string): void {
    const massG = masses.get(id) ?? null
    // Only for the list; when it cannot be stored, the list lacks it.
    if (revisions.has(id)) storage.saveMass(id, massG).catch(() => undefined)
  }

  function noteMass(state: AppState): void {
    const { id } = state.frame
    const massG = massOf(state)
    if (massG === (masses.get(id) ?? null)) return
    masses.set(id, massG)
    if (massG !== null && !dirty.has(id)) keepMass(id)
  }

  const unsubscribe = store.subscribe((state, before) => {
    if (!started) return
    const { frame } = state
    if (frame !== before.frame) {
      const isNewHere = frame.id !== before.frame.id
      if (frame === written.get(frame.id) && !isNewHere) dirty.delete(frame.id)
      else {
        for (const each of unkept.values()) if (!dirty.has(each.id)) dirty.set(each.id, each)
        dirty.set(frame.id, frame)
        timer ??= setTimeout(() => void flush(), GATHER_MS)
        if (state.storage.kind === 'saved') tell(SAVING)
      }
    }
    if (frame !== before.frame || state.work !== before.work) noteMass(store.getState())
  })

  return {
    start(failure) {
      started = true
      const { frame } = store.getState()
      written.set(frame.id, frame)
      trouble = failure
      if (failure !== null) tell({ kind: 'memory', reason: failure })
    },
    know(frame, revision) {
      written.set(frame.id, frame)
      revisions.set(frame.id, revision)
    },
    forget(id, revision) {
      written.delete(id)
      if (revision !== null) revisions.set(id, revision)
    },
    flush,
    close() {
      unsubscribe()
      if (timer !== null) clearTimeout(timer)
    },
  }
}

/** Grams of the whole frame, once every part's layers are counted. */
function massOf(state: AppState): number | null {
  if (state.frame.parts.some((part) => state.work[part.id]?.kind !== 'done')) return null
  return frameSum(state).printed.massG.mid
}
