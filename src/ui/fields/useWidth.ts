import { useLayoutEffect, useState, type RefObject } from 'react'

/**
 * How wide the inside of a thing on the page is, px. Measured before it is seen for the first time;
 * `first` only where it has no width yet.
 */
export function useWidth(of: RefObject<Element | null>, first: number): number {
  const [width, setWidth] = useState(first)
  useLayoutEffect(() => {
    const element = of.current
    if (element === null) return
    // The observer tells after the first picture is on the screen, and only what is drawn has a
    // width: this second rendering, before anything is seen, is wanted.
    const now = insideOf(element)
    // oxlint-disable-next-line react/set-state-in-effect
    if (now > 0) setWidth(now)
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

function insideOf(element: Element): number {
  const { paddingLeft, paddingRight } = getComputedStyle(element)
  return element.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight)
}
