import { useSyncExternalStore } from 'react'
import {
  NOTHING_TYPED,
  type TypedLoad,
  type TypedLoads,
} from '../../../core/aircraft/twin/loadOf.ts'

let kept: TypedLoads = new Map()
const listeners = new Set<() => void>()

/**
 * Kept for the visit, by part id: the part's sheet, Choose and Carbon push it alike. No frame file
 * holds them; the command is told them by `--loads`.
 */
export function keptLoad(partId: string): TypedLoad {
  return kept.get(partId) ?? NOTHING_TYPED
}

export function keepLoad(partId: string, load: TypedLoad): void {
  kept = new Map([...kept, [partId, load]])
  for (const tell of listeners) tell()
}

export function useKeptLoad(partId: string): TypedLoad {
  return useSyncExternalStore(subscribe, () => keptLoad(partId))
}

export function useKeptLoads(): TypedLoads {
  return useSyncExternalStore(subscribe, () => kept)
}

function subscribe(tell: () => void): () => void {
  listeners.add(tell)
  return () => {
    listeners.delete(tell)
  }
}
