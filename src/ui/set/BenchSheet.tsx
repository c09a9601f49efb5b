import '../styles/aircraft.css'
import '../styles/aircraftMass.css'
import { ClockRow } from '../bench/ClockRow.tsx'
import { DrillSection } from '../bench/DrillSection.tsx'
import { RunsSection } from '../bench/RunsSection.tsx'
import { SparesList } from '../bench/SparesList.tsx'
import { ToolpathSection } from '../bench/ToolpathSection.tsx'
import { WeighIns } from '../bench/WeighIns.tsx'
import { Section } from '../aircraft/Section.tsx'
import { ShownAircraft, useShownAircraft } from '../aircraft/ShownAircraft.tsx'
import { useAppState } from '../appContext.ts'
import { InTurn } from '../inTurn/InTurn.tsx'
import { DrawnSheet } from './DrawnSheet.tsx'
import { TitleBlock } from './TitleBlock.tsx'

/** The evening after: what the scale and the clock said, and what is printed to have in the bag. */
export function BenchSheet() {
  return (
    <DrawnSheet
      className="bench-sheet"
      title="Bench: printed, weighed, timed"
      block={<TitleBlock sheet="bench" />}
    >
      <div className="aircraft">
        <ShownAircraft>
          <InTurn>
            <RunsSection />
            <DrillSection />
            <ToolpathSection />
            <WeighSection />
            <ClockSection />
            <SpareSection />
          </InTurn>
        </ShownAircraft>
      </div>
    </DrawnSheet>
  )
}

function WeighSection() {
  const { view } = useShownAircraft()
  const parts = useAppState((state) => state.frame.parts)
  const weighed = parts.filter(({ weighIn }) => weighIn !== undefined).length
  return (
    <Section
      title="Weigh-in"
      summary={`${weighed} of ${parts.length} ${parts.length === 1 ? 'part' : 'parts'} weighed`}
    >
      <div className="craft-full">
        <WeighIns sum={view.sum} />
      </div>
    </Section>
  )
}

function ClockSection() {
  const count = useAppState((state) => state.frame.clocks?.length ?? 0)
  return (
    <Section
      title="Clock"
      summary={count === 0 ? 'no print timed yet' : `${count} timed`}
      onPaper={count > 0}
    >
      <div className="craft-full">
        <ClockRow />
      </div>
    </Section>
  )
}

function SpareSection() {
  const count = useAppState((state) =>
    state.frame.parts.reduce((sum, { spares }) => sum + spares, 0),
  )
  return (
    <Section
      title="Spares"
      summary={count === 0 ? 'none' : `${count} in the bag`}
      onPaper={count > 0}
    >
      <div className="craft-full">
        <SparesList />
      </div>
    </Section>
  )
}
