import { useRef, useState } from 'react'
import { Button } from 'react-aria-components'
import { worthOf, type Ranking } from '../../../core/choose/stepSavings.ts'
import type { Range } from '../../../core/model/figures.ts'
import { formatMoney, withSign } from '../../../core/words/format.ts'
import { massUnit } from '../../../core/words/shownUnits.ts'
import { frameSum } from '../../../state/store/derived.ts'
import { Section } from '../../aircraft/Section.tsx'
import { usePartShapes } from '../../aircraft/usePartShapes.ts'
import { useActions, useAppState } from '../../appContext.ts'
import { Choice } from '../../fields/Choice.tsx'
import { showGhost } from '../../head/ghost.ts'
import { showGrams, showMass, showNumber, trueMinus } from '../../show.ts'
import { useFrameSteps, type FrameStep } from './useFrameSteps.ts'
import { stepWords } from './stepWords.ts'
import { markPad } from '../../fields/markPad.ts'

const RANKINGS = [
  { id: 'grams', name: 'Grams saved' },
  { id: 'stiffness', name: 'Grams for stiffness lost' },
  { id: 'hours', name: 'Grams for hours lost' },
  { id: 'cost', name: 'Grams for money lost' },
] as const satisfies readonly { readonly id: Ranking; readonly name: string }[]

const SHOWN = 12

/**
 * Every single step of every part that saves grams, the best first; one is taken, and the next are
 * seen.
 */
export function SavesMost() {
  const parts = useAppState((state) => state.frame.parts)
  const printedG = useAppState((state) => frameSum(state).printed.massG.mid)
  const leftG = useAppState((state) => frameSum(state).limits.strictest?.leftG ?? null)
  const currency = useAppState((state) => state.frame.prices.currency)
  const { takeWays } = useActions()
  const { shapes } = usePartShapes(parts)
  const { steps, counted, toCount, isCounting, count } = useFrameSteps(shapes)
  const [by, setBy] = useState<Ranking>('grams')
  const [taken, setTaken] = useState('')
  const table = useRef<HTMLTableElement>(null)
  const ranked = (steps ?? [])
    .toSorted((a, b) => worthOf(b.saving, by) - worthOf(a.saving, by))
    .slice(0, SHOWN)
  const mostG = Math.max(0, ...ranked.map(({ saving }) => -saving.massG.mid))
  const take = ({ part, way, step }: FrameStep) => {
    showGhost(null)
    takeWays({ [part.id]: way }, `${stepWords(part, step)} of “${part.name}”`)
    setTaken(`Taken: ${part.name}, ${stepWords(part, step)}.`)
    // The row is another step now: the table stays the place.
    table.current?.focus()
  }
  return (
    <Section
      title="What saves most"
      summary={
        leftG !== null && leftG < 0
          ? `one step each; ${showMass(-leftG)} wanted`
          : 'one step each, of every part'
      }
    >
      <div className="craft-full saves-most">
        <div className="saves-head">
          <Choice label="Best first by" options={RANKINGS} value={by} onChange={setBy} />
          {counted < toCount ? (
            <Button className="quiet" isDisabled={isCounting} onPress={count}>
              {isCounting
                ? `Counting layers, ${counted} of ${toCount}`
                : 'Count walls, skins and layers too'}
            </Button>
          ) : null}
          <p role="status" className="hint">
            {taken}
          </p>
        </div>
        {ranked.length === 0 ? (
          <p className="hint">
            {steps === null ? 'Reckoning every step…' : 'No single step saves grams.'}
          </p>
        ) : (
          <div className="wide-table">
            <table ref={table} className="choose-table saves-table" tabIndex={-1}>
              <caption className="unseen">Steps that save grams, the best first</caption>
              <thead>
                <tr>
                  <th scope="col">Part</th>
                  <th scope="col">Change</th>
                  <th scope="col" className="saves-bar-head">
                    <span className="unseen">As a bar</span>
                  </th>
                  <th scope="col">{massUnit()}</th>
                  <th scope="col">min</th>
                  <th scope="col">{currency}</th>
                  <th scope="col">Stiffness</th>
                  <th scope="col">
                    <span className="unseen">Take it</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {ranked.map((one) => {
                  const { part, item, step, saving } = one
                  const words = stepWords(part, step)
                  const ghost = { massG: printedG + saving.massG.mid, words }
                  const minutes = Math.round(saving.timeS / 60)
                  return (
                    <tr
                      key={`${part.id} ${step.key} ${words}`}
                      onPointerEnter={() => {
                        showGhost(ghost)
                      }}
                      onPointerLeave={() => {
                        showGhost(null)
                      }}
                    >
                      <th scope="row">
                        {item} {part.name}
                        {part.quantity > 1 ? ` ×${part.quantity}` : ''}
                      </th>
                      <td className="saves-words">{words}</td>
                      <td className="saves-bar" aria-hidden="true">
                        <span style={{ inlineSize: `${(100 * -saving.massG.mid) / mostG}%` }} />
                      </td>
                      <td>
                        <strong data-pad={markPad(showGrams(saving.massG).mid)}>
                          {showGrams(saving.massG).mid}
                        </strong>
                        <span className="range">{rangeWords(saving.massG)}</span>
                      </td>
                      <td>{trueMinus(withSign(minutes, String(minutes)))}</td>
                      <td>
                        {trueMinus(withSign(saving.cost, formatMoney(saving.cost, currency)))}
                      </td>
                      <td>{lostWords(saving.stiffnessLost)}</td>
                      <td>
                        <Button
                          className="quiet"
                          aria-label={`Take ${words} of ${part.name}, ${showMass(saving.massG.mid)}`}
                          onFocus={() => {
                            showGhost(ghost)
                          }}
                          onBlur={() => {
                            showGhost(null)
                          }}
                          onPress={() => {
                            take(one)
                          }}
                        >
                          Take
                        </Button>
                      </td>
                    </tr>
                  )
                })}
              </tbody>
            </table>
          </div>
        )}
        <p className="hint">
          {steps !== null && steps.length > SHOWN ? `${SHOWN} of ${steps.length} steps. ` : ''}
          Stiffness is of that part alone, from sections of its layers, good to 15 %. Strength is
          not reckoned: a wall less is felt first where the layers bend.
        </p>
      </div>
    </Section>
  )
}

/** Of a difference: a dash between two minus signs would not be seen. */
function rangeWords({ low, high }: Range): string {
  const end = (massG: number): string => showGrams({ low: massG, mid: massG, high: massG }).mid
  return `${end(low)} to ${end(high)}`
}

function lostWords(lost: number | null): string {
  if (lost === null) return '–'
  const percent = Math.round(-100 * lost)
  return percent === 0 ? '0 %' : `${trueMinus(withSign(percent, showNumber(percent, 0)))} %`
}
