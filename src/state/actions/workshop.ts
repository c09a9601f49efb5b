import type { StoreApi } from 'zustand/vanilla'
import type { Frame } from '../../core/model/frame.ts'
import type { History } from './history.ts'
import { dropOldLessons, oldLessons } from '../storage/oldLessons.ts'
import { parseWorkshop } from '../storage/parseWorkshop.ts'
import type { Storage } from '../storage/storage.ts'
import type { Actions } from './types.ts'
import type { AppState } from '../store/types.ts'
import {
  followFrame,
  keepAsMine,
  mineOf,
  takeMine,
  type FrameMine,
  type MineKind,
  type Workshop,
} from '../store/workshop.ts'

/** Tells the other tabs that the workshop changed, and hears of it from them. */
export interface WorkshopNews {
  post(): void
  onNews(listener: () => void): void
  close(): void
}

export interface WorkshopKeeper extends Pick<
  Actions,
  'keepAsMine' | 'takeMine' | 'putUnits' | 'putSpools'
> {
  /**
   * Reads what is kept; gives what of it was not sound. Never rejects: a browser that keeps nothing
   * has an empty one.
   */
  load(): Promise<readonly string[]>
  /**
   * Changes it here at once, in storage soon. `edit` may run several times, over what another tab
   * wrote.
   */
  change(edit: (workshop: Workshop) => Workshop): void
  mine(): FrameMine
  /** Resolves once all changes are written, or cannot be. */
  settled(): Promise<void>
  close(): void
}

interface WorkshopDeps {
  readonly store: StoreApi<AppState>
  readonly storage: Storage
  readonly history: History
  readonly locale: string
  readonly news?: WorkshopNews
}

/** Keeps what is the builder's and no frame's. It follows the present frame, see `followFrame`. */
export function createWorkshop(deps: WorkshopDeps): WorkshopKeeper {
  const { store, storage, history, locale, news } = deps
  /**
   * Changes that are not written yet, in the order they came; one that fails is tried again with
   * the next.
   */
  let unwritten: ((workshop: Workshop) => Workshop)[] = []
  let writing: Promise<void> = Promise.resolve()

  /**
   * What a frame was before a change that nothing followed: undoing that changes the frame alone,
   * too.
   */
  const alone = new WeakMap<Frame, Frame>()

  const mine = () => mineOf(store.getState().workshop, locale)
  const all = (edits: readonly ((workshop: Workshop) => Workshop)[], first: Workshop) =>
    edits.reduce((workshop, edit) => edit(workshop), first)

  async function write(): Promise<void> {
    const edits = unwritten
    if (edits.length === 0) return
    try {
      const kept = await storage.changeWorkshop((old) => all(edits, parseWorkshop(old).workshop))
      unwritten = unwritten.slice(edits.length)
      store.setState({ workshop: all(unwritten, kept) })
      news?.post()
    } catch {
      // It is still in memory; that nothing can be kept is said of the frame.
    }
  }

  function change(edit: (workshop: Workshop) => Workshop): void {
    const { workshop } = store.getState()
    const next = edit(workshop)
    if (next === workshop) return
    unwritten = [...unwritten, edit]
    store.setState({ workshop: next })
    writing = writing.then(write)
  }

  async function read(): Promise<readonly string[]> {
    try {
      const { workshop, complaints } = parseWorkshop(await storage.loadWorkshop())
      store.setState({ workshop: all(unwritten, workshop) })
      return complaints
    } catch {
      return []
    }
  }

  const unsubscribe = store.subscribe(({ frame }, before) => {
    if (frame === before.frame || alone.get(before.frame) === frame) return
    const edit = followFrame(before.frame, frame, mine())
    if (edit === null) alone.set(frame, before.frame)
    else change(edit)
  })
  news?.onNews(() => void read())

  return {
    mine,
    change,
    async load() {
      const complaints = await read()
      const old = oldLessons()
      if (old.length > 0) {
        const known = (workshop: Workshop) => new Set(workshop.lessons.map(({ id }) => id))
        change((workshop) => {
          const here = known(workshop)
          const moved = old.filter(({ id }) => !here.has(id))
          return { ...workshop, lessons: [...moved, ...workshop.lessons] }
        })
        await writing
        if (unwritten.length === 0) dropOldLessons()
      }
      return complaints
    },
    keepAsMine(kind: MineKind) {
      const { frame } = store.getState()
      change((workshop) => keepAsMine(workshop, frame, kind))
    },
    takeMine(kind: MineKind) {
      const { frame } = store.getState()
      history.commit(`take ${KIND_WORDS[kind]}`, takeMine(frame, mine(), kind))
    },
    putUnits(units) {
      change((workshop) => ({ ...workshop, units }))
    },
    putSpools(spools) {
      change((workshop) => ({ ...workshop, spools }))
    },
    async settled() {
      let seen: Promise<void>
      do {
        seen = writing
        await seen
      } while (seen !== writing)
    },
    close() {
      unsubscribe()
      news?.close()
    },
  }
}

/** Behind “take”, for undo. */
const KIND_WORDS: Readonly<Record<MineKind, string>> = {
  printer: 'your printer',
  printers: 'your other printers',
  prices: 'your prices',
  materials: 'your materials',
  roles: 'your roles',
}
