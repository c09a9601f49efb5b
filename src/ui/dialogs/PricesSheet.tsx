import { useMemo } from 'react'
import {
  allCurrencies,
  CURRENCY_CODES,
  isUsualElectricity,
  isUsualFailureRate,
  startingPrices,
} from '../../core/data/prices.ts'
import { failingShare } from '../../core/figures/cost.ts'
import type { Prices } from '../../core/model/figures.ts'
import { formatPercent } from '../../core/words/format.ts'
import { useActions, useAppState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { PRICE_LIMITS } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { Sheet } from '../fields/Sheet.tsx'
import { MineLine } from '../workshop/MineLine.tsx'
import { CostDoubt } from './CostDoubt.tsx'

interface PricesSheetProps {
  readonly isOpen: boolean
  readonly onClose: () => void
}

/** Everything in the cost besides filament, whose price stands with its material. */
export function PricesSheet({ isOpen, onClose }: PricesSheetProps) {
  const prices = useAppState((state) => state.frame.prices)
  const { putPrices } = useActions()
  const put = (patch: Partial<Prices>) => {
    putPrices({ ...prices, ...patch })
  }
  const currencies = useMemo(() => {
    const names = new Intl.DisplayNames(undefined, { type: 'currency' })
    const here = allCurrencies()
    const all = here.includes(prices.currency) ? here : [prices.currency, ...here]
    return all.map((id) => ({ id, name: id, detail: names.of(id) ?? '' }))
  }, [prices.currency])
  const isUsual = CURRENCY_CODES.some((code) => code === prices.currency)
  return (
    <Sheet title="Prices" isOpen={isOpen} onClose={onClose}>
      <MineLine kind="prices" />
      <p className="hint">The price of filament stands with each material.</p>
      <Choice
        label="Currency"
        value={prices.currency}
        options={currencies}
        hint={
          'Changing it starts from usual household prices there. It converts nothing: ' +
          'what you typed keeps its number, on bought items and carbon too.'
        }
        onChange={(code) => {
          putPrices(startingPrices(code))
        }}
      />
      {isUsual ? null : (
        <p className="caution">
          No prices are usual here in {prices.currency}: what is not typed counts as 0. Type
          electricity, wear, and under Materials what a kilogram costs.
        </p>
      )}
      <NumberBox
        label="Electricity"
        limits={PRICE_LIMITS.electricityPerKwh}
        value={prices.electricityPerKwh}
        step={0.001}
        digits={3}
        unit={`${prices.currency}/kWh`}
        {...(isUsualElectricity(prices)
          ? { hint: 'Usual there, ± 33 %. Type yours and it counts as given.' }
          : {})}
        onChange={(electricityPerKwh) => {
          put({ electricityPerKwh })
        }}
      />
      <NumberBox
        label="Wear"
        limits={PRICE_LIMITS.wearPerHour}
        value={prices.wearPerHour}
        step={0.01}
        unit={`${prices.currency}/h`}
        hint="Nozzles, belts, build surface, for each hour of printing."
        onChange={(wearPerHour) => {
          put({ wearPerHour })
        }}
      />
      <NumberBox
        label="Filament wasted"
        limits={PRICE_LIMITS.wastePct}
        value={prices.wastePct}
        step={0.5}
        unit="%"
        hint="Purge, failed starts and ends of spools."
        onChange={(wastePct) => {
          put({ wastePct })
        }}
      />
      <NumberBox
        label="Prints that fail each hour"
        limits={PRICE_LIMITS.failurePctPerHour}
        value={prices.failurePctPerHour}
        step={0.5}
        unit="%"
        hint={
          `Of those still running. A print of two hours then fails ${failWords(prices, 2)} of the ` +
          `time, one of ten ${failWords(prices, 10)}; each good part pays for its share: ` +
          'cost ÷ (1 − share). ' +
          (isUsualFailureRate(prices)
            ? 'Nobody counted this one: half to twice as often.'
            : 'Typed, it counts as one that was counted, two fifths more or less often.')
        }
        onChange={(failurePctPerHour) => {
          put({ failurePctPerHour })
        }}
      />
      <CostDoubt currency={prices.currency} />
    </Sheet>
  )
}

function failWords(prices: Prices, hours: number): string {
  return formatPercent(failingShare(hours, prices))
}
