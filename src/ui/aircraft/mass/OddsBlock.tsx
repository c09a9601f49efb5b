import { useMemo } from 'react'
import { formatPercent } from '../../../core/words/format.ts'
import { massOdds } from '../../../core/frame/odds.ts'
import type { AircraftView } from '../../../state/store/aircraftView.ts'
import { HelpMark } from '../../help/HelpMark.tsx'
import { FigureList } from '../FigureList.tsx'
import { tenthG, tenthMass } from '../words.ts'

interface OddsBlockProps {
  readonly view: AircraftView
  readonly limitG: number | null
}

const SHOWN = 5

/** How sure the sum is, who is to blame for the doubt, and what to weigh next. */
export function OddsBlock({ view, limitG }: OddsBlockProps) {
  const odds = useMemo(() => massOdds(view.doubt, limitG ?? view.ledger.basicMassG), [view, limitG])
  if (!(odds.sigmaG > 0)) return null
  const most = odds.sources[0]?.share ?? 1
  const [next] = odds.measurements
  return (
    <>
      <div className="head-help">
        <h4>Odds</h4>
        <HelpMark of="odds" />
      </div>
      <FigureList
        of={[
          {
            words: '19 times in 20 it ends between',
            figure: `${tenthG(odds.rangeG.low)} and ${tenthMass(odds.rangeG.high)}`,
          },
        ]}
      />
      <p className="hint">
        Of the lines as they stand, growth not added: what is forgotten is not in the odds.
      </p>
      <figure className="craft-figure-block">
        <figcaption>Where the doubt comes from</figcaption>
        <ul className="craft-bars">
          {odds.sources.slice(0, SHOWN).map(({ id, name, share, sigmaG }) => (
            <li key={id}>
              <span>{name}</span>
              <span className="bar-ground" aria-hidden="true">
                <span className="bar bar-doubt" style={{ width: `${(share / most) * 100}%` }} />
              </span>
              <span className="figures">
                {formatPercent(share)} <span className="range">±{tenthMass(2 * sigmaG)}</span>
              </span>
            </li>
          ))}
        </ul>
      </figure>
      {next === undefined ? null : (
        <p className="craft-advice">
          {next.text}: of all single measurements it takes away the most doubt, from ±
          {tenthMass(2 * odds.sigmaG)} down to ±{tenthMass(2 * next.sigmaAfterG)}.{' '}
          {whereTyped(next.id, view)}
        </p>
      )}
    </>
  )
}

/** Where on the page the result of a measurement goes. */
function whereTyped(id: string, view: AircraftView): string {
  if (id.startsWith('density:')) {
    return 'It is typed in the list of materials, under “Materials”.'
  }
  return view.printed.some(({ part }) => part.id === id)
    ? 'Type what the scale says under “Weigh-in” below.'
    : 'Type its mass under “Bolts and bought items”, and say there that it is weighed.'
}
