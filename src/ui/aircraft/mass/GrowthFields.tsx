import type { GrowthAllowance } from '../../../core/model/aircraft.ts'
import { useAppState } from '../../appContext.ts'
import { GROWTH_LIMITS } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { usePutAircraft } from '../useAircraft.ts'

const FIELDS: readonly { readonly key: keyof GrowthAllowance; readonly label: string }[] = [
  { key: 'estimatedPct', label: 'On what is estimated' },
  { key: 'calculatedPct', label: 'On what is calculated' },
  { key: 'weighedPct', label: 'On what is weighed' },
]

/** Mass added for what is not known yet. */
export function GrowthFields() {
  const growth = useAppState((state) => state.frame.aircraft.growth)
  const put = usePutAircraft()
  return (
    <>
      <h4>Growth allowance</h4>
      <p className="hint">
        Aircraft gain mass until they fly: glue, wire, second thoughts. Starting values are common
        practice, no source; type your own.
      </p>
      {FIELDS.map(({ key, label }) => (
        <NumberBox
          key={key}
          label={label}
          limits={GROWTH_LIMITS}
          value={growth[key]}
          step={0.1}
          digits={1}
          unit="%"
          onChange={(percent) => {
            put({ growth: { ...growth, [key]: percent } }, 'change the growth allowance')
          }}
        />
      ))}
    </>
  )
}
