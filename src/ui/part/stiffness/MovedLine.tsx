import { useId } from 'react'
import type { LinePoint } from '../../../core/stiffness/part/readMoves.ts'
import { showLength, showNumber } from '../../show.ts'

const WIDTH = 360
const HEIGHT = 90
const EDGE = 8
/** The largest move is drawn this high, whatever it is. */
const DRAWN = 46

/** The middle line at rest and pushed, its moves drawn larger than they are. */
export function MovedLine({ line }: { readonly line: readonly LinePoint[] }) {
  const twinId = useId()
  const first = line[0]
  const last = line.at(-1)
  if (first === undefined || last === undefined || last === first) return null
  const most = Math.max(...line.map(({ moveMm }) => Math.abs(moveMm)))
  if (!(most > 0)) return null
  const scale = (WIDTH - 2 * EDGE) / (last.atMm - first.atMm)
  const larger = DRAWN / most / scale
  const x = (atMm: number): number => EDGE + (atMm - first.atMm) * scale
  const rest = HEIGHT - 22
  const moved = line
    .map(
      ({ atMm, moveMm }) => `${x(atMm).toFixed(1)},${(rest - (moveMm / most) * DRAWN).toFixed(1)}`,
    )
    .join(' ')
  return (
    <figure className="stiffness-line">
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label="How the part moves under the load"
        aria-details={twinId}
      >
        <line className="moved-rest" x1={EDGE} x2={WIDTH - EDGE} y1={rest} y2={rest} />
        <polyline className="moved-line" points={moved} />
        {line.map(({ atMm, moveMm }) => (
          <circle
            key={atMm}
            className="moved-point"
            cx={x(atMm)}
            cy={rest - (moveMm / most) * DRAWN}
            r={1.8}
          />
        ))}
      </svg>
      <figcaption id={twinId}>
        Its middle line from what is held to what is pushed, over{' '}
        {showLength(last.atMm - first.atMm, 0)}; moves drawn{' '}
        {showNumber(larger, larger < 10 ? 1 : 0)} times as large.
      </figcaption>
    </figure>
  )
}
