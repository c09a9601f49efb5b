import { useId } from 'react'
import { showLength, showNumber } from '../../show.ts'

interface HeightLensProps {
  readonly heights: readonly { readonly zMm: number; readonly mpa: number }[]
}

const WIDTH = 360
const LEFT = 64
const ROW = 7
/** Cells are drawn in so many rows at most; the highest pull of each is shown. */
const MOST_ROWS = 24

/** How hard layers are pulled apart, by their height above the bed. */
export function HeightLens({ heights }: HeightLensProps) {
  const twinId = useId()
  const most = Math.max(0, ...heights.map(({ mpa }) => mpa))
  if (!(most > 0.005)) return null
  const each = Math.ceil(heights.length / MOST_ROWS)
  const rows = Array.from({ length: Math.ceil(heights.length / each) }, (_, i) =>
    heights.slice(i * each, (i + 1) * each).reduce((a, b) => (b.mpa > a.mpa ? b : a)),
  ).toReversed()
  const top = rows[0]
  const bottom = rows.at(-1)
  const worst = rows.reduce((a, b) => (b.mpa > a.mpa ? b : a))
  const height = rows.length * ROW + 4
  return (
    <figure className="stiffness-lens">
      <svg
        viewBox={`0 0 ${WIDTH} ${height}`}
        role="img"
        aria-label="Pull across the layers by height"
        aria-details={twinId}
      >
        {rows.map((row, i) => (
          <rect
            key={row.zMm}
            className={row === worst ? 'lens-bar lens-worst' : 'lens-bar'}
            x={LEFT}
            y={2 + i * ROW}
            width={Math.max(0.5, ((WIDTH - LEFT - 4) * row.mpa) / most)}
            height={ROW - 1.5}
          />
        ))}
        {top === undefined || bottom === undefined ? null : (
          <>
            <text x={0} y={9}>
              {showLength(top.zMm, 1)}
            </text>
            <text x={0} y={height - 3}>
              {showLength(bottom.zMm, 1)}
            </text>
          </>
        )}
      </svg>
      <figcaption id={twinId}>
        Where layers are pulled apart, by height above the bed
        {top === undefined || bottom === undefined
          ? ''
          : `, ${showLength(bottom.zMm, 1)} to ${showLength(top.zMm, 1)}`}
        : most at {showLength(worst.zMm, 1)}, {showNumber(worst.mpa, worst.mpa < 1 ? 2 : 1)} MPa.
      </figcaption>
    </figure>
  )
}
