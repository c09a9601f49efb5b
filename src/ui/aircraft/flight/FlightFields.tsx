import { memo, useState } from 'react'
import { Button } from 'react-aria-components'
import type { Blades, FlightSetup } from '../../../core/model/aircraft.ts'
import { AIR_DENSITY, GRAVITY } from '../../../core/aircraft/flight/air.ts'
import { BLADES_DEFAULT } from '../../../core/aircraft/flight/blades.ts'
import { FLIGHT_CAUTIONS } from '../../../core/aircraft/flight/cautions.ts'
import { propThrustN } from '../../../core/aircraft/flight/prop.ts'
import { useAppState } from '../../appContext.ts'
import { Choice } from '../../fields/Choice.tsx'
import { FLIGHT_LIMITS, PROP_LIMITS, inPercent } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { FoldOut } from '../FoldOut.tsx'
import { usePutAircraft } from '../useAircraft.ts'
import { FlownFields } from './FlownFields.tsx'
import { measureWords } from '../words.ts'

/** Motors, propellers, pack and what else draws power. */
export const FlightFields = memo(function FlightFields() {
  const flight = useAppState((state) => state.frame.aircraft.flight)
  const isPlane = useAppState((state) => state.frame.aircraft.wing !== null)
  const putAircraft = usePutAircraft()
  if (flight === null) return null
  const put = (patch: Partial<FlightSetup>) => {
    putAircraft({ flight: { ...flight, ...patch } }, 'change motors and pack')
  }
  return (
    <>
      <h4>Motors and propellers</h4>
      <NumberBox
        label="Motors"
        limits={FLIGHT_LIMITS.motors}
        value={flight.motors}
        step={1}
        onChange={(motors) => {
          put({ motors })
        }}
      />
      <NumberBox
        label="Full thrust of one"
        limits={FLIGHT_LIMITS.motorThrustG}
        value={flight.motorThrustG}
        step={1}
        digits={1}
        unit="g"
        onChange={(motorThrustG) => {
          put({ motorThrustG })
        }}
      />
      <NumberBox
        label="Propeller diameter"
        limits={FLIGHT_LIMITS.propDiameterMm}
        value={flight.propDiameterMm}
        step={0.1}
        digits={1}
        unit="mm"
        onChange={(propDiameterMm) => {
          put({ propDiameterMm })
        }}
      />
      <Choice
        label="Blades of one"
        value={BLADES[flight.blades ?? BLADES_DEFAULT].id}
        options={Object.values(BLADES)}
        onChange={(id) => {
          put({ blades: Number(id) as Blades })
        }}
      />
      {isPlane ? null : (
        <Choice
          label="They stand"
          value={flight.coaxial === true ? 'pairs' : 'apart'}
          options={STANDS}
          onChange={(id) => {
            put({ coaxial: id === 'pairs' })
          }}
        />
      )}
      {isPlane ? null : (
        <NumberBox
          label="Motor to middle"
          limits={FLIGHT_LIMITS.motorRadiusMm}
          value={flight.motorRadiusMm}
          step={1}
          digits={1}
          unit="mm"
          onChange={(motorRadiusMm) => {
            put({ motorRadiusMm })
          }}
        />
      )}
      <ThrustFromProp
        flight={flight}
        onThrust={(motorThrustG) => {
          put({ motorThrustG })
        }}
      />
      <p className="caution">{FLIGHT_CAUTIONS.props}</p>
      <h4>Pack</h4>
      <NumberBox
        label="Cells in series"
        limits={FLIGHT_LIMITS.packCells}
        value={flight.packCells}
        step={1}
        onChange={(packCells) => {
          put({ packCells })
        }}
      />
      <NumberBox
        label="Capacity"
        limits={FLIGHT_LIMITS.packMah}
        value={flight.packMah}
        step={1}
        digits={1}
        unit="mAh"
        onChange={(packMah) => {
          put({ packMah })
        }}
      />
      <NumberBox
        label="Nominal voltage of a cell"
        limits={FLIGHT_LIMITS.voltsPerCell}
        value={flight.voltsPerCell}
        step={0.01}
        unit="V"
        onChange={(voltsPerCell) => {
          put({ voltsPerCell })
        }}
      />
      <NumberBox
        label="Share flown before landing"
        limits={inPercent(FLIGHT_LIMITS.usableShare)}
        value={flight.usableShare * 100}
        step={1}
        digits={1}
        unit="%"
        onChange={(percent) => {
          put({ usableShare: percent / 100 })
        }}
      />
      <NumberBox
        label="Electronics draw"
        limits={FLIGHT_LIMITS.avionicsW}
        value={flight.avionicsW}
        step={0.1}
        digits={1}
        unit="W"
        hint="Controller, video, camera, lights."
        onChange={(avionicsW) => {
          put({ avionicsW })
        }}
      />
      <p className="caution">{FLIGHT_CAUTIONS.pack}</p>
      {isPlane ? null : <FlownFields flight={flight} />}
      <div className="button-line">
        <Button
          className="quiet"
          onPress={() => {
            putAircraft({ flight: null }, 'leave motors and pack out')
          }}
        >
          Leave motors and pack out
        </Button>
      </div>
    </>
  )
})

const BLADES = {
  2: { id: '2', name: 'two' },
  3: { id: '3', name: 'three' },
  4: { id: '4', name: 'four' },
} as const satisfies Readonly<Record<Blades, unknown>>

const STANDS = [
  { id: 'apart', name: 'Side by side' },
  { id: 'pairs', name: 'In pairs, one above the other' },
] as const

interface ThrustFromPropProps {
  readonly flight: FlightSetup
  readonly onThrust: (thrustG: number) => void
}

/** For builders who have a propeller table instead of a thrust stand. */
function ThrustFromProp({ flight, onThrust }: ThrustFromPropProps) {
  const [coefficient, setCoefficient] = useState(0.1)
  const [rpm, setRpm] = useState(15_000)
  const thrustN = propThrustN(coefficient, AIR_DENSITY, rpm, flight.propDiameterMm / 1000)
  const thrustG = (1000 * thrustN) / GRAVITY
  return (
    <FoldOut opens="Thrust from a propeller table" about="Thrust from a propeller table">
      {() => (
        <>
          <NumberBox
            label="Static thrust coefficient"
            limits={PROP_LIMITS.thrustCoefficient}
            value={coefficient}
            step={0.0001}
            digits={4}
            onChange={setCoefficient}
          />
          <NumberBox
            label="At full throttle"
            limits={PROP_LIMITS.rpm}
            value={rpm}
            step={10}
            digits={1}
            unit="rpm"
            onChange={setRpm}
          />
          <div className="button-line">
            <span className="figures">{measureWords(thrustG, 'g', 0)}</span>
            <Button
              className="outlined"
              onPress={() => {
                onThrust(Math.round(thrustG))
              }}
            >
              Take it
            </Button>
          </div>
        </>
      )}
    </FoldOut>
  )
}
