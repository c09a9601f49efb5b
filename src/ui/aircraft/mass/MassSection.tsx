import { memo } from 'react'
import type { AircraftView } from '../../../state/store/aircraftView.ts'
import { Section } from '../Section.tsx'
import { useShownAircraft } from '../ShownAircraft.tsx'
import { useAircraft } from '../useAircraft.ts'
import { tenthG } from '../words.ts'
import { GroupBars } from './GroupBars.tsx'
import { GrowthFields } from './GrowthFields.tsx'
import { LimitFields } from './LimitFields.tsx'
import { MassFacts } from './MassFacts.tsx'
import { MassLines } from './MassLines.tsx'
import { OddsBlock } from './OddsBlock.tsx'
import { WeighIns } from './WeighIns.tsx'

/** What the aircraft weighs all up, how sure that is, and what it stays below. */
export function MassSection() {
  const { view } = useAircraft()
  return (
    <Section title="Mass" summary={summaryWords(view)}>
      {() => <MassBody />}
    </Section>
  )
}

const MassBody = memo(function MassBody() {
  const { aircraft, view } = useShownAircraft()
  return (
    <>
      <div className="craft-side">
        <LimitFields />
        <GrowthFields />
      </div>
      <div className="craft-main">
        {view.missing.length > 0 ? (
          <p className="caution">
            Left out, for want of figures: {view.missing.join(', ')}. Every sum here is short of
            them.
          </p>
        ) : null}
        <MassFacts view={view} />
        <GroupBars ledger={view.ledger} />
        <OddsBlock view={view} limitG={aircraft.limitG} />
      </div>
      <div className="craft-full">
        <WeighIns sum={view.sum} />
        <MassLines view={view} />
      </div>
    </>
  )
})

function summaryWords({ ledger, settled }: AircraftView): string {
  const sum = `${settled ? '' : '~'}${tenthG(ledger.basicMassG)} g all-up`
  const { marginG } = ledger
  if (marginG === null) return sum
  return `${sum} · ${tenthG(Math.abs(marginG))} g ${marginG >= 0 ? 'margin' : 'over the limit'} after growth`
}
