import { FIND_LIMITS, MASS_LIMITS, inPercent } from '../../../core/data/limits.ts'
import { useAppState } from '../../appContext.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import type { Asked } from './asked.ts'

interface AskedProps {
  readonly asked: Asked
  readonly onChange: (asked: Asked) => void
}

/** The limits a search is to keep to; an empty one is none. */
export function FindFields({ asked, onChange }: AskedProps) {
  const currency = useAppState((state) => state.frame.prices.currency)
  const put = (patch: Partial<Asked>) => {
    onChange({ ...asked, ...patch })
  }
  return (
    <div className="find-fields" role="group" aria-label="What is asked">
      <NumberBox
        label="Printed, at most"
        limits={MASS_LIMITS.limitG}
        value={asked.printedG}
        unit="g"
        digits={1}
        onChange={(printedG) => put({ printedG })}
        onEmpty={() => put({ printedG: null })}
      />
      <NumberBox
        label="Lighter by, at least"
        limits={FIND_LIMITS.lessG}
        value={asked.lessG}
        unit="g"
        digits={1}
        onChange={(lessG) => put({ lessG })}
        onEmpty={() => put({ lessG: null })}
      />
      <NumberBox
        label="Hours, at most"
        limits={FIND_LIMITS.hours}
        value={asked.hours}
        unit="h"
        digits={2}
        onChange={(hours) => put({ hours })}
        onEmpty={() => put({ hours: null })}
      />
      <NumberBox
        label="Cost, at most"
        limits={FIND_LIMITS.cost}
        value={asked.cost}
        unit={currency}
        digits={2}
        onChange={(cost) => put({ cost })}
        onEmpty={() => put({ cost: null })}
      />
      <NumberBox
        label="Stiffness kept, at least"
        limits={inPercent(FIND_LIMITS.stiffness)}
        value={asked.stiffness === null ? null : 100 * asked.stiffness}
        unit="%"
        digits={0}
        step={5}
        hint="Of what each part has now."
        onChange={(percent) => put({ stiffness: percent / 100 })}
        onEmpty={() => put({ stiffness: null })}
      />
    </div>
  )
}
