import { createContext, useContext } from 'react'
import { useStore, type StoreApi } from 'zustand'
import type { Actions } from '../state/actions/types.ts'
import type { AppState } from '../state/store/types.ts'

/** What main.tsx hands the page: the store to read from and the actions to change it with. */
export interface App {
  readonly store: StoreApi<AppState>
  readonly actions: Actions
}

export const AppContext = createContext<App | null>(null)

function useApp(): App {
  const app = useContext(AppContext)
  if (app === null) throw new Error('The page is drawn outside its AppContext.')
  return app
}

export function useActions(): Actions {
  return useApp().actions
}

/**
 * Reads one thing from the state; `select` must return the same object while nothing it reads has
 * changed.
 */
export function useAppState<T>(select: (state: AppState) => T): T {
  return useStore(useApp().store, select)
}

export function useStoreItself(): StoreApi<AppState> {
  return useApp().store
}

/** The present state, for event handlers that need it without redrawing on every change. */
export function useReadState(): () => AppState {
  return useApp().store.getState
}
