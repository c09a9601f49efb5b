import type { FlightSetup } from '../../../core/aircraft.ts'
import { FLIGHT_CAUTIONS } from '../../../core/flight/cautions.ts'
import type { HoverFigures } from '../../../core/flight/hover.ts'
import { formatNumber, formatPercent } from '../../../core/figures/format.ts'
import { trueMinus } from '../../show.ts'
import { Facts } from '../Facts.tsx'
import { spanWords, tenthG } from '../words.ts'

interface HoverFactsProps {
  readonly flight: FlightSetup
  readonly hover: HoverFigures
}

const NOTE_CLASS = { bad: 'craft-bad', caution: 'caution', note: 'hint' } as const

/** Thrust, power and minutes at the present all-up weight. */
export function HoverFacts({ flight, hover }: HoverFactsProps) {
  const number = (value: number, digits = 2) => trueMinus(formatNumber(value, undefined, digits))
  const { squareRoot, linear } = hover.hoverThrottle
  return (
    <>
      <p className="craft-lead">
        <b className="craft-figure">{number(hover.hoverMin.mid, 1)}</b> min of hover
        <span className="range"> {spanWords(hover.hoverMin, 'min', 1)}</span>
      </p>
      <p className={`craft-verdict craft-${hover.verdict.level}`}>
        Thrust-to-weight {hover.verdict.words}
      </p>
      {hover.notes.map(({ code, severity, message }) => (
        <p key={code} className={NOTE_CLASS[severity]}>
          {message}
        </p>
      ))}
      <Facts
        of={[
          { words: 'All-up weight', figure: `${tenthG(hover.auwG)} g` },
          {
            words: 'Full thrust',
            figure: `${number(flight.motors * flight.motorThrustG, 0)} g`,
            small: `${flight.motors} × ${number(flight.motorThrustG, 0)} g`,
          },
          {
            words: 'Hover power',
            figure: `${number(hover.hoverW.mid, 0)} W`,
            small: spanWords(hover.hoverW, 'W', 0),
          },
          {
            words: 'Least power by momentum theory',
            figure: `${number(hover.idealW, 1)} W`,
          },
          {
            words: 'Hover throttle, thrust with its square',
            figure: formatPercent(squareRoot),
          },
          { words: 'Hover throttle, thrust straight with it', figure: formatPercent(linear) },
          {
            words: 'Pack',
            figure: `${number(hover.energyWh, 1)} Wh`,
            small: `${formatPercent(flight.usableShare)} flown`,
          },
          {
            words: 'Payload left until thrust is twice the weight',
            figure: `${number(hover.payloadG, 0)} g`,
          },
          {
            words: 'One gram more on the frame',
            figure: `${number(hover.sPerGram, 2)} s`,
            small: 'of hover',
            strong: true,
          },
        ]}
      />
      <p className="hint">
        Momentum theory over the open disks, divided by what whole aircraft were measured to lose.
        Sources disagree on how thrust follows the stick, so both throttles are given. Calm air,
        standing still; wind and turns cost more.
      </p>
      <p className="caution">{FLIGHT_CAUTIONS.firstFlight}</p>
    </>
  )
}
