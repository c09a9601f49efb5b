import { useMemo, useSyncExternalStore } from 'react'
import { formatAddress, parseAddress, type Address, type PlaceId } from './address.ts'

/**
 * What the page's address names now; follows links, the browser's own back and forward, and `goTo`.
 */
export function useAddress(): Address {
  const hash = useSyncExternalStore(subscribe, () => location.hash)
  return useMemo(() => parseAddress(hash), [hash])
}

/** Goes to a sheet; the way back is the browser's. */
export function goTo(sheet: PlaceId, item: number | null = null): void {
  location.hash = formatAddress(sheet, item)
}

function subscribe(tell: () => void): () => void {
  window.addEventListener('hashchange', tell)
  return () => {
    window.removeEventListener('hashchange', tell)
  }
}
