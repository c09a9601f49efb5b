import type { FlightSetup, WingSetup } from '../../../core/model/aircraft.ts'
import { cruise } from '../../../core/aircraft/flight/cruise.ts'
import { toldWords } from '../../../core/words/toldWords.ts'
import { FigureList } from '../FigureList.tsx'
import { figureWords, spanWords } from '../words.ts'

interface CruiseFactsProps {
  readonly wing: WingSetup
  readonly flight: FlightSetup | null
  readonly auwG: number
}

const NEAR_STALL =
  'is less than 1.2 times the speed it may stall at: a gust or a turn can drop it. Fly faster, or lighten it.'
const TAKEN =
  'Drag of a typical small plane, span efficiency 0.65 to 0.85, and a drive that turns 32 to 50 % of its power ' +
  'into push (common practice, no source). Level in calm air: climb, turns and wind cost more.'

/** How long a plane flies level, or what is missing to say it. */
export function CruiseList({ wing, flight, auwG }: CruiseFactsProps) {
  const { missing, figures } = cruise(wing, flight, auwG)
  if (figures === null) {
    return (
      <p className="hint">For cruise power and minutes, still to be typed: {missing.join(', ')}.</p>
    )
  }
  const { speedMS, powerW, minutes, distanceKm, liftToDrag, easiestMS } = figures
  return (
    <>
      <p className="craft-lead">
        <b className="craft-figure">{figureWords(minutes.mid, 0)}</b> min at{' '}
        {figureWords(speedMS, 1)} m/s
        <span className="range"> {spanWords(minutes, 'min', 0)}</span>
      </p>
      {figures.nearStall ? (
        <p className="caution">
          {figureWords(speedMS, 1)} m/s {toldWords(NEAR_STALL)}
        </p>
      ) : null}
      <FigureList
        of={[
          {
            words: 'Cruise power',
            figure: `${figureWords(powerW.mid, 1)} W`,
            small: spanWords(powerW, 'W', 1),
          },
          {
            words: 'Distance in calm air',
            figure: `${figureWords(distanceKm.mid, 1)} km`,
            small: spanWords(distanceKm, 'km', 1),
          },
          {
            words: 'Lift over drag',
            figure: figureWords(liftToDrag.mid, 1),
            small: spanWords(liftToDrag, '', 1).trim(),
          },
          { words: 'Least power at about', figure: `${figureWords(easiestMS, 1)} m/s` },
        ]}
      />
      <p className="hint">{toldWords(TAKEN)}</p>
    </>
  )
}
