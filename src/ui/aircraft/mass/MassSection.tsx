import { memo } from 'react'
import type { AircraftView } from '../../../state/store/aircraftView.ts'
import { Section } from '../Section.tsx'
import { useShownAircraft } from '../ShownAircraft.tsx'
import { leftOutNames, standingWords } from '../../../core/frame/sayings.ts'
import { trueMinus } from '../../show.ts'
import { useAircraft } from '../useAircraft.ts'
import { tenthMass } from '../words.ts'
import { GroupBars } from './GroupBars.tsx'
import { GrowthFields } from './GrowthFields.tsx'
import { LimitFields } from './LimitFields.tsx'
import { MassList } from './MassList.tsx'
import { MassLines } from './MassLines.tsx'
import { OddsBlock } from './OddsBlock.tsx'

/** What the aircraft weighs all up, how sure that is, and what it stays below. */
export function MassSection() {
  const { view } = useAircraft()
  return (
    <Section title="Mass" summary={summaryWords(view)}>
      <MassBody />
    </Section>
  )
}

const MassBody = memo(function MassBody() {
  const { aircraft, view } = useShownAircraft()
  // Weighed parts are in every mass.
  const leftOut = leftOutNames(view.sum.leftOut.filter(({ weighed }) => !weighed))
  return (
    <>
      <div className="craft-side">
        <LimitFields />
        <GrowthFields />
      </div>
      <div className="craft-main">
        {leftOut === null ? null : <p className="caution">Every sum here is {leftOut}.</p>}
        <p className="mass-standing">{trueMinus(standingWords(view.sum))}</p>
        <MassList view={view} />
        <GroupBars ledger={view.ledger} />
        <OddsBlock view={view} limitG={aircraft.limitG} />
      </div>
      <div className="craft-full">
        <MassLines view={view} />
      </div>
    </>
  )
})

function summaryWords({ ledger, settled }: AircraftView): string {
  const sum = `${settled ? '' : '~'}${tenthMass(ledger.basicMassG)} all-up`
  const { marginG, limitG, basicMassG } = ledger
  if (marginG === null || limitG === null) return sum
  const apart = (leftG: number) => `${tenthMass(Math.abs(leftG))} ${leftG < 0 ? 'over' : 'under'}`
  return `${sum} · ${apart(limitG - basicMassG)} the limit as it stands, ${apart(marginG)} with growth`
}
