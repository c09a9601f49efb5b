import '../styles/drawing.css'
import { useRef, useState, type KeyboardEvent, type PointerEvent } from 'react'
import type { Printer } from '../../core/model/figures.ts'
import { middleOf } from '../../core/runs/moveSpot.ts'
import type { RunTold } from '../../core/runs/tellRuns.ts'
import type { PiecePlan, RunsAnswer } from '../../state/store/types.ts'
import { PieceFaces, PieceLines } from '../drawing/PieceLines.tsx'
import { showNumber } from '../show.ts'

interface BedPlanProps {
  readonly run: RunTold
  readonly plans: RunsAnswer['plans']
  readonly bedMm: Printer['bedMm']
  /** Of all beds, so that all are drawn to one scale. */
  readonly widestMm: number
  /** Item number by part id. */
  readonly numbers: ReadonlyMap<string, number>
  readonly title: string
  /** Places of the pieces that lie on another or over the edge. */
  readonly wrong: ReadonlySet<number>
  readonly chosen: number | null
  readonly onChoose: (at: number) => void
  /** By so many mm; `steps` in a row are undone together. */
  readonly onMove: (at: number, byMm: readonly [number, number], steps: boolean) => void
  readonly onTurn: (at: number, byDeg: number) => void
  /** Let go over another bed, there with its middle at these mm. */
  readonly onPass: (at: number, toRun: number, toMm: readonly [number, number]) => void
}

/** Of the drawing, along the width of the widest bed. */
const WIDTH = 300
/** What a number needs of a piece to stand in it. */
const ROOM_PX = 22
/** A piece no longer than this has no free place for a number among its own lines. */
const LONG_PX = 64
/** A press that moves less chooses the piece, px. */
const STILL_PX = 3
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}
const TURN_DEG = 15

interface Drag {
  readonly at: number
  readonly fromPx: readonly [number, number]
  readonly byMm: readonly [number, number]
}

function nothing(): void {
  // A piece is pointed at as a whole.
}

/**
 * One bed from above, to scale, its front edge below: pieces in lines, with the numbers of their
 * items. They are dragged, or moved by the arrow keys (with Shift by 10 mm) and turned by R (with
 * Shift back).
 */
export function BedPlan(props: BedPlanProps) {
  const { run, plans, bedMm, widestMm, numbers, title, wrong, chosen } = props
  const { onChoose, onMove, onTurn, onPass } = props
  const [wide, deep] = bedMm
  const scale = WIDTH / widestMm
  const width = wide * scale
  const height = deep * scale
  const svg = useRef<SVGSVGElement>(null)
  const [drag, setDrag] = useState<Drag | null>(null)

  const placed = run.spots.map((spot, at) => ({ spot, at, key: `${spot.partId} ${at}` }))
  const movedMm = ({ clientX, clientY }: PointerEvent, [x, y]: readonly [number, number]) => {
    // The drawing is a px wider than the widest bed on both sides.
    const px = (svg.current?.getBoundingClientRect().width ?? WIDTH) / (WIDTH + 2)
    return [(clientX - x) / px / scale, (y - clientY) / px / scale] as const
  }
  const letGo = (event: PointerEvent, { at, fromPx }: Drag) => {
    setDrag(null)
    const [dx, dy] = [event.clientX - fromPx[0], event.clientY - fromPx[1]]
    if (Math.hypot(dx, dy) < STILL_PX) return
    const byMm = movedMm(event, fromPx)
    const bed = document
      .elementsFromPoint(event.clientX, event.clientY)
      .find((one): one is SVGSVGElement => one instanceof SVGSVGElement && 'run' in one.dataset)
    const spot = run.spots[at]
    const plan = spot && plans[spot.partId]
    if (bed === undefined || bed === svg.current || spot === undefined || plan === undefined) {
      onMove(at, byMm, false)
      return
    }
    const [x, y] = middleOf(spot, plan.outline)
    const own = svg.current?.getBoundingClientRect()
    const there = bed.getBoundingClientRect()
    if (own === undefined) return
    const px = own.width / (WIDTH + 2)
    const offMm = [
      (there.left - own.left) / px / scale,
      (there.bottom - own.bottom) / px / scale,
    ] as const
    onPass(at, Number(bed.dataset['run']), [x + byMm[0] - offMm[0], y + byMm[1] + offMm[1]])
  }
  const press = (event: KeyboardEvent, at: number) => {
    const arrow = ARROWS[event.key]
    if (event.ctrlKey || event.metaKey || event.altKey) return
    if (event.key.toLowerCase() === 'r') onTurn(at, event.shiftKey ? -TURN_DEG : TURN_DEG)
    else if (event.key === 'Enter' || event.key === ' ') onChoose(at)
    else if (arrow !== undefined) {
      const times = event.shiftKey ? 10 : 1
      onMove(at, [arrow[0] * times, arrow[1] * times], true)
    } else return
    event.preventDefault()
  }
  return (
    <svg
      ref={svg}
      className="bed-plan part-drawing"
      viewBox={`-1 -1 ${WIDTH + 2} ${height + 2}`}
      role="group"
      aria-label={title}
      data-run={run.number - 1}
    >
      <rect className="bed-edge" width={width} height={height} />
      <path
        className="bed-ticks"
        d={`M${width / 2} 0v6M${width / 2} ${height}v-6M0 ${height / 2}h6M${width} ${height / 2}h-6`}
      />
      {placed.map(({ spot, at, key }) => {
        const { partId, turnDeg, mirrored } = spot
        const plan = plans[partId]
        if (plan === undefined) return null
        const [alongMm, upMm] = drag?.at === at ? drag.byMm : [0, 0]
        const [xMm, yMm] = [spot.xMm + alongMm, spot.yMm + upMm]
        const { items, originPx, scale: drawn } = plan.drawing
        const [ox, oy] = originPx
        const place =
          `translate(${xMm * scale} ${(deep - yMm) * scale}) rotate(${-turnDeg}) ` +
          `scale(${mirrored === true ? -scale / drawn : scale / drawn} ${scale / drawn}) ` +
          `translate(${-ox} ${-oy})`
        const [x, y] = middleOf(spot, plan.outline)
        const name = run.pieces.find((one) => one.partId === partId)?.part ?? ''
        return (
          <g
            key={key}
            className={`bed-piece${wrong.has(at) ? ' bed-piece-wrong' : ''}`}
            transform={place}
            role="button"
            tabIndex={0}
            aria-pressed={chosen === at}
            aria-label={
              `${numbers.get(partId) ?? ''} ${name}, ${showNumber(x, 0)} across, ${showNumber(y, 0)} deep, ` +
              `turned ${showNumber(turnDeg, 0)}°`
            }
            onKeyDown={(event) => {
              press(event, at)
            }}
            onPointerDown={(event) => {
              if (event.button !== 0) return
              event.currentTarget.setPointerCapture(event.pointerId)
              setDrag({ at, fromPx: [event.clientX, event.clientY], byMm: [0, 0] })
              onChoose(at)
            }}
            onPointerMove={(event) => {
              if (drag?.at === at) setDrag({ ...drag, byMm: movedMm(event, drag.fromPx) })
            }}
            onPointerUp={(event) => {
              if (drag?.at === at) letGo(event, drag)
            }}
            onPointerCancel={() => {
              setDrag(null)
            }}
          >
            {items.map((item) => (
              <PieceFaces key={item.item} item={item} isLit={chosen === at} onHover={nothing} />
            ))}
            {items.map((item) => (
              <PieceLines key={item.item} item={item} isLit={chosen === at} />
            ))}
          </g>
        )
      })}
      {placed.map(({ spot, at, key }) => {
        const { partId } = spot
        const number = numbers.get(partId)
        const plan = plans[partId]
        if (number === undefined || plan === undefined || drag?.at === at) return null
        const [x, y] = middleOf(spot, plan.outline)
        const [small, long] = sidesMm(plan)
        // A piece too small to hold its number has it above, and of several only the first.
        const isSmall = small * scale < ROOM_PX || long * scale < LONG_PX
        if (isSmall && run.spots.findIndex((other) => other.partId === partId) !== at) return null
        const lift = isSmall ? (Math.min(long, 2 * small) * scale) / 2 + 6 : -5
        return (
          <text key={key} className="bed-number" x={x * scale} y={(deep - y) * scale - lift}>
            {number}
          </text>
        )
      })}
    </svg>
  )
}

/** The shorter and the longer side of a piece, mm. */
function sidesMm({ drawing: { boxPx, scale } }: PiecePlan): readonly [number, number] {
  const [left, top, right, bottom] = boxPx
  const [wide, high] = [(right - left) / scale, (bottom - top) / scale]
  return [Math.min(wide, high), Math.max(wide, high)]
}
