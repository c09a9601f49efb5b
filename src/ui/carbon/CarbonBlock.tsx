import { useId } from 'react'
import { Button } from 'react-aria-components'
import { carbonTypicalIn, CURRENCY_CODES } from '../../core/data/prices.ts'
import type { CarbonFrame } from '../../core/model/frame.ts'
import { useActions, useAppState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { CARBON_LIMITS } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { InTurn } from '../inTurn/InTurn.tsx'
import { CarbonDifference } from './CarbonDifference.tsx'
import { formatMass } from '../../core/words/format.ts'

/** The same frame bought in carbon: typed in, or started from typical values. */
export function CarbonBlock() {
  const carbon = useAppState((state) => state.frame.carbon)
  const currency = useAppState((state) => state.frame.prices.currency)
  const { putCarbon } = useActions()
  const titleId = useId()
  const typical = carbonTypicalIn(CURRENCY_CODES.find((code) => code === currency) ?? 'EUR')
  const start: CarbonFrame = carbon ?? { massG: 0, price: 0 }
  return (
    <section className="carbon" aria-labelledby={titleId}>
      <div className="carbon-fields">
        <h3 id={titleId}>Against a carbon frame</h3>
        <p className="hint">
          Type what the carbon frame would weigh and cost, or start from a typical one.
        </p>
        <InTurn>
          <Choice
            label="Start from"
            value={
              typical.find(({ massG, price }) => massG === carbon?.massG && price === carbon.price)
                ?.id ?? null
            }
            placeholder={carbon === null ? 'choose a typical frame' : 'typed in'}
            options={typical.map(({ id, name, massG }) => ({
              id,
              name,
              detail: formatMass(massG),
            }))}
            hint="Typical values: common practice, no source."
            onChange={(id) => {
              const found = typical.find((each) => each.id === id)
              if (found !== undefined) putCarbon({ massG: found.massG, price: found.price })
            }}
          />
          <NumberBox
            label="Carbon mass"
            limits={CARBON_LIMITS.massG}
            value={start.massG}
            step={0.1}
            digits={1}
            unit="g"
            onChange={(massG) => {
              putCarbon({ ...start, massG })
            }}
          />
          <NumberBox
            label="Carbon price"
            limits={CARBON_LIMITS.price}
            value={start.price}
            step={0.01}
            unit={currency}
            onChange={(price) => {
              putCarbon({ ...start, price })
            }}
          />
        </InTurn>
        {carbon === null ? null : (
          <div className="button-line">
            <Button
              className="quiet"
              onPress={() => {
                putCarbon(null)
              }}
            >
              Leave carbon out
            </Button>
          </div>
        )}
        {carbon === null ? null : (
          <p className="caution">
            Carbon dust is sharp, harmful to breathe, and conducts. Cut and drill it wet, with a
            fitted mask and gloves, away from electronics, and follow your local rules.
          </p>
        )}
      </div>
      {carbon === null ? null : <CarbonDifference carbon={carbon} />}
    </section>
  )
}
