import type { CarbonFrame } from '../../core/model/frame.ts'
import type { Range } from '../../core/model/figures.ts'
import { leftOutNames } from '../../core/frame/sayings.ts'
import { formatMoney, formatPercent, formatRange, withSign } from '../../core/words/format.ts'
import { frameSummary } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { showMass, trueMinus } from '../show.ts'

/** Printed against carbon: two bars on one axis, and the difference in words. */
export function CarbonDifference({ carbon }: { readonly carbon: CarbonFrame }) {
  const { sum } = useAppState(frameSummary)
  const currency = useAppState((state) => state.frame.prices.currency)
  const difference = sum.carbon
  if (difference === null) return null
  const leftOut = leftOutNames(sum.leftOut)
  const money = (value: number) => formatMoney(value, currency)
  return (
    <div className="carbon-figures">
      <BarPair
        words="Mass"
        printed={sum.printed.massG}
        carbon={carbon.massG}
        format={showMass}
        below={saying(difference.massG, showMass, 'heavier', 'lighter', difference.massShare)}
      />
      <BarPair
        words="Cost of what flies"
        printed={sum.printed.cost}
        carbon={carbon.price}
        format={money}
        below={saying(difference.cost, money, 'dearer', 'cheaper', null)}
      />
      {leftOut === null ? null : <p className="caution">Compared: {leftOut}.</p>}
      <p className="hint">
        A printed arm is not as stiff as a carbon one of the same mass. Grams alone do not settle
        the choice.
      </p>
    </div>
  )
}

interface BarPairProps {
  readonly words: string
  readonly printed: Range
  readonly carbon: number
  readonly format: (value: number) => string
  readonly below: string
}

function BarPair({ words, printed, carbon, format, below }: BarPairProps) {
  const end = Math.max(printed.high, carbon) || 1
  const percent = (value: number) => `${(value / end) * 100}%`
  return (
    <figure className="bar-pair">
      <figcaption>
        {words} <b>{below}</b>
      </figcaption>
      <div className="bar-line">
        <span>printed</span>
        <span className="bar-ground" aria-hidden="true">
          <span className="bar bar-printed" style={{ width: percent(printed.mid) }} />
          <span
            className="bar-reach"
            style={{ left: percent(printed.low), right: `calc(100% - ${percent(printed.high)})` }}
          />
        </span>
        <span className="figures">
          {format(printed.mid)} <span className="range">{formatRange(printed, format)}</span>
        </span>
      </div>
      <div className="bar-line">
        <span>carbon</span>
        <span className="bar-ground" aria-hidden="true">
          <span className="bar bar-carbon" style={{ width: percent(carbon) }} />
        </span>
        <span className="figures">{format(carbon)}</span>
      </div>
    </figure>
  )
}

function saying(
  difference: Range,
  format: (value: number) => string,
  more: string,
  less: string,
  share: Range | null,
): string {
  const size = format(Math.abs(difference.mid))
  const percent =
    share === null ? '' : `, ${trueMinus(withSign(share.mid, formatPercent(share.mid)))}`
  return `${size} ${difference.mid >= 0 ? more : less}${percent}`
}
