import { Button } from 'react-aria-components'
import type { AircraftView } from '../../../state/aircraftView.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { Facts } from '../Facts.tsx'
import { Section } from '../Section.tsx'
import { useAircraft, usePutAircraft } from '../useAircraft.ts'
import { tenthG } from '../words.ts'
import { GroupBars } from './GroupBars.tsx'
import { GrowthFields } from './GrowthFields.tsx'
import { MassLines } from './MassLines.tsx'
import { OddsBlock } from './OddsBlock.tsx'
import { WeighIns } from './WeighIns.tsx'

/** What the aircraft weighs all up, how sure that is, and what it stays below. */
export function MassSection() {
  const { aircraft, view } = useAircraft()
  const put = usePutAircraft()
  const { ledger } = view
  return (
    <Section title="Mass" summary={summaryWords(view)}>
      {() => (
        <>
          <div className="craft-side">
            <h3>Limit</h3>
            {aircraft.limitG === null ? (
              <div className="button-line">
                <Button
                  className="outlined"
                  onPress={() => {
                    put(
                      { limitG: Math.max(1, Math.ceil(ledger.predictedMassG / 10) * 10) },
                      'set a mass limit',
                    )
                  }}
                >
                  Set a mass limit
                </Button>
              </div>
            ) : (
              <>
                <NumberBox
                  label="All-up at most"
                  value={aircraft.limitG}
                  min={0.1}
                  max={1000000}
                  step={0.1}
                  digits={1}
                  unit="g"
                  onChange={(limitG) => {
                    put({ limitG }, 'change the mass limit')
                  }}
                />
                <div className="button-line">
                  <Button
                    className="quiet"
                    onPress={() => {
                      put({ limitG: null }, 'leave the mass limit out')
                    }}
                  >
                    No limit
                  </Button>
                </div>
              </>
            )}
            <GrowthFields growth={aircraft.growth} />
          </div>
          <div className="craft-main">
            {view.missing.length > 0 ? (
              <p className="caution">
                Left out, for want of figures: {view.missing.join(', ')}. Every sum here is short of
                them.
              </p>
            ) : null}
            <Facts
              of={[
                {
                  words: 'Basic mass, all lines as they stand',
                  figure: `${tenthG(ledger.basicMassG)} g`,
                },
                {
                  words: 'Growth for what is not known yet',
                  figure: `+${tenthG(ledger.growthG)} g`,
                },
                {
                  words: 'Predicted mass',
                  figure: `${tenthG(ledger.predictedMassG)} g`,
                  strong: true,
                },
                ...(ledger.limitG === null || ledger.marginG === null
                  ? []
                  : [
                      { words: 'Limit', figure: `${tenthG(ledger.limitG)} g` },
                      {
                        words: ledger.marginG >= 0 ? 'Margin left' : 'Over the limit',
                        figure: (
                          <span className={ledger.marginG >= 0 ? undefined : 'wrong-text'}>
                            {tenthG(Math.abs(ledger.marginG))} g
                          </span>
                        ),
                        strong: true,
                      },
                    ]),
              ]}
            />
            <GroupBars ledger={ledger} />
            <OddsBlock view={view} limitG={aircraft.limitG} />
          </div>
          <div className="craft-full">
            <WeighIns view={view} weighedG={aircraft.weighedG} />
            <MassLines view={view} lines={aircraft.massLines} />
          </div>
        </>
      )}
    </Section>
  )
}

function summaryWords({ ledger, settled }: AircraftView): string {
  const sum = `${settled ? '' : '~'}${tenthG(ledger.basicMassG)} g all-up`
  const { marginG } = ledger
  if (marginG === null) return sum
  return `${sum} · ${tenthG(Math.abs(marginG))} g ${marginG >= 0 ? 'margin' : 'over the limit'} after growth`
}
