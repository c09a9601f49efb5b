import { memo } from 'react'
import { formatPercent, withSign } from '../../../core/words/format.ts'
import type { Range } from '../../../core/model/figures.ts'
import type { PrintedPart } from '../../../core/frame/ledger.ts'
import { useAppState, useReadState } from '../../appContext.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { trueMinus } from '../../show.ts'
import { usePutAircraft } from '../useAircraft.ts'
import { pieceG, pieceSpan } from '../words.ts'

/** What the scale said of one piece of each printed part, beside what was reckoned. */
export function WeighIns({ printed }: { readonly printed: readonly PrintedPart[] }) {
  return (
    <>
      <h3>Weigh-in</h3>
      <p className="hint">
        One piece, supports and brim off. A weighed mass takes the place of the estimate; empty the
        field to go back to it.
      </p>
      <ul className="weigh-list">
        {printed.map(({ id, name, figures: { massG } }) => (
          <WeighLine
            key={id}
            id={id}
            name={name}
            lowG={massG.low}
            midG={massG.mid}
            highG={massG.high}
          />
        ))}
      </ul>
    </>
  )
}

interface WeighLineProps {
  readonly id: string
  readonly name: string
  /** One piece as reckoned. */
  readonly lowG: number
  readonly midG: number
  readonly highG: number
}

const WeighLine = memo(function WeighLine({ id, name, lowG, midG, highG }: WeighLineProps) {
  const put = usePutAircraft()
  const read = useReadState()
  const weighedG = useAppState((state) => state.frame.aircraft.weighedG[id] ?? null)
  const share = weighedG === null || !(midG > 0) ? null : weighedG / midG - 1
  const weigh = (massG: number | null) => {
    const { [id]: _old, ...others } = read().frame.aircraft.weighedG
    put({ weighedG: massG === null ? others : { ...others, [id]: massG } }, `weigh “${name}”`)
  }
  return (
    <li>
      <span>
        {name}
        <span className="range">
          reckoned {reckonedWords({ low: lowG, mid: midG, high: highG })}
          {share === null ? null : (
            <>
              {', scale '}
              <b>{trueMinus(withSign(share, formatPercent(share)))}</b>
            </>
          )}
        </span>
      </span>
      <NumberBox
        label={`${name} on the scale`}
        bare
        value={weighedG}
        min={0.01}
        max={100000}
        step={0.1}
        unit="g"
        onChange={weigh}
        onEmpty={() => {
          weigh(null)
        }}
      />
    </li>
  )
})

function reckonedWords(massG: Range): string {
  const mid = `${pieceG(massG.mid)} g`
  const span = pieceSpan(massG)
  return span === mid ? mid : `${mid} (${span})`
}
