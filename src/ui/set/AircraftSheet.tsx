import '../styles/aircraft.css'
import '../styles/aircraftItems.css'
import '../styles/aircraftMass.css'
import '../styles/aircraftBalance.css'
import { BalanceSection } from '../aircraft/balance/BalanceSection.tsx'
import { FlightSection } from '../aircraft/flight/FlightSection.tsx'
import { ItemsSection } from '../aircraft/items/ItemsSection.tsx'
import { MassSection } from '../aircraft/mass/MassSection.tsx'
import { ShownAircraft } from '../aircraft/ShownAircraft.tsx'
import { InTurn } from '../inTurn/InTurn.tsx'
import { DrawnSheet } from './DrawnSheet.tsx'
import { TitleBlock } from './TitleBlock.tsx'

/**
 * All that flies: its mass against the limit, what is bought, where it balances, how long it stays
 * up.
 */
export function AircraftSheet() {
  return (
    <DrawnSheet
      className="aircraft-sheet"
      title="Aircraft, all up"
      block={<TitleBlock sheet="aircraft" />}
    >
      <div className="aircraft">
        <ShownAircraft>
          <InTurn>
            <MassSection />
            <BalanceSection />
            <FlightSection />
            <ItemsSection />
          </InTurn>
        </ShownAircraft>
      </div>
    </DrawnSheet>
  )
}
