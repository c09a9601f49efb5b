import {
  useEffect,
  useRef,
  useState,
  type KeyboardEvent,
  type PointerEvent,
  type RefObject,
} from 'react'
import type { View } from '../../core/drawing/types.ts'
import { VIEWS } from '../../core/drawing/viewAxes.ts'
import { nearOf, shiftBy, zoomBy, type Lie, type Near } from './sight.ts'

/** Turned a degree a px. */
const TURN_DEG = 0.5
const KEY_TURN_DEG = 5
const KEY_SHIFT_PX = 40
const KEY_ZOOM = 1.25
/** A hand that presses moves so far without meaning to, px. */
const STILL_PX = 4

interface Finger {
  readonly x: number
  readonly y: number
}

/** How the frame is looked at, and the hands that change it. */
export interface Sight {
  readonly view: View
  readonly setView: (view: View) => void
  /** Null while all of it fits. */
  readonly near: Near | null
  readonly isMoving: boolean
  /** Tells how what is drawn now lies: what comes nearer starts from it. */
  readonly lieRef: RefObject<Lie | null>
  readonly svgRef: RefObject<SVGSVGElement | null>
  readonly hands: {
    readonly onKeyDown: (event: KeyboardEvent) => void
    readonly onDoubleClick: () => void
    readonly onPointerDown: (event: PointerEvent) => void
    readonly onPointerMove: (event: PointerEvent) => void
    readonly onPointerUp: (event: PointerEvent) => void
    readonly onPointerCancel: (event: PointerEvent) => void
  }
}

/**
 * One finger or the mouse turns, two fingers or Shift and the mouse shift, two fingers and the
 * wheel bring nearer. `onDown` is told of a hand that comes down, `onPress` of one that went
 * without having turned anything.
 */
export function useSight(onDown: () => void, onPress: () => void): Sight {
  const [view, setView] = useState<View>(VIEWS.slant)
  const [near, setNear] = useState<Near | null>(null)
  const [isMoving, setMoving] = useState(false)
  const lieRef = useRef<Lie | null>(null)
  const svgRef = useRef<SVGSVGElement>(null)
  const fingers = useRef(new Map<number, Finger>())
  const movedPx = useRef(0)

  const come = (to: (now: Near) => Near | null) => {
    setNear((now) => {
      const from = now ?? (lieRef.current === null ? null : nearOf(lieRef.current))
      return from === null ? null : to(from)
    })
  }
  const turn = (rightDeg: number, downDeg: number) => {
    setView((now) => ({
      azimuthDeg: now.azimuthDeg + rightDeg,
      elevationDeg: Math.max(-90, Math.min(90, now.elevationDeg + downDeg)),
    }))
  }
  const move = (before: Finger, now: Finger, other: Finger | null, isShifting: boolean) => {
    const [dx, dy] = [now.x - before.x, now.y - before.y]
    movedPx.current += Math.abs(dx) + Math.abs(dy)
    if (other !== null) {
      const factor = apart(now, other) / Math.max(1, apart(before, other))
      const at = fromMiddle(svgRef.current, (now.x + other.x) / 2, (now.y + other.y) / 2)
      // Both fingers hold what lies between them: the middle of the two goes half as far as one of
      // them.
      come((from) => {
        const next = zoomBy(from, view, factor, at)
        return next === null ? null : shiftBy(next, view, dx / 2, dy / 2)
      })
    } else if (isShifting) come((from) => shiftBy(from, view, dx, dy))
    else turn(-TURN_DEG * dx, TURN_DEG * dy)
  }
  const lift = (event: PointerEvent): boolean => {
    fingers.current.delete(event.pointerId)
    const isLast = fingers.current.size === 0
    if (isLast) setMoving(false)
    return isLast
  }

  useEffect(() => {
    // By hand: a listener of React's may not keep the page from scrolling.
    const element = svgRef.current
    if (element === null) return
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.shiftKey && document.activeElement !== element) return
      event.preventDefault()
      // With Shift held many browsers make a level wheel of it.
      const way = event.deltaY === 0 ? event.deltaX : event.deltaY
      const at = fromMiddle(element, event.clientX, event.clientY)
      come((from) => zoomBy(from, view, Math.exp(-way / 400), at))
    }
    element.addEventListener('wheel', onWheel, { passive: false })
    return () => {
      element.removeEventListener('wheel', onWheel)
    }
  }, [view])

  return {
    view,
    setView,
    near,
    isMoving,
    lieRef,
    svgRef,
    hands: {
      onKeyDown: (event) => {
        if (event.key === '+' || event.key === '-')
          come((from) => zoomBy(from, view, event.key === '+' ? KEY_ZOOM : 1 / KEY_ZOOM))
        const step = {
          ArrowLeft: [-1, 0],
          ArrowRight: [1, 0],
          ArrowUp: [0, -1],
          ArrowDown: [0, 1],
        }[event.key]
        if (step === undefined) return
        event.preventDefault()
        const [right = 0, down = 0] = step
        if (event.shiftKey)
          come((from) => shiftBy(from, view, KEY_SHIFT_PX * right, KEY_SHIFT_PX * down))
        else turn(KEY_TURN_DEG * right, KEY_TURN_DEG * down)
      },
      onDoubleClick: () => {
        setNear(null)
      },
      onPointerDown: (event) => {
        event.currentTarget.setPointerCapture(event.pointerId)
        if (fingers.current.size === 0) movedPx.current = 0
        // Whatever two fingers do, it is no press of a part.
        else movedPx.current = Infinity
        fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY })
        onDown()
        setMoving(true)
      },
      onPointerMove: (event) => {
        const before = fingers.current.get(event.pointerId)
        if (before === undefined || fingers.current.size > 2) return
        const now = { x: event.clientX, y: event.clientY }
        const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1] ?? null
        fingers.current.set(event.pointerId, now)
        move(before, now, other, event.shiftKey)
      },
      onPointerUp: (event) => {
        if (lift(event) && movedPx.current <= STILL_PX) onPress()
      },
      onPointerCancel: lift,
    },
  }
}

function apart(a: Finger, b: Finger): number {
  return Math.hypot(a.x - b.x, a.y - b.y)
}

function fromMiddle(element: Element | null, x: number, y: number): [number, number] {
  if (element === null) return [0, 0]
  const { left, top, width, height } = element.getBoundingClientRect()
  return [x - left - width / 2, y - top - height / 2]
}
