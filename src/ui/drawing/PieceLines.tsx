import { memo, type CSSProperties } from 'react'
import type { ItemDrawing } from '../../core/drawing/types.ts'

interface PieceProps {
  readonly item: ItemDrawing
  readonly isLit: boolean
}

interface PieceFacesProps extends PieceProps {
  /** How much of the pen its faces take, 0–1; null for paper alone. */
  readonly depth?: number | null
  readonly onHover: (item: string | null) => void
}

const TONES = [0, 1, 2, 3] as const

/** The faces of one item in four tones, to point at; they lie below all lines. */
export const PieceFaces = memo(function PieceFaces(props: PieceFacesProps) {
  const { item, isLit, depth = null, onHover } = props
  return (
    <g
      className={isLit ? 'piece piece-lit' : depth === null ? 'piece' : 'piece piece-inked'}
      style={
        depth === null ? undefined : ({ '--depth': `${Math.round(depth * 70)}%` } as CSSProperties)
      }
      onPointerEnter={() => {
        onHover(item.item)
      }}
      onPointerLeave={() => {
        onHover(null)
      }}
    >
      {TONES.map((tone) =>
        item.tones[tone] === '' ? null : (
          <path key={tone} className={`tone tone-${tone}`} d={item.tones[tone]} />
        ),
      )}
    </g>
  )
})

/** Edges and outline of one item. */
export const PieceLines = memo(function PieceLines({ item, isLit }: PieceProps) {
  return (
    <g className={isLit ? 'piece-lit' : undefined}>
      <path className="piece-edges" d={item.edges} />
      <path className="piece-outline" d={item.outline} />
    </g>
  )
})

interface BoughtProps extends Pick<PieceProps, 'item'> {
  /** By which the words below the drawing name it. */
  readonly letter?: string | undefined
}

/** The simple body of a bought thing: phantom lines over a faint tone, in nobody's way. */
export const BoughtPiece = memo(function BoughtPiece({ item, letter }: BoughtProps) {
  const { anchors } = item
  return (
    <g className="piece-bought">
      {TONES.map((tone) =>
        item.tones[tone] === '' ? null : <path key={tone} className="tone" d={item.tones[tone]} />,
      )}
      <path className="piece-edges" d={item.edges} />
      <path className="piece-outline" d={item.outline} />
      {letter === undefined || anchors === null ? null : (
        <text
          className="bought-letter"
          x={(anchors.left.x + anchors.right.x) / 2}
          y={(anchors.top.y + anchors.bottom.y) / 2}
        >
          {letter}
        </text>
      )}
    </g>
  )
})
