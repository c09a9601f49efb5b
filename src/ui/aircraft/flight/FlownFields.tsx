import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { FlightSetup } from '../../../core/model/aircraft.ts'
import { packEnergyWh } from '../../../core/aircraft/flight/pack.ts'
import { FLIGHT_LIMITS, inPercent } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { useShownAircraft } from '../ShownAircraft.tsx'
import { usePutAircraft } from '../useAircraft.ts'
import { figureWords, tenthMass } from '../words.ts'

interface Typed {
  readonly minutes: number | null
  /** Of the pack. */
  readonly percent: number | null
}

const NOTHING: Typed = { minutes: null, percent: null }

/** A hover that was timed teaches this aircraft's efficiency. */
export function FlownFields({ flight }: { readonly flight: FlightSetup }) {
  const { flown, ...others } = flight
  const { view } = useShownAircraft()
  const putAircraft = usePutAircraft()
  const packWh = packEnergyWh(flight)
  // Half of it typed is kept here until the other half is; then the frame holds both.
  const [draft, setDraft] = useState<Typed>(NOTHING)
  const typed: Typed =
    flown === undefined
      ? draft
      : { minutes: flown.minutes, percent: packWh > 0 ? (100 * flown.usedWh) / packWh : null }
  const auwG = flown?.auwG ?? view.ledger.basicMassG
  const take = (next: Typed) => {
    const { minutes, percent } = next
    if (minutes === null || percent === null || !(auwG > 0)) {
      setDraft(next)
      return
    }
    const { motors, propDiameterMm, coaxial = false } = flown ?? flight
    const usedWh = (packWh * percent) / 100
    setDraft(NOTHING)
    putAircraft(
      { flight: { ...others, flown: { minutes, usedWh, auwG, motors, propDiameterMm, coaxial } } },
      'note a timed hover',
    )
  }
  return (
    <>
      <h4>A timed hover</h4>
      <NumberBox
        label="Hovered for"
        limits={FLIGHT_LIMITS.flownMin}
        value={typed.minutes}
        step={0.1}
        digits={1}
        unit="min"
        onChange={(minutes) => {
          take({ ...typed, minutes })
        }}
        {...(flown === undefined
          ? {
              onEmpty: () => {
                take({ ...typed, minutes: null })
              },
            }
          : {})}
      />
      <NumberBox
        label="Pack used"
        limits={inPercent(FLIGHT_LIMITS.usedShare)}
        value={typed.percent}
        step={1}
        digits={1}
        unit="%"
        hint="What the charger put back, of the capacity. One long hover, low and in calm air."
        onChange={(percent) => {
          take({ ...typed, percent })
        }}
        {...(flown === undefined
          ? {
              onEmpty: () => {
                take({ ...typed, percent: null })
              },
            }
          : {})}
      />
      {flown === undefined ? null : (
        <>
          <p className="hint">
            Noted: {figureWords(flown.usedWh, 1)} Wh in {figureWords(flown.minutes, 1)} min at{' '}
            {tenthMass(flown.auwG)}. It stays as it is when the frame changes.
          </p>
          <div className="button-line">
            <Button
              className="quiet"
              onPress={() => {
                putAircraft({ flight: others }, 'drop the timed hover')
              }}
            >
              Drop the timed hover
            </Button>
          </div>
        </>
      )}
    </>
  )
}
