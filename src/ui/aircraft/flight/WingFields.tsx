import { memo } from 'react'
import { Button } from 'react-aria-components'
import type { WingSetup } from '../../../core/model/aircraft.ts'
import { useAppState } from '../../appContext.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { usePutAircraft } from '../useAircraft.ts'

/** What a plane flies on. */
export const WingFields = memo(function WingFields() {
  const wing = useAppState((state) => state.frame.aircraft.wing)
  const putAircraft = usePutAircraft()
  if (wing === null) return null
  const put = (patch: Partial<WingSetup>) => {
    putAircraft({ wing: { ...wing, ...patch } }, 'change the wing')
  }
  return (
    <>
      <h3>Wing</h3>
      <NumberBox
        label="Wing area"
        value={wing.areaDm2}
        min={0.1}
        max={100000}
        step={0.1}
        digits={1}
        unit="dm²"
        onChange={(areaDm2) => {
          put({ areaDm2 })
        }}
      />
      <NumberBox
        label="Mean chord"
        value={wing.meanChordMm}
        min={1}
        max={10000}
        step={1}
        digits={1}
        unit="mm"
        onChange={(meanChordMm) => {
          put({ meanChordMm })
        }}
      />
      <p className="hint">Where it balances along the chord stands under Balance.</p>
      <div className="button-line">
        <Button
          className="quiet"
          onPress={() => {
            putAircraft({ wing: null }, 'leave the wing out')
          }}
        >
          It is not a plane
        </Button>
      </div>
    </>
  )
})
