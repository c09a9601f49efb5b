import { useRef, type KeyboardEvent, type PointerEvent } from 'react'
import { cutOutline } from '../../core/drawing/cutOutline.ts'
import type { LookAnswer } from '../../state/store/types.ts'
import { cutLengthMm, cutStepMm, type CutPlane } from '../part/cutPlane.ts'
import { showLength, showMm } from '../show.ts'

interface CutHandleProps {
  readonly look: LookAnswer
  readonly plane: CutPlane
  readonly layerMm: number
  readonly onMove: (plane: CutPlane) => void
}

/** Steps a key. */
const KEYS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: 10,
  PageDown: -10,
}

/** The cutting line under the hand: its frame is dragged, its letter takes the keys of a slider. */
export function CutHandle({ look, plane, layerMm, onMove }: CutHandleProps) {
  const held = useRef<{ x: number; y: number; share: number } | null>(null)
  const { drawing, boundsMm } = look
  const { widthPx, heightPx } = drawing
  const cut = cutOutline(drawing, boundsMm, plane.axis, plane.share)
  if (cut === null) return null
  const { corners, letters, reach } = cut
  const lengthMm = cutLengthMm(boundsMm, plane.axis)
  const stepShare = cutStepMm(plane.axis, lengthMm, layerMm) / lengthMm
  const reachPx = Math.hypot(reach.x, reach.y)
  const move = (share: number) => {
    // Layers begin where the first one ends: who moves a level plane puts it into one.
    const stepped = plane.axis === 'z' ? share : Math.round(share / stepShare) * stepShare
    onMove({ axis: plane.axis, share: Math.min(1, Math.max(0, stepped)) })
  }
  const take = (event: PointerEvent) => {
    if (event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    held.current = { x: event.clientX, y: event.clientY, share: plane.share }
  }
  const drag = (event: PointerEvent) => {
    const from = held.current
    if (from === null) return
    const way = (event.clientX - from.x) * reach.x + (event.clientY - from.y) * reach.y
    move(from.share + way / reachPx ** 2)
  }
  const drop = () => {
    held.current = null
  }
  const press = (event: KeyboardEvent) => {
    const steps = KEYS[event.key]
    const end = event.key === 'Home' ? 0 : event.key === 'End' ? 1 : null
    if (steps === undefined && end === null) return
    event.preventDefault()
    move(end ?? plane.share + (steps ?? 0) * stepShare)
  }
  const hand = {
    onPointerDown: take,
    onPointerMove: drag,
    onPointerUp: drop,
    onPointerCancel: drop,
  }
  const place = ({ x, y }: { readonly x: number; readonly y: number }) => ({
    left: `${(100 * x) / widthPx}%`,
    top: `${(100 * y) / heightPx}%`,
  })
  return (
    <div className="cut-hand">
      <svg viewBox={`0 0 ${widthPx} ${heightPx}`} aria-hidden="true">
        <path d={`M${corners.map(({ x, y }) => `${x} ${y}`).join('L')}Z`} {...hand} />
      </svg>
      <span className="cut-letter" style={place(letters[1])} aria-hidden="true" {...hand} />
      <span
        className="cut-letter"
        style={place(letters[0])}
        role="slider"
        tabIndex={0}
        aria-label="Cutting line A–A"
        aria-valuemin={0}
        aria-valuemax={Math.round(lengthMm * 10) / 10}
        aria-valuenow={Math.round(plane.share * lengthMm * 10) / 10}
        aria-valuetext={`${showMm(plane.share * lengthMm, 1)} of ${showLength(lengthMm, 1)}`}
        title="Drag the cutting line, or use the arrow keys"
        onKeyDown={press}
        {...hand}
      />
    </div>
  )
}
