import type { Range } from '../../core/model/figures.ts'
import { formatPercent, formatRange, formatTyped, withSign } from '../../core/words/format.ts'
import { shownAs, shownOf } from '../../core/words/shownUnits.ts'
import { pieceG } from '../aircraft/words.ts'
import { trueMinus } from '../show.ts'

interface ScaleBandProps {
  readonly foretoldG: Range
  /** Net; null while nothing is typed. */
  readonly netG: number | null
}

const WIDE = 330
const TOP = 34
/** Of the range to each side of it. */
const BESIDE = 0.5

/** What the scale should show as a band, and what it shows as a mark with the difference. */
export function ScaleBand({ foretoldG, netG }: ScaleBandProps) {
  const { low, mid, high } = foretoldG
  const as = shownAs('g')
  const beside = BESIDE * Math.max(high - low, 0.1 * as.per)
  const [from, to] = [Math.max(0, low - beside), high + beside]
  const x = (g: number): number => ((g - from) / (to - from)) * WIDE
  const step = tickStep(shownOf(to - from, as))
  const first = Math.ceil(shownOf(from, as) / step)
  const count = Math.floor(shownOf(to, as) / step) - first + 1
  const markX = netG === null ? 0 : Math.min(WIDE - 1, Math.max(1, x(netG)))
  const share = netG === null || mid <= 0 ? null : netG / mid - 1
  return (
    <figure className="scale-figure">
      <svg className="scale-band" viewBox={`0 0 ${WIDE} 66`} aria-hidden="true">
        <rect
          className="scale-range"
          x={x(low)}
          y={TOP - 14}
          width={x(high) - x(low)}
          height="14"
        />
        <path className="scale-line" d={`M0 ${TOP}H${WIDE}`} />
        {Array.from({ length: Math.max(0, count) }, (_, i) => {
          const value = (first + i) * step
          const at = x(value * as.per)
          return (
            <g key={first + i}>
              <path className="scale-line" d={`M${at} ${TOP}v-6`} />
              <text className="scale-tick" x={Math.min(WIDE - 12, Math.max(12, at))} y={TOP + 18}>
                {formatTyped(value, 3)}
              </text>
            </g>
          )
        })}
        <path className="scale-mid" d={`M${x(mid)} ${TOP + 3}v-22`} />
        <text className="scale-mid-words" x={Math.max(84, x(mid) - 5)} y={TOP - 20}>
          reckoned {pieceG(mid)}
        </text>
        {share === null ? null : (
          <>
            <path className="scale-mark" d={`M${markX} ${TOP + 5}v-27m-5 -6h10l-5 6z`} />
            <text
              className={
                markX > WIDE - 60 ? 'scale-mark-words scale-mark-left' : 'scale-mark-words'
              }
              x={markX > WIDE - 60 ? markX - 9 : markX + 9}
              y={TOP - 24}
            >
              {signedShare(share)}
            </text>
          </>
        )}
      </svg>
      <figcaption className="unseen">
        reckoned {pieceG(mid)}, {formatRange(foretoldG, pieceG)}
        {share === null ? '' : `; the scale shows ${signedShare(share)}`}
      </figcaption>
    </figure>
  )
}

function signedShare(share: number): string {
  return trueMinus(withSign(share, formatPercent(share)))
}

/** Four to nine ticks of 1, 2 or 5. */
function tickStep(span: number): number {
  const power = 10 ** Math.floor(Math.log10(span / 4))
  return ([1, 2, 5].find((one) => span / (one * power) <= 9) ?? 10) * power
}
