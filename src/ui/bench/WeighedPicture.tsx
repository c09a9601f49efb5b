import type { FrameRow } from '../../core/frame/types.ts'
import { formatPercent, withSign } from '../../core/words/format.ts'
import { trueMinus } from '../show.ts'

/** Of the drawing, and of the axis at least either way. */
const WIDE = 200
const LEAST = 0.05

/**
 * What was weighed, a line a part: what was calculated as a band about its middle, the scale as a
 * mark.
 */
export function WeighedPicture({ rows }: { readonly rows: readonly FrameRow[] }) {
  const lines = rows.flatMap(({ part: { id, name }, figures, scaleRatio }) => {
    const mid = figures?.massG.mid ?? 0
    if (scaleRatio === null || figures === null || mid <= 0) return []
    const { low, high } = figures.massG
    return [{ id, name, off: scaleRatio - 1, low: low / mid - 1, high: high / mid - 1 }]
  })
  if (lines.length === 0) return null
  const most = Math.max(
    LEAST,
    ...lines.flatMap(({ off, low, high }) => [off, low, high].map(Math.abs)),
  )
  const x = (share: number): number => WIDE / 2 + (share / most) * (WIDE / 2 - 4)
  return (
    <figure className="weighed-picture">
      <ul>
        {lines.map(({ id, name, off, low, high }) => (
          <li key={id}>
            <span>{name}</span>
            <svg viewBox={`0 0 ${WIDE} 16`} aria-hidden="true">
              <rect className="scale-range" x={x(low)} y="3" width={x(high) - x(low)} height="10" />
              <path className="scale-line" d={`M0 13H${WIDE}`} />
              <path className="scale-mid" d={`M${WIDE / 2} 14V1`} />
              <path className="scale-mark" d={`M${x(off)} 14V4m-3 -4h6l-3 4z`} />
            </svg>
            <b>{trueMinus(withSign(off, formatPercent(off)))}</b>
          </li>
        ))}
      </ul>
      <figcaption className="quiet-text">
        Band: what was calculated, 19 times in 20; middle: reckoned; mark: the scale.
      </figcaption>
    </figure>
  )
}
