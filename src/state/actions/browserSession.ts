import type { StoreApi } from 'zustand/vanilla'
import { createBrowserRunner, COUNTED_BUILD } from '../../jobs/browserRunner.ts'
import { createActions } from './actions.ts'
import { createSoleClaims, type Claims } from '../storage/claims.ts'
import { createDemoSource } from './demos.ts'
import { createIndexedDbStorage } from '../storage/indexedDb.ts'
import { createLockClaims } from '../storage/lockClaims.ts'
import { createFolderSpare } from '../storage/spare.ts'
import { withSpare } from '../storage/spareStorage.ts'
import type { Storage } from '../storage/storage.ts'
import { newId } from '../store/newId.ts'
import type { WorkshopNews } from './workshop.ts'
import { createAppStore } from '../store/store.ts'
import type { AppState } from '../store/types.ts'
import type { Session } from './types.ts'

const DATABASE = 'preweigh'
/** Typing and dragging settle first: laying takes some seconds. */
const LAY_AFTER_MS = 400
/** Where a tab notes which project it shows, so that a reload shows it again. */
const TAB_NOTE = 'preweigh project'

/**
 * The store and the actions of the page in this browser, its last frame on the way back. Call once.
 */
export function startBrowserSession(): { store: StoreApi<AppState>; actions: Session } {
  const store = createAppStore()
  const preferredProject = readTabNote()
  const actions = createActions(store, {
    runner: createBrowserRunner(),
    storage: createBrowserStorage(),
    claims: createBrowserClaims(),
    demos: createDemoSource(document.baseURI, (input, init) => fetch(input, init)),
    now: Date.now,
    newId,
    locale: navigator.language,
    workshopNews: createWorkshopNews(),
    laysRunsAfterMs: LAY_AFTER_MS,
    ...(preferredProject === null ? {} : { preferredProject }),
  })
  void fetchScrews(store)
  void actions.restore()
  store.subscribe(({ frame }, before) => {
    if (frame.id !== before.frame.id) writeTabNote(frame.id)
  })

  // The last moments a page is sure to get; what was changed within the past quarter second is
  // written now.
  const flush = () => void actions.flush()
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') flush()
  })
  window.addEventListener('pagehide', flush)
  // Only where leaving would lose work: the browser then asks.
  window.addEventListener('beforeunload', (event) => {
    const { storage, frame } = store.getState()
    if (storage.kind === 'memory' && frame.parts.length > 0) event.preventDefault()
  })
  return { store, actions }
}

/**
 * What counts the screws of joints and places pieces for their picture is not needed to draw the
 * page, so it comes after it.
 */
async function fetchScrews(store: StoreApi<AppState>): Promise<void> {
  try {
    const { withJointItems } = await import('../../core/aircraft/hardware/jointItems.ts')
    store.setState({ addScrews: withJointItems })
    // Asked for again where a picture wants them.
    await Promise.allSettled([
      import('../../core/joints/standingPieces.ts'),
      import('../../core/joints/wayApart.ts'),
    ])
  } catch {
    const text = 'The screws of joints could not be loaded and are in no sum. Reload the page.'
    store.setState({ notice: { text, canUndo: false } })
  }
}

function createBrowserStorage(): Storage {
  const database = createIndexedDbStorage(DATABASE, { countedBuild: COUNTED_BUILD })
  const { storage } = navigator as { readonly storage?: StorageManager }
  // Missing on pages served over plain http.
  if (storage === undefined) return database
  return withSpare(
    database,
    createFolderSpare(() => storage.getDirectory()),
  )
}

/** Locks are missing on pages served over plain http. */
function createBrowserClaims(): Claims {
  const { locks } = navigator as { readonly locks?: LockManager }
  if (locks === undefined) return createSoleClaims()
  return createLockClaims(locks, new BroadcastChannel(DATABASE), DATABASE)
}

function createWorkshopNews(): WorkshopNews {
  const channel = new BroadcastChannel(`${DATABASE} workshop`)
  return {
    post: () => channel.postMessage('changed'),
    onNews(listener) {
      channel.addEventListener('message', listener)
    },
    close: () => channel.close(),
  }
}

function readTabNote(): string | null {
  try {
    return sessionStorage.getItem(TAB_NOTE)
  } catch {
    return null
  }
}

function writeTabNote(id: string): void {
  try {
    sessionStorage.setItem(TAB_NOTE, id)
  } catch {
    // Denied storage is told when the frame is to be kept.
  }
}
