import { Button } from 'react-aria-components'
import { aircraftView } from '../../../state/store/aircraftView.ts'
import { useAppState, useReadState } from '../../appContext.ts'
import { MASS_LIMITS } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { usePutAircraft } from '../useAircraft.ts'

type LimitKey = 'limitG' | 'printedLimitG'

interface LimitWords {
  /** In the list of undone steps. */
  readonly name: string
  readonly label: string
  readonly set: string
  readonly none: string
}

const WORDS: Readonly<Record<LimitKey, LimitWords>> = {
  limitG: {
    name: 'mass limit',
    label: 'All-up at most',
    set: 'Set a mass limit',
    none: 'No limit',
  },
  printedLimitG: {
    name: 'limit for printed parts',
    label: 'Printed parts at most',
    set: 'Limit the printed parts',
    none: 'No limit for printed parts',
  },
}

/** The masses the builder wants to stay below: all up, and for the printed frame alone. */
export function LimitFields() {
  return (
    <>
      <h4>Limits</h4>
      <LimitField of="limitG" />
      <LimitField of="printedLimitG" />
    </>
  )
}

function LimitField({ of }: { readonly of: LimitKey }) {
  const limitG = useAppState((state) => state.frame.aircraft[of])
  const { name, label, set, none } = WORDS[of]
  const put = usePutAircraft()
  const read = useReadState()
  return (
    <>
      {limitG === null ? (
        <div className="button-line">
          <Button
            className="outlined"
            onPress={() => {
              const { ledger, sum } = aircraftView(read())
              const massG = of === 'limitG' ? ledger.predictedMassG : sum.printed.massG.mid
              put({ [of]: Math.max(1, Math.ceil(massG / 10) * 10) }, `set a ${name}`)
            }}
          >
            {set}
          </Button>
        </div>
      ) : (
        <>
          <NumberBox
            label={label}
            limits={MASS_LIMITS.limitG}
            value={limitG}
            step={0.1}
            digits={1}
            unit="g"
            onChange={(next) => {
              put({ [of]: next }, `change the ${name}`)
            }}
          />
          <div className="button-line">
            <Button
              className="quiet"
              onPress={() => {
                put({ [of]: null }, `leave the ${name} out`)
              }}
            >
              {none}
            </Button>
          </div>
        </>
      )}
    </>
  )
}
