import { useId } from 'react'
import { FieldError, Group, Input, NumberField } from 'react-aria-components'
import type { Aircraft } from '../../../core/aircraft.ts'
import { formatPercent, withSign } from '../../../core/figures/format.ts'
import type { PrintedPart } from '../../../core/ledger/ledger.ts'
import type { AircraftView } from '../../../state/aircraftView.ts'
import { trueMinus } from '../../show.ts'
import { usePutAircraft } from '../useAircraft.ts'
import { pieceG } from '../words.ts'

interface WeighInsProps {
  readonly view: AircraftView
  readonly weighedG: Aircraft['weighedG']
}

/** What the scale said of one piece of each printed part, beside what was reckoned. */
export function WeighIns({ view, weighedG }: WeighInsProps) {
  const put = usePutAircraft()
  return (
    <>
      <h3>Weigh-in</h3>
      <p className="hint">
        One piece, supports and brim off. A weighed mass takes the place of the estimate; empty the
        field to go back to it.
      </p>
      <ul className="weigh-list">
        {view.printed.map((part) => (
          <WeighLine
            key={part.id}
            part={part}
            weighedG={weighedG[part.id] ?? null}
            onWeigh={(massG) => {
              const { [part.id]: _old, ...others } = weighedG
              put(
                { weighedG: massG === null ? others : { ...others, [part.id]: massG } },
                `weigh “${part.name}”`,
              )
            }}
          />
        ))}
      </ul>
    </>
  )
}

interface WeighLineProps {
  readonly part: PrintedPart
  readonly weighedG: number | null
  readonly onWeigh: (massG: number | null) => void
}

function WeighLine({ part, weighedG, onWeigh }: WeighLineProps) {
  const nameId = useId()
  const estimateG = part.figures.massG.mid
  const share = weighedG === null || !(estimateG > 0) ? null : weighedG / estimateG - 1
  return (
    <li>
      <span id={nameId}>
        {part.name}
        <span className="range">
          reckoned {pieceG(estimateG)} g
          {share === null ? null : (
            <>
              {', scale '}
              <b>{trueMinus(withSign(share, formatPercent(share)))}</b>
            </>
          )}
        </span>
      </span>
      <NumberField
        className="number-box"
        aria-labelledby={nameId}
        value={weighedG ?? Number.NaN}
        minValue={0}
        maxValue={100000}
        formatOptions={{ maximumFractionDigits: 2, useGrouping: false }}
        onChange={(next) => {
          const massG = Number.isFinite(next) && next > 0 ? next : null
          if (massG !== weighedG) onWeigh(massG)
        }}
      >
        <Group className="number-line">
          <Input placeholder="–" />
          <span className="unit" aria-hidden="true">
            g
          </span>
        </Group>
        <FieldError />
      </NumberField>
    </li>
  )
}
