import type { FlightSetup, WingSetup } from '../../../core/model/aircraft.ts'
import type { Range } from '../../../core/model/figures.ts'
import { FLIGHT_CAUTIONS } from '../../../core/aircraft/flight/cautions.ts'
import { wingLoading } from '../../../core/aircraft/flight/wing.ts'
import { toldWords } from '../../../core/words/toldWords.ts'
import { FigureList } from '../FigureList.tsx'
import { CruiseList } from './CruiseList.tsx'
import { figureWords, spanG, spanWords, tenthMass } from '../words.ts'
import { shownOf, shownAs } from '../../../core/words/shownUnits.ts'

interface WingBlockProps {
  readonly wing: WingSetup
  readonly flight: FlightSetup | null
  readonly auwG: number
  /** 19 times in 20 the all-up weight ends in it. */
  readonly auwRangeG: Range
}

/** How heavily a plane sits on its wing. */
export function WingBlock({ wing, flight, auwG, auwRangeG }: WingBlockProps) {
  const loading = wingLoading(wing, auwG)
  if (loading === null)
    return <p className="hint">With a wing area and a mass the loading follows.</p>
  const as = shownAs('g/dm²')
  return (
    <>
      <p className="craft-lead">
        <b className="craft-figure">
          {figureWords(shownOf(loading.areaLoadingGDm2, as), 1 + as.finer)}
        </b>{' '}
        {as.label} on the wing
      </p>
      <FigureList
        of={[
          { words: 'All-up weight', figure: tenthMass(auwG), small: spanG(auwRangeG) },
          {
            words: 'Cube loading',
            figure: `${figureWords(loading.cubeLoadingOzFt3, 1)} oz/ft³`,
          },
          {
            words: 'Stalls below',
            figure: `${figureWords(loading.stallMS.mid, 1)} m/s`,
            small: spanWords(loading.stallMS, 'm/s', 1),
            strong: true,
          },
        ]}
      />
      <p className="hint">
        {toldWords(
          'Level flight, lift coefficient 0.9 to 1.3 at the stall (common practice, no source).',
        )}
      </p>
      <CruiseList wing={wing} flight={flight} auwG={auwG} />
      <p className="caution">{FLIGHT_CAUTIONS.firstThrow}</p>
    </>
  )
}
