import { Button } from 'react-aria-components'
import type { WingSetup } from '../../../core/aircraft.ts'
import { FLIGHT_CAUTIONS } from '../../../core/flight/cautions.ts'
import { wingLoading } from '../../../core/flight/wing.ts'
import { formatNumber } from '../../../core/figures/format.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { Facts } from '../Facts.tsx'
import { usePutAircraft } from '../useAircraft.ts'
import { spanWords, tenthG } from '../words.ts'

interface WingBlockProps {
  readonly wing: WingSetup
  readonly auwG: number
}

/** How heavily a plane sits on its wing. Where it balances stands under Balance. */
export function WingBlock({ wing, auwG }: WingBlockProps) {
  const putAircraft = usePutAircraft()
  const put = (patch: Partial<WingSetup>) => {
    putAircraft({ wing: { ...wing, ...patch } }, 'change the wing')
  }
  const loading = wingLoading(wing, auwG)
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
      {loading === null ? null : (
        <Facts
          of={[
            { words: 'All-up weight', figure: `${tenthG(auwG)} g` },
            {
              words: 'Wing loading',
              figure: `${formatNumber(loading.areaLoadingGDm2, undefined, 1)} g/dm²`,
              strong: true,
            },
            {
              words: 'Cube loading',
              figure: `${formatNumber(loading.cubeLoadingOzFt3, undefined, 1)} oz/ft³`,
            },
            {
              words: 'Stalls below',
              figure: `${formatNumber(loading.stallMS.mid, undefined, 1)} m/s`,
              small: spanWords(loading.stallMS, 'm/s', 1),
            },
          ]}
        />
      )}
      <p className="hint">
        Level flight, lift coefficient 0.9 to 1.3 at the stall (common practice, no source). Flight
        time of a plane is not reckoned here.
      </p>
      <p className="caution">{FLIGHT_CAUTIONS.firstFlight}</p>
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
}
