import '../styles/aircraft.css'
import '../styles/aircraftTwin.css'
import { useState } from 'react'
import { Button } from 'react-aria-components'
import { useAppState } from '../appContext.ts'
import { ShownAircraft } from '../aircraft/ShownAircraft.tsx'
import { TwinSection } from '../aircraft/twin/TwinSection.tsx'
import { CarbonBlock } from '../carbon/CarbonBlock.tsx'
import { InTurn } from '../inTurn/InTurn.tsx'
import { DrawnSheet } from './DrawnSheet.tsx'
import { TitleBlock } from './TitleBlock.tsx'

/** Id of the plane whose parts were asked for in carbon; as long as the visit. */
let lastAskedFor: string | null = null

/** How far it is from carbon: the frame bought, the parts cut from plate, a season of either. */
export function CarbonSheet() {
  const frameId = useAppState(({ frame }) => frame.id)
  const [askedFor, setAskedFor] = useState(lastAskedFor)
  // Nobody cuts a glider from plate: there carbon waits until it is asked for.
  const isWanted = useAppState(({ frame }) => frame.carbon !== null || frame.aircraft.wing === null)
  const isAsked = isWanted || askedFor === frameId
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
            {isAsked ? (
              <TwinSection />
            ) : (
              <p className="carbon-offer">
                Nothing of this plane is compared with carbon: no frame is typed in.{' '}
                <Button
                  className="quiet"
                  onPress={() => {
                    lastAskedFor = frameId
                    setAskedFor(frameId)
                  }}
                >
                  Show its flat parts cut from plate
                </Button>
              </p>
            )}
          </InTurn>
        </ShownAircraft>
      </div>
    </DrawnSheet>
  )
}
