import '../styles/aircraft.css'
import '../styles/aircraftTwin.css'
import { ShownAircraft } from '../aircraft/ShownAircraft.tsx'
import { TwinSection } from '../aircraft/twin/TwinSection.tsx'
import { CarbonBlock } from '../carbon/CarbonBlock.tsx'
import { InTurn } from '../inTurn/InTurn.tsx'
import { DrawnSheet } from './DrawnSheet.tsx'
import { TitleBlock } from './TitleBlock.tsx'

/** How far it is from carbon: the frame bought, the parts cut from plate, a season of either. */
export function CarbonSheet() {
  return (
    <DrawnSheet
      className="carbon-sheet"
      title="Against carbon"
      block={<TitleBlock sheet="carbon" />}
    >
      <div className="aircraft">
        <ShownAircraft>
          <InTurn>
            <CarbonBlock />
            <TwinSection />
          </InTurn>
        </ShownAircraft>
      </div>
    </DrawnSheet>
  )
}
