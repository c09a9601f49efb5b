import '../styles/drawing.css'
import { useEffect, useState } from 'react'
import type { LineDrawing } from '../../core/drawing/types.ts'
import { VIEWS } from '../../core/drawing/viewAxes.ts'
import type { Part } from '../../core/model/frame.ts'
import { useActions } from '../appContext.ts'
import { PieceFaces, PieceLines } from './PieceLines.tsx'

const SHEET = { widthPx: 640, heightPx: 360, marginPx: 12 }

function nothing(): void {
  // On paper nothing is pointed at.
}

/** One piece as it lies on the bed, in lines: for paper, where a picture of pixels would not do. */
export function PartDrawing({ part }: { readonly part: Part }) {
  const { drawFrame } = useActions()
  const { id, name, meshHash, unit, pose } = part
  const [drawing, setDrawing] = useState<LineDrawing | null>(null)
  useEffect(() => {
    let isLeft = false
    const draw = async () => {
      const ask = { view: VIEWS.slant, sheet: SHEET, apart: 0, samples: 2 } as const
      const answer = await drawFrame(ask, [id])
      if (!isLeft) setDrawing(answer?.drawing ?? null)
    }
    void draw()
    return () => {
      isLeft = true
    }
  }, [drawFrame, id, meshHash, unit, pose])
  if (drawing === null) return null
  const { widthPx, heightPx, items } = drawing
  return (
    <svg
      className="part-drawing"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      role="img"
      aria-label={`${name}, as it lies on the bed`}
    >
      {items.map((item) => (
        <PieceFaces key={item.item} item={item} isLit={false} onHover={nothing} />
      ))}
      {items.map((item) => (
        <PieceLines key={item.item} item={item} isLit={false} />
      ))}
    </svg>
  )
}
