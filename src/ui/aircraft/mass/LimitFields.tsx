import { Button } from 'react-aria-components'
import { aircraftView } from '../../../state/store/aircraftView.ts'
import { useAppState, useReadState } from '../../appContext.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { usePutAircraft } from '../useAircraft.ts'

/** The mass the builder wants to stay below. */
export function LimitFields() {
  const limitG = useAppState((state) => state.frame.aircraft.limitG)
  const put = usePutAircraft()
  const read = useReadState()
  return (
    <>
      <h3>Limit</h3>
      {limitG === null ? (
        <div className="button-line">
          <Button
            className="outlined"
            onPress={() => {
              const { predictedMassG } = aircraftView(read()).ledger
              put({ limitG: Math.max(1, Math.ceil(predictedMassG / 10) * 10) }, 'set a mass limit')
            }}
          >
            Set a mass limit
          </Button>
        </div>
      ) : (
        <>
          <NumberBox
            label="All-up at most"
            value={limitG}
            min={0.1}
            max={1000000}
            step={0.1}
            digits={1}
            unit="g"
            onChange={(next) => {
              put({ limitG: next }, 'change the mass limit')
            }}
          />
          <div className="button-line">
            <Button
              className="quiet"
              onPress={() => {
                put({ limitG: null }, 'leave the mass limit out')
              }}
            >
              No limit
            </Button>
          </div>
        </>
      )}
    </>
  )
}
