import { Checkbox } from 'react-aria-components'
import { RUN_LIMITS } from '../../core/data/limits.ts'
import type { Spot } from '../../core/model/runs.ts'
import { middleOf, moveTo, turnTo } from '../../core/runs/moveSpot.ts'
import type { PieceOutline } from '../../core/runs/types.ts'
import { Choice } from '../fields/Choice.tsx'
import { NumberBox } from '../fields/NumberBox.tsx'

interface SpotFieldsProps {
  readonly name: string
  readonly spot: Spot
  readonly outline: PieceOutline
  /** The run it lies in, and all it may lie in. */
  readonly run: number
  readonly runs: readonly number[]
  readonly onPlace: (spot: Spot, what: string) => void
  readonly onPass: (to: number | 'new') => void
  /** Whether its part is printed before all others. */
  readonly isCoupon: boolean
  readonly onCoupon: (isCoupon: boolean) => void
}

/** Where the chosen piece lies, in numbers. */
export function SpotFields(props: SpotFieldsProps) {
  const { name, spot, outline, run, runs, onPlace, onPass, isCoupon, onCoupon } = props
  const [x, y] = middleOf(spot, outline)
  return (
    <div className="run-fields spot-fields" role="group" aria-label={`Place of ${name}`}>
      <NumberBox
        label="Middle from the left"
        limits={RUN_LIMITS.spotMm}
        value={x}
        unit="mm"
        onChange={(to) => {
          onPlace(moveTo(spot, outline, [to, y]), 'move a piece')
        }}
      />
      <NumberBox
        label="from the front"
        limits={RUN_LIMITS.spotMm}
        value={y}
        unit="mm"
        onChange={(to) => {
          onPlace(moveTo(spot, outline, [x, to]), 'move a piece')
        }}
      />
      <NumberBox
        label="Turned"
        limits={RUN_LIMITS.turnDeg}
        value={spot.turnDeg}
        step={15}
        unit="°"
        onChange={(to) => {
          onPlace(turnTo(spot, outline, to), 'turn a piece')
        }}
      />
      <Choice
        label="Printed in"
        value={String(run)}
        options={[
          ...runs.map((one) => ({ id: String(one), name: `run ${one + 1}` })),
          { id: 'new', name: 'a run of its own' },
        ]}
        onChange={(id) => {
          onPass(id === 'new' ? 'new' : Number(id))
        }}
      />
      <Checkbox className="tick tick-line" isSelected={isCoupon} onChange={onCoupon}>
        <span className="tick-box" />
        Printed first, as a coupon
      </Checkbox>
    </div>
  )
}
