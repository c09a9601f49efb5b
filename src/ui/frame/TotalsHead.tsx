import type { Part } from '../../core/model/frame.ts'
import type { AppState } from '../../state/store/types.ts'
import { leftOutWords, limitWords } from '../../core/frame/sayings.ts'
import { formatPercent, withSign } from '../../core/words/format.ts'
import { allUpMassG, frameSummary } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { showGrams, showMass, showMoney, showTime, trueMinus } from '../show.ts'
import { FrameName } from './FrameName.tsx'
import { GramRuler } from './GramRuler.tsx'
import { TotalFigure } from './TotalFigure.tsx'

/** The frame's total. It stays at the top of the window, whatever is scrolled or opened below it. */
export function TotalsHead() {
  const { sum, partCount, censusCount, failedCount } = useAppState(frameSummary)
  const { printed } = sum
  const count = (pick: (part: Part) => number) => (state: AppState) =>
    state.frame.parts.reduce((total, part) => total + pick(part), 0)
  const pieces = useAppState(count(({ quantity }) => quantity))
  const spares = useAppState(count((part) => part.spares))
  const unsettled = partCount - censusCount - failedCount
  const carbon = useAppState((state) => state.frame.carbon)
  const currency = useAppState((state) => state.frame.prices.currency)
  const mass = showGrams(printed.massG)
  const cost = showMoney(sum.withSpares.cost)
  const time = showTime(sum.withSpares.timeS)
  const leftOut = leftOutWords(sum.leftOut.length)
  const { strictest } = sum.limits
  const isOver = strictest !== null && strictest.leftG < 0
  const rough = unsettled > 0 ? '~' : ''
  const difference = sum.carbon
  const allUpG = useAppState(allUpMassG)
  return (
    <section className="totals" aria-label="Total of the frame">
      <div className="totals-inner">
        <dl>
          <TotalFigure
            id="grams"
            lead
            words={<FrameName />}
            figure={rough + mass.mid}
            isOver={isOver}
            unit="g"
            below={
              <>
                {mass.range}
                {unsettled === 0 ? null : (
                  <span className="rough-words">, {roughWords(unsettled)}</span>
                )}
                {leftOut === null ? null : <span className="left-out">, {leftOut}</span>}
                {allUpG === null ? null : (
                  <span className="all-up">
                    {' '}
                    · {rough}
                    {showMass(allUpG)} all-up
                  </span>
                )}
                {strictest === null ? null : (
                  <span className={isOver ? 'limit-words wrong-text' : 'limit-words'}>
                    {' '}
                    · {limitWords(strictest)}
                  </span>
                )}
              </>
            }
          />
          <TotalFigure
            id="pieces"
            words="Pieces"
            figure={String(pieces)}
            below={spares === 0 ? 'no spares' : `and ${spares} spare`}
          />
          <TotalFigure
            id="cost"
            words="Cost"
            figure={rough + cost.mid}
            unit={currency}
            below={cost.range}
          />
          <TotalFigure
            id="time"
            words="Time"
            figure={rough + time.mid}
            unit="h"
            below={time.range}
          />
          {difference === null ? null : (
            <TotalFigure
              id="carbon"
              words="Against carbon"
              figure={withSign(difference.massG.mid, showGrams(difference.massG).mid)}
              unit="g"
              below={[
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
        <GramRuler massG={printed.massG} carbonG={carbon?.massG ?? null} limit={strictest} />
      </div>
    </section>
  )
}

function roughWords(unsettled: number): string {
  return `rough: ${unsettled} part${unsettled === 1 ? '' : 's'} still to count`
}
