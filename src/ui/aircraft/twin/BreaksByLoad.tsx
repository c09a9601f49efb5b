import { LEAST_SAFETY } from '../../../core/data/stiffness.ts'
import { figureWords, spanWords } from '../words.ts'
import type { SolvedPart } from './useModelledParts.ts'

interface BreaksByLoadProps {
  readonly solved: readonly SolvedPart[]
  readonly isAll: boolean
}

/** What breaks first by load and strength, beside what the chances above say. */
export function BreaksByLoad({ solved, isAll }: BreaksByLoadProps) {
  const weakest = solved.toSorted((a, b) => a.safety.factor.mid - b.safety.factor.mid)
  const [first] = weakest
  if (first === undefined) return null
  return (
    <>
      <h4>What breaks first by load</h4>
      <table className="sides">
        <caption className="unseen">Strength over stress of printed parts</caption>
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col" className="figures">
              Load <small>N</small>
            </th>
            <th scope="col" className="figures">
              Strength over stress
            </th>
            <th scope="col">Breaks</th>
          </tr>
        </thead>
        <tbody>
          {weakest.map(({ id, name, loadN, safety: { factor, breaks } }) => (
            <tr key={id}>
              <th scope="row">{name}</th>
              <td className="figures">{figureWords(loadN, 1)}</td>
              <td className="figures">
                {figureWords(factor.mid, 1)}
                <span className="range">{spanWords(factor, '', 1)}</span>
              </td>
              <td>{breaks}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={first.safety.factor.low < LEAST_SAFETY ? 'caution' : 'hint'}>
        Under these loads {first.name} breaks first
        {isAll ? '' : ', of the parts solved so far'}: the chances above are what you typed, this is
        what the solid model says. Arms carry full throttle, the others a plain load unless one is
        typed on their sheets; soft parts are left out. A crash loads parts otherwise, and printed
        strength scatters by a third: no licence to fly over people.
      </p>
    </>
  )
}
