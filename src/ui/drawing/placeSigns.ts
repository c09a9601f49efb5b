import type { FrameSign } from '../../core/aircraft/report/frameSigns.ts'
import { onSheet } from '../../core/drawing/onSheet.ts'
import type { LineDrawing } from '../../core/drawing/types.ts'

/** A sign on a drawing. px */
export interface PlacedSign {
  readonly sign: FrameSign
  /** Of the sign in its list. */
  readonly place: number
  /** Every place that is alike, the topmost first: that one bears the words. */
  readonly spots: readonly (readonly [x: number, y: number])[]
  /** Where the words begin, or end: away from the middle, where most of the drawing is. */
  readonly words: { readonly x: number; readonly y: number; readonly anchor: 'start' | 'end' }
}

/** Words stand so far beside their sign, and lines of them so far apart. px */
const BESIDE_PX = 14
const LINE_PX = 14
/** No words are longer, about. px */
const LONG_PX = 110

/** Where signs stand on a drawing; words go down until they are clear of each other. */
export function placeSigns(
  signs: readonly FrameSign[],
  drawing: Pick<LineDrawing, 'view' | 'scale' | 'originPx' | 'widthPx'>,
): readonly PlacedSign[] {
  const taken: PlacedSign['words'][] = []
  return signs.flatMap((sign, place): readonly PlacedSign[] => {
    const spots = sign.atMm.map((at) => onSheet(drawing, at)).toSorted(([, a], [, b]) => a - b)
    const [first] = spots
    if (first === undefined) return []
    const isLeft = first[0] > LONG_PX && first[0] < drawing.widthPx / 2
    const anchor = isLeft ? 'end' : 'start'
    const x = first[0] + (isLeft ? -BESIDE_PX : BESIDE_PX)
    let y = first[1]
    while (
      taken.some((other) => Math.abs(other.x - x) < LONG_PX && Math.abs(other.y - y) < LINE_PX)
    )
      y += LINE_PX
    const words = { x, y, anchor } as const
    taken.push(words)
    return [{ sign, place, spots, words }]
  })
}
