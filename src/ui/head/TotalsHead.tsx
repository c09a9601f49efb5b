import { coarseWords, leftOutWords, limitWords, piecesNoun } from '../../core/frame/sayings.ts'
import { formatPercent, withSign } from '../../core/words/format.ts'
import { allUpMassG, frameSummary, isLaying } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { HelpMark } from '../help/HelpMark.tsx'
import { SheetLinks } from '../set/SheetLinks.tsx'
import { showGrams, showMass, showMoney, showTime, trueMinus } from '../show.ts'
import { GramRuler } from './GramRuler.tsx'
import { SpokenTotal } from './SpokenTotal.tsx'
import { TotalFigure } from './TotalFigure.tsx'
import { massUnit } from '../../core/words/shownUnits.ts'

/**
 * The frame's one mass on its ruler, its other totals and the way to every sheet; it stays on top
 * of all of them.
 */
export function TotalsHead() {
  const { sum, partCount, censusCount, coarseCount, failedCount } = useAppState(frameSummary)
  const { printed } = sum
  const { flying, spares } = sum.pieces
  const unsettled = partCount - censusCount - coarseCount - failedCount
  const carbon = useAppState((state) => state.frame.carbon)
  const currency = useAppState((state) => state.frame.prices.currency)
  const mass = showGrams(printed.massG)
  const cost = showMoney(sum.withSpares.cost, currency)
  const time = showTime(sum.withSpares.timeS)
  const leftOut = leftOutWords(sum.leftOut, 'mass')
  const outOfCost = leftOutWords(sum.leftOut, 'cost and hours')
  const { strictest, allUpG: limitG } = sum.limits
  const isOver = strictest !== null && strictest.leftG < 0
  const laying = useAppState(isLaying)
  const rough = unsettled + coarseCount > 0 ? '~' : ''
  const difference = sum.carbon
  const allUpG = useAppState(allUpMassG)
  return (
    <section
      className="totals"
      aria-label="Total of the frame"
      data-without={sum.leftOut.length > 0 || undefined}
    >
      <div className="totals-inner">
        <div className="totals-mass">
          <dl>
            <TotalFigure
              id="grams"
              lead
              words="Printed mass"
              figure={rough + mass.mid}
              isOver={isOver}
              unit={massUnit()}
              below={
                <>
                  {mass.range} printed
                  {unsettled === 0 ? null : (
                    <span className="rough-words">, {roughWords(unsettled)}</span>
                  )}
                  {coarseCount === 0 ? null : (
                    <span className="rough-words">, {coarseWords(coarseCount)}</span>
                  )}
                  {leftOut === null ? null : <span className="left-out">, {leftOut}</span>}
                  <HelpMark of="range" />
                </>
              }
            />
          </dl>
          {carbon === null ? null : <p className="unseen">carbon {showMass(carbon.massG)}</p>}
          <GramRuler massG={printed.massG} carbonG={carbon?.massG ?? null} limit={strictest} />
        </div>
        <div className="totals-line">
          <SheetLinks />
          <dl>
            {strictest === null ? null : (
              <TotalFigure
                id="limit"
                words="Limit"
                figure={
                  <span className={isOver ? 'limit-words wrong-text' : 'limit-words'}>
                    {limitWords(strictest)}
                  </span>
                }
              />
            )}
            {allUpG === null ? null : (
              <TotalFigure
                id="all-up"
                words="All-up mass"
                figure={rough + showMass(allUpG)}
                below={
                  <span className="all-up">
                    all-up{limitG === null ? '' : ` of ${showMass(limitG)}`}
                  </span>
                }
              />
            )}
            <TotalFigure
              id="pieces"
              words="Pieces"
              figure={String(flying)}
              below={piecesNoun(flying, spares)}
            />
            <TotalFigure
              id="cost"
              words="Cost"
              figure={rough + cost.mid}
              unit={currency}
              title={cost.range}
            />
            <TotalFigure
              id="time"
              words="Time"
              figure={rough + time.mid}
              unit="h"
              below={
                laying && unsettled === 0 ? (
                  <span className="laying-words">runs being laid</span>
                ) : outOfCost === leftOut ? undefined : (
                  `both ${outOfCost}`
                )
              }
              title={time.range}
            />
            {difference === null ? null : (
              <TotalFigure
                id="carbon"
                words="Against carbon"
                figure={withSign(difference.massG.mid, showGrams(difference.massG).mid)}
                unit={massUnit()}
                below={[
                  'against carbon',
                  difference.massShare === null
                    ? null
                    : trueMinus(
                        withSign(difference.massShare.mid, formatPercent(difference.massShare.mid)),
                      ),
                  leftOut,
                ]
                  .filter((words) => words !== null)
                  .join(', ')}
              />
            )}
          </dl>
        </div>
      </div>
      <SpokenTotal />
    </section>
  )
}

function roughWords(unsettled: number): string {
  return `rough: ${unsettled} part${unsettled === 1 ? '' : 's'} still to count`
}
