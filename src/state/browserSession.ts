import type { StoreApi } from 'zustand/vanilla'
import { createBrowserRunner, FACTS_BUILD } from '../jobs/browserRunner.ts'
import { createActions } from './actions.ts'
import { createDemoSource } from './demos.ts'
import { createIndexedDbStorage } from './indexedDb.ts'
import { createAppStore } from './store.ts'
import type { AppState, Session } from './types.ts'

const DATABASE = 'preweigh'

/** The store and the actions of the page in this browser, its last frame on the way back. Call once. */
export function startBrowserSession(): { store: StoreApi<AppState>; actions: Session } {
  const store = createAppStore()
  const actions = createActions(store, {
    runner: createBrowserRunner(),
    storage: createIndexedDbStorage(DATABASE, { factsBuild: FACTS_BUILD }),
    demos: createDemoSource(document.baseURI, (input, init) => fetch(input, init)),
    now: Date.now,
    newId,
    locale: navigator.language,
  })
  void actions.restore()
  // The last moment a page is sure to get; what was changed within the past quarter second is written now.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void actions.flush()
  })
  return { store, actions }
}

/** `crypto.randomUUID` is missing on pages served over plain http. */
function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12))
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
