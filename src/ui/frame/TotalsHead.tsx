import { formatPercent, withSign } from '../../core/figures/format.ts'
import { frameSummary } from '../../state/derived.ts'
import { useAppState } from '../app-context.ts'
import { showGrams, showMoney, showTime } from '../show.ts'
import { FrameName } from './FrameName.tsx'
import { GramRuler } from './GramRuler.tsx'
import { TotalFigure } from './TotalFigure.tsx'

/** The frame's total. It stays at the top of the window, whatever is scrolled or opened below it. */
export function TotalsHead() {
  const { totals, pieceCount, partCount, censusCount, failedCount } = useAppState(frameSummary)
  const spares = useAppState((state) =>
    state.frame.parts.reduce((sum, part) => sum + part.spares, 0),
  )
  const unsettled = partCount - censusCount - failedCount
  const carbon = useAppState((state) => state.frame.carbon)
  const currency = useAppState((state) => state.frame.prices.currency)
  const mass = showGrams(totals.massG)
  const cost = showMoney(totals.cost)
  const time = showTime(totals.timeS)
  const rough = unsettled > 0 ? '~' : ''
  const difference = totals.carbon
  return (
    <section className="totals" aria-label="Total of the frame">
      <div className="totals-inner">
        <dl>
          <TotalFigure
            lead
            words={<FrameName />}
            figure={rough + mass.mid}
            unit="g"
            below={mass.range}
          />
          <TotalFigure words="Cost" figure={rough + cost.mid} unit={currency} below={cost.range} />
          <TotalFigure words="Time" figure={rough + time.mid} unit="h" below={time.range} />
          <TotalFigure
            words="Pieces"
            figure={String(pieceCount)}
            below={spares === 0 ? 'no spares' : `${spares} of them spare`}
          />
          {difference === null ? null : (
            <TotalFigure
              words="Against carbon"
              figure={withSign(difference.massG.mid, showGrams(difference.massG).mid)}
              unit="g"
              below={
                difference.massShare === null
                  ? undefined
                  : withSign(difference.massShare.mid, formatPercent(difference.massShare.mid))
              }
            />
          )}
        </dl>
        <GramRuler massG={totals.massG} carbonG={carbon?.massG ?? null} />
        {unsettled === 0 ? null : (
          <p className="totals-rough" role="status">
            Rough until {unsettled === 1 ? 'one more part is' : `${unsettled} more parts are`}{' '}
            counted layer by layer.
          </p>
        )}
      </div>
    </section>
  )
}
