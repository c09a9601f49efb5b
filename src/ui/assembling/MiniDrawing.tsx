import { useCallback } from 'react'
import { VIEWS } from '../../core/drawing/viewAxes.ts'
import type { View } from '../../core/drawing/types.ts'
import { useActions, useAppState } from '../appContext.ts'
import { BoughtPiece, PieceFaces, PieceLines } from '../drawing/PieceLines.tsx'
import { useAnswer } from '../drawing/useAnswer.ts'
import type { LaidOne } from './useClashes.ts'

interface MiniDrawingProps {
  readonly laid: readonly LaidOne[]
  readonly ghosts?: readonly LaidOne[]
  readonly view?: View
  readonly widthPx: number
  readonly heightPx: number
  /** px a mm; left out, it fills its room. */
  readonly scale?: number
}

const NO_GHOSTS: readonly LaidOne[] = []

function nothing(): void {
  // A picture: pointing at it tells nothing.
}

/** A small picture of some pieces in lines; what it shows is said in words beside it. */
export function MiniDrawing(props: MiniDrawingProps) {
  const { laid, ghosts = NO_GHOSTS, view = VIEWS.top, widthPx, heightPx, scale } = props
  const { drawFrame } = useActions()
  const parts = useAppState((state) => state.frame.parts)
  const ask = useCallback(
    () => {
      const fixed = scale === undefined ? {} : { scale }
      const sheet = { widthPx, heightPx, marginPx: 4, ...fixed }
      return drawFrame({ view, sheet, apart: 0, samples: 2, laid, ghosts })
    },
    // Parts: a mesh or its unit may be another by now.
    // eslint-disable-next-line react-hooks/exhaustive-deps
    [drawFrame, view, widthPx, heightPx, scale, laid, ghosts, parts],
  )
  const drawn = useAnswer(ask)
  return (
    <svg
      className="mini-drawing"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      width={widthPx}
      height={heightPx}
      aria-hidden="true"
    >
      {drawn?.drawing?.items.map((item) => (
        <g key={item.item}>
          <PieceFaces item={item} isLit={false} onHover={nothing} />
          <PieceLines item={item} isLit={false} />
        </g>
      ))}
      {drawn?.bought?.items.map((item) => (
        <BoughtPiece key={item.item} item={item} />
      ))}
      {drawn?.ghost?.items.map((item) => (
        <g key={item.item} className="ghost ghost-full">
          <PieceFaces item={item} isLit onHover={nothing} />
          <PieceLines item={item} isLit />
        </g>
      ))}
    </svg>
  )
}
