import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Frame } from '../../core/model/frame.ts'
import { emptyFrame } from './emptyFrame.ts'
import type { AppState } from './types.ts'
import { EMPTY_WORKSHOP } from './workshop.ts'

/** The one store of the page. Only the actions write to it. */
export function createAppStore(frame: Frame = emptyFrame('first')): StoreApi<AppState> {
  return createStore<AppState>(() => ({
    frame,
    work: {},
    runs: null,
    failures: [],
    toolpaths: [],
    incoming: [],
    selection: [],
    openPartId: null,
    dropOf: {},
    storage: { kind: 'saved' },
    undoLabel: null,
    redoLabel: null,
    notice: null,
    story: null,
    workshop: EMPTY_WORKSHOP,
    addScrews: null,
    projects: [],
    elsewhere: null,
  }))
}
