import { startTransition, useEffect, useRef, useState } from 'react'
import type { LineDrawing, View } from '../../core/drawing/types.ts'
import type { Frame } from '../../core/model/frame.ts'
import { useActions } from '../appContext.ts'

export interface Wanted {
  readonly view: View
  readonly widthPx: number
  readonly heightPx: number
  readonly marginPx: number
  readonly apart: number
  /** While a hand turns it: coarser and sooner. */
  readonly isMoving: boolean
  /** px a mm, the frame's own middle in the middle; left out, what is drawn fills the sheet. */
  readonly scale?: number
  /** Leaves out what has no place. */
  readonly placedOnly?: boolean
}

export interface Drawn {
  /** The last one that is there; null before the first, and when there is nothing to draw. */
  readonly drawing: LineDrawing | null
  /** Ids of parts whose mesh could not be read. */
  readonly left: readonly string[]
}

/** The frame drawn by a worker. One drawing is asked for at a time; while it is made only the latest wish is kept. */
export function useDrawing(wanted: Wanted, parts: Frame['parts'], places: unknown): Drawn {
  const { drawFrame } = useActions()
  const [drawn, setDrawn] = useState<Drawn>({ drawing: null, left: [] })
  const pending = useRef<Wanted | null>(null)
  const isBusy = useRef(false)
  const isLeft = useRef(false)

  useEffect(() => {
    isLeft.current = false
    return () => {
      isLeft.current = true
    }
  }, [])

  useEffect(() => {
    pending.current = wanted
    if (!isBusy.current) void drawNext()

    async function drawNext(): Promise<void> {
      isBusy.current = true
      for (let next = pending.current; next !== null; next = pending.current) {
        pending.current = null
        const { view, widthPx, heightPx, marginPx, apart, isMoving, scale, placedOnly } = next
        const fixed = scale === undefined ? {} : { scale, middleMm: [0, 0, 0] as const }
        const sheet = { widthPx, heightPx, marginPx, ...fixed }
        const samples = isMoving ? 1 : 2
        const answer = await drawFrame({
          view,
          sheet,
          apart,
          samples,
          placedOnly: placedOnly === true,
        })
        if (isLeft.current) break
        if (answer !== null) {
          startTransition(() => {
            setDrawn(answer)
          })
        }
      }
      isBusy.current = false
    }
  }, [wanted, parts, places, drawFrame])
  return drawn
}
