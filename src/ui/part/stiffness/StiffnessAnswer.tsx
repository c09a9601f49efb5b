import { LEAST_SAFETY } from '../../../core/data/stiffness.ts'
import { formatRange } from '../../../core/words/format.ts'
import type { Range } from '../../../core/model/figures.ts'
import type { StiffPart } from '../../../core/stiffness/part/stiffPart.ts'
import { showLength, showMass, showNumber } from '../../show.ts'
import { HeightLens } from './HeightLens.tsx'
import { MovedLine } from './MovedLine.tsx'
import { caseWords } from './words.ts'

interface StiffnessAnswerProps {
  readonly found: StiffPart
}

const digitsOf = (value: number): number => (value < 1 ? 3 : value < 10 ? 2 : value < 100 ? 1 : 0)

function ranged(range: Range, show: (value: number) => string): readonly [string, string] {
  return [show(range.mid), formatRange(range, show)]
}

/** The figures of one reckoning, how the part moves, and where its layers are pulled apart. */
export function StiffnessAnswer({ found }: StiffnessAnswerProps) {
  const { figures, chosen, solved, loadN, tipG, cellMm } = found
  const { safety } = figures
  const digits = digitsOf(figures.deflectionMm.mid)
  const rows: (readonly [string, readonly [string, string]])[] = [
    ['Gives way by', ranged(figures.deflectionMm, (mm) => showLength(mm, digits))],
    ['Turns there by', ranged(figures.slopeDeg, (deg) => `${showNumber(deg, 2)}°`)],
  ]
  const [first, ...further] = figures.hz
  if (first !== undefined) {
    rows.push(['Rings first at', ranged(first, hz)])
    const others = further.map(({ mid }) => hz(mid))
    rows.push(['Then at', [others.join(', '), '']])
  }
  if (safety !== null) {
    rows.push([
      'Strength over stress',
      ranged(safety.factor, (value) => showNumber(value, value < 10 ? 1 : 0)),
    ])
  }
  const breaks =
    safety === null
      ? null
      : safety.breaks === 'between layers'
        ? 'It parts between layers first'
        : 'It breaks along its layers first'
  return (
    <div className="stiffness-answer">
      <p>
        {caseWords(chosen, loadN)}
        {tipG > 0 ? `, with ${showMass(tipG)} at its end when it rings` : ''}.{' '}
        {cellMm > 1 ? 'A draft in coarse cells; the finer sum follows.' : ''}
      </p>
      <table className="stiffness-figures">
        <caption className="unseen">How the part gives</caption>
        <tbody>
          {rows.map(([words, [mid, range]]) => (
            <tr key={words}>
              <th scope="row">{words}</th>
              <td>
                <b>{mid}</b>
              </td>
              <td className="quiet-text">{range}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {safety === null ? null : (
        <p className={safety.factor.low < LEAST_SAFETY ? 'caution' : 'hint'}>
          {breaks}, {showLength(safety.heightMm, 1)} above the bed
          {safety.factor.low < LEAST_SAFETY
            ? `. It may be less than ${showNumber(LEAST_SAFETY, 1)}, too little for a load it will meet.`
            : '.'}
        </p>
      )}
      <p className="hint">
        {solved.beam.kind === 'beam'
          ? `As a plain beam of its own sections it would give ${showLength(solved.beam.deflectionMm, digits)}.`
          : `No beam stands in for it: ${solved.beam.why}.`}
      </p>
      <MovedLine line={solved.line} />
      <HeightLens heights={solved.acrossByHeight} />
      {solved.gapShare > 0.02 ? (
        <p className="hint">
          {showNumber(solved.gapShare * 100, 0)} % of its cells bridge a gap narrower than they are:
          there it is reckoned too stiff.
        </p>
      ) : null}
      {solved.looseShare > 0.01 ? (
        <p className="hint">
          {showNumber(solved.looseShare * 100, 0)} % of it hangs on nothing that is held and is left
          out.
        </p>
      ) : null}
    </div>
  )
}

const hz = (value: number): string => `${showNumber(value, value < 100 ? 1 : 0)} Hz`
