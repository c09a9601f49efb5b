import '../styles/aircraft.css'
import '../styles/aircraftItems.css'
import '../styles/aircraftMass.css'
import '../styles/aircraftTwin.css'
import '../styles/aircraftBalance.css'
import { InTurn } from '../inTurn/InTurn.tsx'
import { CrossingWatch } from './CrossingWatch.tsx'
import { DrawingSection } from './drawing/DrawingSection.tsx'
import { FlightSection } from './flight/FlightSection.tsx'
import { ItemsSection } from './items/ItemsSection.tsx'
import { MassSection } from './mass/MassSection.tsx'
import { BalanceSection } from './balance/BalanceSection.tsx'
import { ShownAircraft } from './ShownAircraft.tsx'
import { TwinSection } from './twin/TwinSection.tsx'

/** The aircraft beyond its printed parts: lines that open in place, in the order a builder asks. */
export function AircraftSections() {
  return (
    <div className="aircraft">
      <ShownAircraft>
        <InTurn>
          <CrossingWatch />
          <DrawingSection />
          <ItemsSection />
          <MassSection />
          <BalanceSection />
          <TwinSection />
          <FlightSection />
        </InTurn>
      </ShownAircraft>
    </div>
  )
}
