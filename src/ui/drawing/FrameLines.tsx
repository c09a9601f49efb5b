import '../styles/drawing.css'
import { useMemo } from 'react'
import type { View } from '../../core/drawing/types.ts'
import { useAppState } from '../appContext.ts'
import { useFramePlaces } from '../useFramePlaces.ts'
import { useDrawing } from './useDrawing.ts'

interface FrameLinesProps {
  readonly view: View
  readonly widthPx: number
  readonly heightPx: number
  /** px a mm; the frame's own middle lies in the middle of the drawing. */
  readonly scale: number
}

/** The placed parts in thin lines, for something else to be drawn upon. */
export function FrameLines({ view, widthPx, heightPx, scale }: FrameLinesProps) {
  const parts = useAppState((state) => state.frame.parts)
  const { places } = useFramePlaces()
  const wanted = useMemo(
    () => ({
      view,
      widthPx: Math.round(widthPx),
      heightPx: Math.round(heightPx),
      marginPx: 0,
      apart: 0,
      isMoving: false,
      scale,
      placedOnly: true,
    }),
    [view, widthPx, heightPx, scale],
  )
  const { drawing } = useDrawing(wanted, parts, places)
  return (
    <g className="frame-lines" aria-hidden="true">
      {drawing?.items.map(({ item, outline, edges }) => (
        <g key={item}>
          <path className="piece-edges" d={edges} />
          <path className="piece-outline" d={outline} />
        </g>
      ))}
    </g>
  )
}
