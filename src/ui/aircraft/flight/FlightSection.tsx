import { Button } from 'react-aria-components'
import type { FlightSetup, WingSetup } from '../../../core/aircraft.ts'
import { hoverFigures } from '../../../core/flight/hover.ts'
import { wingLoading } from '../../../core/flight/wing.ts'
import { formatNumber } from '../../../core/figures/format.ts'
import { Section } from '../Section.tsx'
import { useAircraft, usePutAircraft } from '../useAircraft.ts'
import { spanWords } from '../words.ts'
import { FlightFields } from './FlightFields.tsx'
import { HoverFacts } from './HoverFacts.tsx'
import { WingBlock } from './WingBlock.tsx'

/** Where typing begins; every one of these is the builder's to change. */
const FLIGHT_START: FlightSetup = {
  motors: 4,
  motorThrustG: 500,
  propDiameterMm: 127,
  packCells: 4,
  packMah: 1500,
  voltsPerCell: 3.7,
  usableShare: 0.8,
  avionicsW: 5,
  motorRadiusMm: 110,
}
const WING_START: WingSetup = {
  areaDm2: 15,
  meanChordMm: 150,
  leadingEdgeMm: 0,
  balanceMm: [37, 50],
}

/** Whether it flies, how long, and what a gram of frame costs in seconds. */
export function FlightSection() {
  const { aircraft, view } = useAircraft()
  const put = usePutAircraft()
  const { flight, wing } = aircraft
  const auwG = view.ledger.basicMassG
  const hover = flight === null || wing !== null ? null : hoverFigures(flight, auwG)
  return (
    <Section
      title="Flight"
      summary={
        hover !== null
          ? `${spanWords(hover.hoverMin, 'min', 1)} hover · ${formatNumber(hover.thrustToWeight)} : 1`
          : wing !== null
            ? loadingWords(wing, auwG)
            : 'motors and pack not set'
      }
    >
      {() => (
        <>
          <div className="craft-side">
            {flight === null ? (
              <>
                <p className="hint">
                  Motors, propellers and pack tell thrust-to-weight, hover power and minutes.
                </p>
                <div className="button-line">
                  <Button
                    className="outlined"
                    onPress={() => {
                      put({ flight: FLIGHT_START }, 'set motors and pack')
                    }}
                  >
                    Set motors and pack
                  </Button>
                </div>
              </>
            ) : (
              <FlightFields flight={flight} isPlane={wing !== null} />
            )}
            {wing === null ? (
              <div className="button-line">
                <Button
                  className="quiet"
                  onPress={() => {
                    put({ wing: WING_START }, 'make it a plane')
                  }}
                >
                  It is a plane: set its wing
                </Button>
              </div>
            ) : null}
          </div>
          <div className="craft-main">
            {view.missing.length > 0 ? (
              <p className="caution">
                Left out, for want of figures: {view.missing.join(', ')}. The all-up weight is short
                of them.
              </p>
            ) : null}
            {flight !== null && hover !== null ? (
              <HoverFacts flight={flight} hover={hover} />
            ) : null}
            {wing !== null ? <WingBlock wing={wing} auwG={auwG} /> : null}
            {flight === null && wing === null ? (
              <p className="hint">Nothing to reckon yet. The all-up weight stands under Mass.</p>
            ) : null}
          </div>
        </>
      )}
    </Section>
  )
}

function loadingWords(wing: WingSetup, auwG: number): string {
  const loading = wingLoading(wing, auwG)
  return loading === null
    ? 'wing not set'
    : `${formatNumber(loading.areaLoadingGDm2, undefined, 1)} g/dm² · stall ${spanWords(loading.stallMS, 'm/s', 1)}`
}
