import type { Printer } from '../../core/model/figures.ts'
import type { RunTold } from '../../core/runs/tellRuns.ts'
import type { Spot } from '../../core/runs/types.ts'
import type { PiecePlan, RunsAnswer } from '../../state/store/types.ts'
import { PieceFaces, PieceLines } from '../drawing/PieceLines.tsx'

interface BedPlanProps {
  readonly run: RunTold
  readonly plans: RunsAnswer['plans']
  readonly bedMm: Printer['bedMm']
  /** Item number by part id. */
  readonly numbers: ReadonlyMap<string, number>
  readonly title: string
}

/** Of the drawing, along the bed's width. */
const WIDTH = 300
/** What a number needs of a piece to stand in it. */
const ROOM_PX = 22

function nothing(): void {
  // Its pieces are in the list below.
}

/** One bed from above, to scale, its front edge below: pieces in lines, with the numbers of their items. */
export function BedPlan({ run, plans, bedMm: [wide, deep], numbers, title }: BedPlanProps) {
  const scale = WIDTH / wide
  const height = deep * scale
  return (
    <svg
      className="bed-plan part-drawing"
      viewBox={`-1 -1 ${WIDTH + 2} ${height + 2}`}
      role="img"
      aria-label={title}
    >
      <rect className="bed-edge" width={WIDTH} height={height} />
      <path
        className="bed-ticks"
        d={`M${WIDTH / 2} 0v6M${WIDTH / 2} ${height}v-6M0 ${height / 2}h6M${WIDTH} ${height / 2}h-6`}
      />
      {run.spots.map(({ partId, xMm, yMm, turnDeg, mirrored }) => {
        const plan = plans[partId]
        if (plan === undefined) return null
        const { items, originPx, scale: drawn } = plan.drawing
        const [ox, oy] = originPx
        const place =
          `translate(${xMm * scale} ${(deep - yMm) * scale}) rotate(${-turnDeg}) ` +
          `scale(${mirrored === true ? -scale / drawn : scale / drawn} ${scale / drawn}) ` +
          `translate(${-ox} ${-oy})`
        return (
          <g key={`${partId} ${xMm} ${yMm}`} className="bed-piece" transform={place}>
            {items.map((item) => (
              <PieceFaces key={item.item} item={item} isLit={false} onHover={nothing} />
            ))}
            {items.map((item) => (
              <PieceLines key={item.item} item={item} isLit={false} />
            ))}
          </g>
        )
      })}
      {run.spots.map((spot, i) => {
        const { partId, xMm, yMm } = spot
        const number = numbers.get(partId)
        const plan = plans[partId]
        if (number === undefined || plan === undefined) return null
        const { x, y, smallMm } = middleOf(spot, plan)
        // A piece too small to hold its number has it above, and of several only the first.
        const isSmall = smallMm * scale < ROOM_PX
        if (isSmall && run.spots.findIndex((other) => other.partId === partId) !== i) return null
        const lift = isSmall ? (smallMm * scale) / 2 + 6 : -5
        return (
          <text
            key={`${partId} ${xMm} ${yMm}`}
            className="bed-number"
            x={x * scale}
            y={(deep - y) * scale - lift}
          >
            {number}
          </text>
        )
      })}
    </svg>
  )
}

/** The middle of a piece on the bed rather than the origin of its mesh, and its shorter side, mm. */
function middleOf({ xMm, yMm, turnDeg, mirrored }: Spot, { drawing }: PiecePlan) {
  const { boxPx, originPx, scale } = drawing
  const [left, top, right, bottom] = boxPx
  const side = mirrored === true ? -1 : 1
  const along = (side * ((left + right) / 2 - originPx[0])) / scale
  const up = (originPx[1] - (top + bottom) / 2) / scale
  const turn = (turnDeg * Math.PI) / 180
  return {
    x: xMm + Math.cos(turn) * along - Math.sin(turn) * up,
    y: yMm + Math.sin(turn) * along + Math.cos(turn) * up,
    smallMm: Math.min(right - left, bottom - top) / scale,
  }
}
