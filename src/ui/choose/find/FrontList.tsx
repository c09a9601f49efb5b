import { useState } from 'react'
import { Button } from 'react-aria-components'
import { changeWords } from '../../../core/choose/sayings.ts'
import type { PartWay } from '../../../core/model/frame.ts'
import { formatMoney, withSign } from '../../../core/words/format.ts'
import { massUnit } from '../../../core/words/shownUnits.ts'
import { useActions } from '../../appContext.ts'
import { showGhost } from '../../head/ghost.ts'
import { showGrams, showMass, showNumber, showTime } from '../../show.ts'
import type { FrameThen } from '../chosenParts.ts'
import { useKeepVariant } from '../variants/useKeepVariant.ts'
import { FrontPicture } from './FrontPicture.tsx'
import type { Found, Solution } from './searchFrame.ts'
import { SolvedTable } from './SolvedTable.tsx'

interface FrontListProps {
  readonly found: Found
  readonly then: FrameThen
  /** False while only some parts are counted. */
  readonly isWhole: boolean
}

/**
 * The solutions drawn and as a table; one looked at, with what it changes, to take whole or to
 * keep.
 */
export function FrontList({ found, then, isWhole }: FrontListProps) {
  const { takeWays } = useActions()
  const keep = useKeepVariant()
  const [looked, setLooked] = useState<Solution | null>(null)
  const { solutions, count } = found
  const shown = looked !== null && solutions.includes(looked) ? looked : null
  const { currency } = then.frame.prices
  return (
    <div className="front">
      <FrontPicture solutions={solutions} then={then} looked={shown} onLook={setLooked} />
      {shown === null ? null : (
        <div className="front-look">
          <h4>
            {showMass(shown.sum.printed.massG.mid)}, {differenceWords(shown, then)}
          </h4>
          <ul>
            {changesOf(shown, then).map(({ id, name, words }) => (
              <li key={id}>
                <strong>{name}</strong>: {words}
              </li>
            ))}
          </ul>
          <SolvedTable solution={shown} then={then} limits={found.limits} />
          <div className="button-line">
            <Button
              className="quiet"
              onPress={() => {
                showGhost(null)
                takeWays(waysOf(shown), 'take a solution')
              }}
            >
              Take this solution
            </Button>
            <Button
              className="quiet"
              onPress={() => {
                keep(`Found, ${showMass(shown.sum.printed.massG.mid)}`, waysOf(shown))
              }}
            >
              Keep it as a variant
            </Button>
          </div>
        </div>
      )}
      <div className="front-table">
        <p className="hint">
          {isWhole ? '' : 'So far, with the other parts as they stand: '}
          {count > solutions.length
            ? `${solutions.length} of ${count}, those that differ most.`
            : `All ${count}.`}
        </p>
        <div className="wide-table">
          <table id="front-list" className="choose-table">
            <thead>
              <tr>
                <th scope="col">Printed, {massUnit()}</th>
                <th scope="col">Hours</th>
                <th scope="col">Cost</th>
                <th scope="col">Stiffness kept</th>
                <th scope="col">Parts changed</th>
              </tr>
            </thead>
            <tbody>
              {solutions.map((one, i) => {
                const { massG } = one.sum.printed
                const grams = showGrams(massG)
                const ghost = { massG: massG.mid, words: `solution ${i + 1}` }
                return (
                  <tr
                    key={massG.mid + one.assignment.timeS}
                    aria-current={one === shown ? 'true' : undefined}
                    onPointerEnter={() => {
                      showGhost(ghost)
                    }}
                    onPointerLeave={() => {
                      showGhost(null)
                    }}
                  >
                    <th scope="row">
                      <Button
                        className="quiet"
                        aria-pressed={one === shown}
                        aria-label={`Look at ${showMass(massG.mid)}, solution ${i + 1}`}
                        onFocus={() => {
                          showGhost(ghost)
                        }}
                        onBlur={() => {
                          showGhost(null)
                        }}
                        onPress={() => {
                          setLooked(one)
                        }}
                      >
                        {grams.mid}
                      </Button>
                      <span className="range">{grams.range}</span>
                    </th>
                    <td>{showTime(one.sum.withSpares.timeS).mid}</td>
                    <td>{formatMoney(one.sum.withSpares.cost.mid, currency)}</td>
                    <td>{stiffnessWords(one.assignment.stiffness)}</td>
                    <td>{changesOf(one, then).length}</td>
                  </tr>
                )
              })}
            </tbody>
          </table>
        </div>
      </div>
    </div>
  )
}

function waysOf({ options }: Solution): Readonly<Record<string, PartWay>> {
  return Object.fromEntries([...options].map(([id, { way }]) => [id, way]))
}

function stiffnessWords(stiffness: number): string {
  return stiffness === Infinity ? '–' : `${showNumber(100 * stiffness, 0)} %`
}

function differenceWords({ sum }: Solution, { printedG }: FrameThen): string {
  const lessG = sum.printed.massG.mid - printedG
  return `${withSign(lessG, showMass(lessG))} to what stood when it was looked for`
}

function changesOf({ options }: Solution, { rows, setup }: FrameThen) {
  return rows.flatMap(({ part }) => {
    const way = options.get(part.id)?.way
    if (way === undefined) return []
    const material = (id: string): string => setup.materialOf(id).name
    const words = changeWords(
      { ...part.recipe, material: material(part.materialId) },
      { ...way.recipe, material: material(way.materialId) },
    )
    return words.length === 0 ? [] : [{ id: part.id, name: part.name, words: words.join(', ') }]
  })
}
