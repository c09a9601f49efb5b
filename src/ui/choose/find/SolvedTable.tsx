import { Button } from 'react-aria-components'
import { againstLimit } from '../../../core/choose/gives/againstLimit.ts'
import type { Gives, GivesLimit } from '../../../core/choose/gives/types.ts'
import type { Range } from '../../../core/model/figures.ts'
import { formatRange } from '../../../core/words/format.ts'
import { giveWords, toneWords } from '../../part/stiffness/BeamLine.tsx'
import { showNumber } from '../../show.ts'
import type { FrameThen } from '../chosenParts.ts'
import type { Solution } from './searchFrame.ts'
import { useSolvedGives, type SolvedPart } from './useSolvedGives.ts'

interface SolvedTableProps {
  readonly solution: Solution
  readonly then: FrameThen
  readonly limits: ReadonlyMap<string, GivesLimit>
}

/**
 * How the parts that were asked for it give and ring: as the search has it by scaled figures, and
 * solved as the solution prints them, held against what was asked.
 */
export function SolvedTable({ solution, then, limits }: SolvedTableProps) {
  const { found, progress, start, stop } = useSolvedGives(solution, then, limits)
  const rows = then.rows.flatMap(({ part: { id, name } }): readonly Row[] => {
    const gives = solution.options.get(id)?.gives
    const limit = limits.get(id)
    return gives === undefined || limit === undefined
      ? []
      : rowsOf(id, name, gives, limit, found.get(id) ?? null)
  })
  if (rows.length === 0) return null
  const isWhole = rows.every(({ isSolved }) => isSolved)
  return (
    <div className="front-solved">
      <div className="wide-table">
        <table className="choose-table">
          <caption>How they give: scaled from the part as it stands, and solved as found</caption>
          <thead>
            <tr>
              <th scope="col">Part</th>
              <th scope="col">Scaled</th>
              <th scope="col">Solved</th>
              <th scope="col">Asked</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ key, words, promised, solved, range, asked, standing, isShort }) => (
              <tr key={key}>
                <th scope="row">{words}</th>
                <td>{promised}</td>
                <td>
                  {solved}
                  <span className="range">{range}</span>
                </td>
                <td>
                  {asked}
                  <span className={isShort ? 'range front-short' : 'range'}>{standing}</span>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {progress === null ? (
        isWhole ? null : (
          <Button className="quiet" onPress={start}>
            Solve them
          </Button>
        )
      ) : (
        <p className="find-run">
          <progress value={progress} aria-label="Solving the parts of this solution" />
          <Button className="quiet" onPress={stop}>
            Stop solving
          </Button>
        </p>
      )}
    </div>
  )
}

interface Row {
  readonly key: string
  readonly words: string
  readonly promised: string
  readonly solved: string
  readonly range: string
  readonly asked: string
  readonly standing: string
  readonly isShort: boolean
  readonly isSolved: boolean
}

function rowsOf(
  id: string,
  name: string,
  gives: Gives,
  limit: GivesLimit,
  solved: SolvedPart | null,
): readonly Row[] {
  const isKnown = solved !== null && !('why' in solved)
  const row = (
    of: keyof GivesLimit,
    words: string,
    promised: number | null,
    figure: Range | null,
    show: (value: number) => string,
  ): Row => {
    const asked = limit[of]
    const against = asked === undefined || figure === null ? null : againstLimit(of, asked, figure)
    return {
      key: `${id} ${of}`,
      words: `${name} ${words}`,
      promised: promised === null ? '–' : show(promised),
      solved: figure === null ? (solved === null ? '…' : '–') : show(figure.mid),
      range:
        figure === null
          ? solved !== null && 'why' in solved
            ? `not solved: ${solved.why}`
            : ''
          : formatRange(figure, show),
      asked:
        asked === undefined
          ? '–'
          : `${of === 'deflectionMm' ? 'at most' : 'at least'} ${show(asked)}`,
      standing: against === null ? '' : standingWords(against),
      isShort: against !== null && against.shortBy > 0,
      isSolved: solved !== null,
    }
  }
  const deflection = isKnown ? solved.deflectionMm : null
  const tone = isKnown ? (solved.hz[0] ?? null) : null
  return [
    row('deflectionMm', 'gives', gives.deflectionMm, deflection, (mm) =>
      giveWords({ deflectionMm: mm }),
    ),
    ...(gives.firstHz === null && limit.firstHz === undefined
      ? []
      : [row('firstHz', 'rings first at', gives.firstHz, tone, toneWords)]),
  ]
}

function standingWords({ shortBy, isSure }: ReturnType<typeof againstLimit>): string {
  if (shortBy > 0) {
    const pct = 100 * shortBy
    return `falls short by ${pct < 0.1 ? 'less than 0.1' : showNumber(pct, pct < 1 ? 1 : 0)} %`
  }
  return isSure ? 'kept, whatever its range' : 'kept by its middle, not by all of its range'
}
