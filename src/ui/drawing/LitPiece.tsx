import { memo } from 'react'
import type { ItemDrawing } from '../../core/drawing/types.ts'
import type { Leader } from '../../core/drawing/placeLeaders.ts'
import { useIsPointedAt } from '../set/pointedItem.ts'
import { PieceFaces, PieceLines } from './PieceLines.tsx'

interface LitProps {
  readonly item: ItemDrawing
  readonly isChosen: boolean
}

interface LitFacesProps extends LitProps {
  readonly depth: number | null
  readonly onHover: (item: string | null) => void
}

/** Faces of one item, lit while it is chosen or pointed at. */
export const LitFaces = memo(function LitFaces({ isChosen, ...props }: LitFacesProps) {
  const isPointedAt = useIsPointedAt(props.item.item)
  return <PieceFaces {...props} isLit={isPointedAt || isChosen} />
})

/** Its lines, lit with it. */
export const LitLines = memo(function LitLines({ item, isChosen }: LitProps) {
  const isPointedAt = useIsPointedAt(item.item)
  return <PieceLines item={item} isLit={isPointedAt || isChosen} />
})

interface LeaderLineProps {
  readonly leader: Leader
  readonly isChosen: boolean
  readonly isFaulty: boolean
  readonly isNarrow: boolean
}

/** From a number to its piece, lit with it. */
export const LeaderLine = memo(function LeaderLine(props: LeaderLineProps) {
  const { leader, isChosen, isFaulty, isNarrow } = props
  const { item, number, knee, anchor, side } = leader
  const isLit = useIsPointedAt(item) || isChosen
  // Below the figure under the number, where there is one.
  const start =
    side === 'top' ? number.y + (isNarrow ? 14 : 25) : side === 'bottom' ? number.y - 12 : number.y
  const points =
    side === 'top' || side === 'bottom'
      ? `${number.x},${start} ${anchor.x},${anchor.y}`
      : `${side === 'left' ? number.x + 12 : number.x - 12},${knee.y} ${knee.x},${knee.y} ` +
        `${anchor.x},${anchor.y}`
  return (
    <g className={isLit ? 'leader leader-lit' : isFaulty ? 'leader leader-amber' : 'leader'}>
      <polyline points={points} />
      <circle cx={anchor.x} cy={anchor.y} r="2.1" />
      {isFaulty ? <circle className="mark-ring" cx={anchor.x} cy={anchor.y} r="8" /> : null}
    </g>
  )
})
