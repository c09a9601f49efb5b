import type { Dimension } from '../../core/drawing/overallSizes.ts'
import type { Point } from '../../core/drawing/placeLeaders.ts'
import { showMm } from '../show.ts'

/** px, long and half as wide */
const ARROW = { long: 9, half: 1.6 } as const

/** Sizes with their arrows and the lines that lead to them. */
export function DimensionLines({ of }: { readonly of: readonly Dimension[] }) {
  return (
    <g className="dimensions" aria-hidden="true">
      {of.map(({ axis, lengthMm, from, to, extensions, figure }) => (
        <g key={axis} data-axis={axis}>
          <path
            className="dimension-line"
            d={[...extensions, [from, to] as const]
              .map(([a, b]) => `M${point(a)}L${point(b)}`)
              .join('')}
          />
          <path className="dimension-arrow" d={arrow(from, to) + arrow(to, from)} />
          <text
            className="dimension-figure"
            transform={`translate(${point(figure)}) rotate(${tenth(figure.angleDeg)})`}
          >
            {showMm(lengthMm, 1)}
          </text>
        </g>
      ))}
    </g>
  )
}

/** A slim full arrow with its tip at the first point, away from the second. */
function arrow(tip: Point, tail: Point): string {
  const length = Math.hypot(tail.x - tip.x, tail.y - tip.y) || 1
  const [dx, dy] = [(tail.x - tip.x) / length, (tail.y - tip.y) / length]
  const long = Math.min(ARROW.long, length / 3)
  const foot = { x: tip.x + long * dx, y: tip.y + long * dy }
  const one = { x: foot.x - ARROW.half * dy, y: foot.y + ARROW.half * dx }
  const two = { x: foot.x + ARROW.half * dy, y: foot.y - ARROW.half * dx }
  return `M${point(tip)}L${point(one)}L${point(two)}Z`
}

const tenth = (value: number): number => Math.round(value * 10) / 10
const point = ({ x, y }: Point): string => `${tenth(x)} ${tenth(y)}`
