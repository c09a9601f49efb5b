import { scaleLinear } from 'd3-scale'
import { formatNumber } from '../../core/words/format.ts'
import { shownAs } from '../../core/words/shownUnits.ts'

interface ScaleBarProps {
  readonly pxPerMm: number
  /** Of the drawing; the bar takes about a quarter of it. */
  readonly widthPx: number
  /** Left end of the bar. */
  readonly xPx: number
  readonly yPx: number
}

/** A round length drawn to the scale of its drawing, on screen and on paper. */
export function ScaleBar({ pxPerMm, widthPx, xPx, yPx }: ScaleBarProps) {
  const as = shownAs('mm')
  const length = niceLength(widthPx / 2 / pxPerMm / as.per)
  return (
    <>
      <path className="draw-scale" d={`M${xPx} ${yPx}h${length * as.per * pxPerMm}`} />
      <text className="draw-name" x={xPx} y={yPx - 6}>
        {formatNumber(length)} {as.label}
      </text>
    </>
  )
}

/** A round length of about half of `reach`. */
function niceLength(reach: number): number {
  return (
    scaleLinear([0, reach / 2], [0, 1])
      .nice(2)
      .ticks(2)[1] ?? 50
  )
}
