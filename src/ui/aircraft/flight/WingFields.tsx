import { memo } from 'react'
import { Button } from 'react-aria-components'
import type { WingSetup } from '../../../core/model/aircraft.ts'
import { DRAG_ESTIMATE } from '../../../core/aircraft/flight/cruise.ts'
import { useAppState } from '../../appContext.ts'
import { WING_LIMITS } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { showNumber } from '../../show.ts'
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
      <h4>Wing</h4>
      <NumberBox
        label="Wing area"
        limits={WING_LIMITS.areaDm2}
        value={wing.areaDm2}
        step={0.1}
        digits={1}
        unit="dm²"
        onChange={(areaDm2) => {
          put({ areaDm2 })
        }}
      />
      <NumberBox
        label="Mean chord"
        help="mean chord"
        limits={WING_LIMITS.meanChordMm}
        value={wing.meanChordMm}
        step={1}
        digits={1}
        unit="mm"
        onChange={(meanChordMm) => {
          put({ meanChordMm })
        }}
      />
      <Typed of={wing} name="spanMm" label="Span" unit="mm" step={1} digits={1} />
      <Typed of={wing} name="cruiseMS" label="Cruise speed" unit="m/s" step={0.5} digits={1} />
      <Typed
        of={wing}
        name="dragCoefficient"
        label="Drag coefficient"
        step={0.001}
        digits={3}
        hint={
          'Of the whole plane without lift, on its wing area. ' +
          `Empty: ${showNumber(DRAG_ESTIMATE.low, 3)} to ${showNumber(DRAG_ESTIMATE.high, 3)} (common ` +
          'practice, no source).'
        }
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

type LeftOut = 'spanMm' | 'cruiseMS' | 'dragCoefficient'

interface TypedProps {
  readonly of: WingSetup
  readonly name: LeftOut
  readonly label: string
  readonly unit?: string
  readonly step: number
  readonly digits: number
  readonly hint?: string
}

/** A number of the wing that may be left empty. */
function Typed({ of: wing, name, ...box }: TypedProps) {
  const putAircraft = usePutAircraft()
  const { [name]: value, ...others } = wing
  return (
    <NumberBox
      {...box}
      limits={WING_LIMITS[name]}
      value={value ?? null}
      onChange={(typed) => {
        putAircraft({ wing: { ...wing, [name]: typed } }, 'change the wing')
      }}
      onEmpty={() => {
        putAircraft({ wing: others }, 'change the wing')
      }}
    />
  )
}
