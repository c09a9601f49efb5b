import { memo } from 'react'
import type { TwinSetup } from '../../../core/model/aircraft.ts'
import { PLATES, type Plate } from '../../../core/data/plates.ts'
import { useAppState } from '../../appContext.ts'
import { Choice } from '../../fields/Choice.tsx'
import { TWIN_LIMITS } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { SourceTip } from '../../dialogs/SourceTip.tsx'
import { showNumber } from '../../show.ts'
import { usePutAircraft } from '../useAircraft.ts'

const ALL: readonly Plate[] = Object.values(PLATES)

/** Which plate, and what it costs to have it cut. */
export const PlateFields = memo(function PlateFields() {
  const twin = useAppState((state) => state.frame.aircraft.twin)
  const currency = useAppState((state) => state.frame.prices.currency)
  const putAircraft = usePutAircraft()
  const plate = PLATES[twin.plate]
  const onChange = (patch: Partial<TwinSetup>) => {
    putAircraft({ twin: { ...twin, ...patch } }, 'change the carbon twin')
  }
  return (
    <>
      <h4>Plate</h4>
      <Choice
        label="Cut from"
        value={twin.plate}
        options={ALL.map(({ id, name }) => ({ id, name }))}
        onChange={(id) => {
          onChange({ plate: id })
        }}
      />
      <p className="hint">
        {showNumber(plate.youngsGPa.value, 1)} GPa
        <SourceTip of={plate.youngsGPa} what={`the stiffness of ${plate.name}`} />
        and {showNumber(plate.densityGCm3.value, 3)} g/cm³
        <SourceTip of={plate.densityGCm3} what={`the density of ${plate.name}`} />
      </p>
      <NumberBox
        label="Plate price"
        limits={TWIN_LIMITS.platePricePerDm2}
        value={twin.platePricePerDm2}
        step={0.01}
        unit={`${currency}/dm²`}
        onChange={(platePricePerDm2) => {
          onChange({ platePricePerDm2 })
        }}
      />
      <NumberBox
        label="Cutting price"
        limits={TWIN_LIMITS.cutPricePerM}
        value={twin.cutPricePerM}
        step={0.01}
        unit={`${currency}/m`}
        onChange={(cutPricePerM) => {
          onChange({ cutPricePerM })
        }}
      />
      <NumberBox
        label="Delivery"
        limits={TWIN_LIMITS.deliveryDays}
        value={twin.deliveryDays}
        step={1}
        digits={1}
        unit="days"
        hint="Prices and days are starting values, no source: type your seller’s."
        onChange={(deliveryDays) => {
          onChange({ deliveryDays })
        }}
      />
      <p className="caution">{plate.caution} Follow your local rules.</p>
    </>
  )
})
