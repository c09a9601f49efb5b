import '../styles/drawing.css'
import { useRef } from 'react'
import { PART_VIEWS } from '../../core/drawing/partViews.ts'
import type { Part } from '../../core/model/frame.ts'
import type { Finding } from '../../core/model/mesh.ts'
import { PieceFaces, PieceLines } from '../drawing/PieceLines.tsx'
import { sizeWords } from '../part/partMarks.ts'
import { usePartLook } from '../part/usePartLook.ts'

const NO_FINDINGS: readonly Finding[] = []
const SIZE_PX = { width: 360, height: 150 }
/** A finger that moves less does not swipe, px. */
const SWIPE_PX = 40

interface PieceOnScaleProps {
  /** The id of what says the same in words. */
  readonly twinId: string
  readonly part: Part
  /** To the next (1) or the one before (−1). */
  readonly onSwipe: (by: number) => void
}

function nothing(): void {
  // Pointing at it tells nothing.
}

/** The piece as it looks, so that the right one lies on the scale. */
export function PieceOnScale({ twinId, part, onSwipe }: PieceOnScaleProps) {
  const look = usePartLook(part, NO_FINDINGS, PART_VIEWS.slant, SIZE_PX.width, SIZE_PX.height)
  const from = useRef<number | null>(null)
  return (
    <svg
      className="part-drawing scale-piece"
      viewBox={`0 0 ${SIZE_PX.width} ${SIZE_PX.height}`}
      role="img"
      aria-details={twinId}
      aria-label={`${part.name}, drawn${look === null ? '' : `, ${sizeWords(look.boundsMm)}`}`}
      onPointerDown={(event) => {
        from.current = event.clientX
        event.currentTarget.setPointerCapture(event.pointerId)
      }}
      onPointerUp={(event) => {
        const by = event.clientX - (from.current ?? event.clientX)
        from.current = null
        if (Math.abs(by) >= SWIPE_PX) onSwipe(by < 0 ? 1 : -1)
      }}
    >
      {look?.drawing.items.map((item) => (
        <PieceFaces key={item.item} item={item} isLit={false} onHover={nothing} />
      ))}
      {look?.drawing.items.map((item) => (
        <PieceLines key={item.item} item={item} isLit={false} />
      ))}
    </svg>
  )
}
