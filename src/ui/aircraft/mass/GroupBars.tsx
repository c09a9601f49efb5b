import type { AircraftLedger } from '../../../core/frame/ledger.ts'
import { formatPercent } from '../../../core/words/format.ts'
import { GROUP_WORDS, tenthMass } from '../words.ts'

/** Who weighs what: one bar a group, on one axis from nothing to the whole. */
export function GroupBars({ ledger }: { readonly ledger: AircraftLedger }) {
  const most = Math.max(...ledger.groups.map(({ massShare }) => massShare), 0.01)
  return (
    <figure className="craft-figure-block">
      <figcaption>Share of the basic mass</figcaption>
      <ul className="craft-bars">
        {ledger.groups.map(({ group, massG, massShare }) => (
          <li key={group}>
            <span>{GROUP_WORDS[group]}</span>
            <span className="bar-ground" aria-hidden="true">
              <span
                className={group === 'printed' ? 'bar bar-printed' : 'bar bar-carbon'}
                style={{ width: `${(massShare / most) * 100}%` }}
              />
            </span>
            <span className="figures">
              {tenthMass(massG)} <span className="range">{formatPercent(massShare)}</span>
            </span>
          </li>
        ))}
      </ul>
    </figure>
  )
}
