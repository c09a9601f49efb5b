import { useLayoutEffect, useState, type RefObject } from 'react'

/** How wide a thing on the page is, px; `first` until it is measured. */
export function useWidth(of: RefObject<Element | null>, first: number): number {
  const [width, setWidth] = useState(first)
  useLayoutEffect(() => {
    const element = of.current
    if (element === null) return
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined && entry.contentRect.width > 0) setWidth(entry.contentRect.width)
    })
    observer.observe(element)
    return () => {
      observer.disconnect()
    }
  }, [of])
  return width
}
