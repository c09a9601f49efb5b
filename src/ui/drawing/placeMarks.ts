import { avoidLines } from '../../core/drawing/avoidLines.ts'
import { overallSizes, type Dimension } from '../../core/drawing/overallSizes.ts'
import { placeLeaders, type Leader, type LeaderRoom } from '../../core/drawing/placeLeaders.ts'
import type { LookAnswer } from '../../state/store/types.ts'
import type { PartMark } from '../part/partMarks.ts'

/** What stands round a part on its drawing. */
export interface PlacedMarks {
  readonly sizes: readonly Dimension[]
  readonly leaders: readonly (Leader & { readonly mark: PartMark })[]
  /** Whether there is room for words below the signs. */
  readonly isRoomy: boolean
}

/** Below this a drawing has room for signs alone. px */
const ROOMY_PX = 520
/** Holes of further kinds stand in the list alone. */
const MOST_HOLES = { roomy: 8, narrow: 4 } as const

/** Sizes first, then signs where their leader lines run clear of them. */
export function placeMarks(
  { drawing, boundsMm }: LookAnswer,
  marks: readonly PartMark[],
): PlacedMarks {
  const { widthPx, heightPx } = drawing
  const isRoomy = widthPx >= ROOMY_PX
  const mostHoles = isRoomy ? MOST_HOLES.roomy : MOST_HOLES.narrow
  const shown = marks.filter(({ kind, sign }) => kind !== 'hole' || Number(sign) <= mostHoles)
  const sizes = overallSizes(drawing, boundsMm)
  const lines = sizes.flatMap(({ from, to, extensions }) => [[from, to] as const, ...extensions])
  const room: LeaderRoom = {
    left: isRoomy ? 36 : 14,
    right: widthPx - (isRoomy ? 36 : 14),
    top: 20,
    bottom: heightPx - 26,
    gapPx: isRoomy ? 40 : 28,
    widePx: isRoomy ? 74 : 30,
  }
  const asks = shown.flatMap(({ sign, anchors }) =>
    anchors === null ? [] : [{ item: sign, anchors: avoidLines(anchors, lines, room) }],
  )
  const leaders = placeLeaders(asks, room).flatMap((leader) => {
    const mark = shown.find(({ sign }) => sign === leader.item)
    return mark === undefined ? [] : [{ ...leader, mark }]
  })
  return { sizes, leaders, isRoomy }
}
