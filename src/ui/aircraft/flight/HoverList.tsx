import type { FlightSetup } from '../../../core/model/aircraft.ts'
import { FLIGHT_CAUTIONS } from '../../../core/aircraft/flight/cautions.ts'
import type { Range } from '../../../core/model/figures.ts'
import type { HoverFigures } from '../../../core/aircraft/flight/hover.ts'
import { scaleRange } from '../../../core/model/ranges.ts'
import { formatPercent } from '../../../core/words/format.ts'
import { FigureList } from '../FigureList.tsx'
import { figureWords, spanG, spanWords, tenthMass, measureWords } from '../words.ts'
import { toldWords } from '../../../core/words/toldWords.ts'
import { shownAs } from '../../../core/words/shownUnits.ts'

interface HoverFactsProps {
  readonly flight: FlightSetup
  readonly hover: HoverFigures
  /** 19 times in 20 the all-up weight ends in it. */
  readonly auwRangeG: Range
}

const NOTE_CLASS = { bad: 'craft-bad', caution: 'caution', note: 'hint' } as const

/** Thrust, power and minutes at the present all-up weight. */
export function HoverList({ flight, hover, auwRangeG }: HoverFactsProps) {
  const { squareRoot, linear } = hover.hoverThrottle
  const as = shownAs('g')
  return (
    <>
      <p className="craft-lead">
        <b className="craft-figure">{figureWords(hover.hoverMin.mid, 1)}</b> min of hover
        <span className="range"> {spanWords(hover.hoverMin, 'min', 1)}</span>
      </p>
      <p className={`craft-verdict craft-${hover.verdict.level}`}>
        Thrust-to-weight {hover.verdict.words}
      </p>
      {hover.notes.map(({ code, severity, message }) => (
        <p key={code} className={NOTE_CLASS[severity]}>
          {toldWords(message)}
        </p>
      ))}
      <FigureList
        of={[
          { words: 'All-up weight', figure: tenthMass(hover.auwG), small: spanG(auwRangeG) },
          {
            words: 'Full thrust',
            figure: measureWords(flight.motors * flight.motorThrustG, 'g', 0),
            small: `${flight.motors} × ${measureWords(flight.motorThrustG, 'g', 0)}`,
          },
          {
            words: 'Hover power',
            figure: `${figureWords(hover.hoverW.mid, 0)} W`,
            small: spanWords(hover.hoverW, 'W', 0),
          },
          {
            words: 'Least power by momentum theory',
            figure: `${figureWords(hover.idealW, 1)} W`,
          },
          {
            words: 'Of the pack’s power, ends up lifting',
            help: 'hover efficiency',
            figure: formatPercent(hover.efficiency.mid),
            small: spanWords(scaleRange(hover.efficiency, 100), '%', 0),
          },
          {
            words: 'Hover throttle, thrust with its square',
            figure: formatPercent(squareRoot),
          },
          { words: 'Hover throttle, thrust straight with it', figure: formatPercent(linear) },
          {
            words: 'Pack',
            figure: `${figureWords(hover.energyWh, 1)} Wh`,
            small: `${formatPercent(flight.usableShare)} flown`,
          },
          {
            help: 'thrust to weight',
            words:
              hover.payloadG >= 0
                ? 'Payload left until thrust is twice the weight'
                : 'Too heavy for thrust twice the weight, by',
            figure: measureWords(Math.abs(hover.payloadG), 'g', 0),
          },
          {
            words: `One ${as.label === 'g' ? 'gram' : 'ounce'} more on the frame`,
            figure: `${figureWords(hover.sPerGram * as.per, 2)} s`,
            small: 'of hover',
            strong: true,
          },
        ]}
      />
      <p className="hint">
        Momentum theory over the open disks, divided by an efficiency that falls with propeller size
        and disk loading, fitted to drives and whole aircraft measured from{' '}
        {spanWords({ low: 31, mid: 31, high: 381 }, 'mm', 0)}.{' '}
        {hover.lesson?.verdict === 'used'
          ? `Your timed hover made the drive ${figureWords(hover.lesson.factor, 2)} times as good as ` +
            'that; the figures follow it.'
          : ''}{' '}
        Sources disagree on how thrust follows the stick, so both throttles are given. Calm air,
        standing still; wind and turns cost more.
      </p>
      <p className="caution">{FLIGHT_CAUTIONS.firstFlight}</p>
    </>
  )
}
