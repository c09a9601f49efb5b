import { memo, useMemo } from 'react'
import { Button } from 'react-aria-components'
import type { FlightSetup, WingSetup } from '../../../core/model/aircraft.ts'
import { hoverFigures } from '../../../core/aircraft/flight/hover.ts'
import { wingLoading } from '../../../core/aircraft/flight/wing.ts'
import { massOdds } from '../../../core/frame/odds.ts'
import { Section } from '../Section.tsx'
import { useShownAircraft } from '../ShownAircraft.tsx'
import { useAircraft, usePutAircraft } from '../useAircraft.ts'
import { figureWords, spanWords, measureWords } from '../words.ts'
import { FlightFields } from './FlightFields.tsx'
import { HoverList } from './HoverList.tsx'
import { WingBlock } from './WingBlock.tsx'
import { WingFields } from './WingFields.tsx'

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
  const { flight, wing } = aircraft
  const auwG = view.ledger.basicMassG
  const hover = flight === null || wing !== null ? null : hoverFigures(flight, auwG)
  return (
    <Section
      title="Flight"
      summary={
        hover !== null
          ? `${spanWords(hover.hoverMin, 'min', 1)} hover · ${figureWords(hover.thrustToWeight, 2)} : 1`
          : wing !== null
            ? loadingWords(wing, auwG)
            : flight === null
              ? 'motors and pack not set'
              : 'nothing weighs anything yet'
      }
    >
      <FlightBody />
    </Section>
  )
}

const FlightBody = memo(function FlightBody() {
  const { aircraft, view } = useShownAircraft()
  const put = usePutAircraft()
  const { flight, wing } = aircraft
  const auwG = view.ledger.basicMassG
  const hover = flight === null || wing !== null ? null : hoverFigures(flight, auwG)
  const { rangeG } = useMemo(() => massOdds(view.doubt, view.ledger.basicMassG), [view])
  return (
    <>
      <div className="craft-side">
        <WingFields />
        {flight === null ? <StartFlight isPlane={wing !== null} /> : <FlightFields />}
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
            Left out, for want of figures: {view.missing.join(', ')}. The all-up weight is short of
            them.
          </p>
        ) : null}
        {flight !== null && hover !== null ? (
          <HoverList flight={flight} hover={hover} auwRangeG={rangeG} />
        ) : null}
        {wing !== null ? (
          <WingBlock wing={wing} flight={flight} auwG={auwG} auwRangeG={rangeG} />
        ) : null}
        {hover === null && wing === null ? (
          <p className="hint">
            {flight === null
              ? 'Nothing to reckon yet. The all-up weight stands under Mass.'
              : 'Nothing to lift yet: once a part or an item has a mass, hover and minutes follow.'}
          </p>
        ) : null}
      </div>
    </>
  )
})

function StartFlight({ isPlane }: { readonly isPlane: boolean }) {
  const put = usePutAircraft()
  return (
    <>
      <p className="hint">
        {isPlane
          ? 'Motor and pack, with span and cruise speed, tell cruise power and minutes.'
          : 'Motors, propellers and pack tell thrust-to-weight, hover power and minutes.'}
      </p>
      <div className="button-line">
        <Button
          className={isPlane ? 'quiet' : 'outlined'}
          onPress={() => {
            put(
              { flight: isPlane ? { ...FLIGHT_START, motors: 1 } : FLIGHT_START },
              'set motors and pack',
            )
          }}
        >
          Set motors and pack
        </Button>
      </div>
    </>
  )
}

function loadingWords(wing: WingSetup, auwG: number): string {
  const loading = wingLoading(wing, auwG)
  return loading === null
    ? 'wing not set'
    : `${measureWords(loading.areaLoadingGDm2, 'g/dm²', 1)} · stall ${spanWords(loading.stallMS, 'm/s', 1)}`
}
