import { useCallback } from 'react'
import type { LineDrawing, View } from '../../core/drawing/types.ts'
import type { Frame } from '../../core/model/frame.ts'
import type { Vec3 } from '../../core/model/mesh.ts'
import type { LaidPiece, LooseRow } from '../../state/store/types.ts'
import { useActions } from '../appContext.ts'
import { useAnswer } from './useAnswer.ts'

export interface Wanted {
  readonly view: View
  readonly widthPx: number
  readonly heightPx: number
  readonly marginPx: number
  readonly apart: number
  /** While a hand turns it: coarser and sooner. */
  readonly isMoving: boolean
  /** px a mm; left out, what is drawn fills the sheet. */
  readonly scale?: number
  /** In the middle of the sheet with a scale; left out, the frame's own middle. */
  readonly middleMm?: Vec3
  /** Leaves out what has no place. */
  readonly placedOnly?: boolean
  /** These in place of what stands, and nothing loose. */
  readonly laid?: readonly LaidPiece[]
  readonly ghosts?: readonly LaidPiece[]
  /** With the bodies of bought things. */
  readonly withBought?: boolean
}

export interface Drawn {
  /** The last one that is there; null before the first, and when there is nothing to draw. */
  readonly drawing: LineDrawing | null
  /** Ids of parts whose mesh could not be read. */
  readonly left: readonly string[]
  /** What has no place and lies in rows; null where nothing does. */
  readonly loose: LooseRow | null
  /** The ghosts on the same sheet. */
  readonly ghost: LineDrawing | null
  /** Bought things on the same sheet. */
  readonly bought: LineDrawing | null
}

const NOTHING: Drawn = { drawing: null, left: [], loose: null, ghost: null, bought: null }

/** The frame drawn by a worker, anew when it is wanted another way or parts or places change. */
export function useDrawing(wanted: Wanted, parts: Frame['parts'], places: unknown): Drawn {
  const { drawFrame } = useActions()
  const ask = useCallback(() => {
    const { view, widthPx, heightPx, marginPx, apart, isMoving, scale, placedOnly } = wanted
    const { laid, ghosts = [], withBought = false, middleMm = [0, 0, 0] } = wanted
    const fixed = scale === undefined ? {} : { scale, middleMm }
    const sheet = { widthPx, heightPx, marginPx, ...fixed }
    const samples = isMoving ? 1 : 2
    return drawFrame({
      view,
      sheet,
      apart,
      samples,
      placedOnly: placedOnly === true,
      ...(laid === undefined ? {} : { laid }),
      ghosts,
      withBought,
    })
    // The worker takes the frame as it then is: another one is another question.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [wanted, parts, places, drawFrame])
  return useAnswer(ask) ?? NOTHING
}
