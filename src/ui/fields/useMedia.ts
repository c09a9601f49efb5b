import { useCallback, useSyncExternalStore } from 'react'

/** Whether the page is as a media query says, as it is drawn now. */
export function useMedia(query: string): boolean {
  const subscribe = useCallback(
    (tell: () => void) => {
      const list = matchMedia(query)
      list.addEventListener('change', tell)
      return () => {
        list.removeEventListener('change', tell)
      }
    },
    [query],
  )
  return useSyncExternalStore(subscribe, () => matchMedia(query).matches)
}
