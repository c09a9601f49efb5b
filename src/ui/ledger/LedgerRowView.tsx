import { lazy, memo, Suspense } from 'react'
import type { FrameRow } from '../../core/frame/types.ts'
import type { Printer } from '../../core/model/figures.ts'
import type { LedgerRow } from '../../state/store/derived.ts'
import { printedTotals } from './printedTotals.ts'
import type { PartWork } from '../../state/store/types.ts'
import { bedWords } from '../part/bedWords.ts'
import { plateMark } from '../part/plateWords.ts'
import { showGrams, showMoney, showNumber, showTime } from '../show.ts'
import { FigureCell } from './FigureCell.tsx'
import { OpenButton } from './OpenButton.tsx'
import { recipeWords } from './recipeWords.ts'
import { RowStatus } from './RowStatus.tsx'
import { TickCell } from './TickCell.tsx'
import { findingsOf, readOf } from './workFacts.ts'

/** Fetched while the first part is still being counted: a first visit need not wait for it. */
const PartPanel = lazy(async () => {
  const { PartPanel: loaded } = await import('../part/PartPanel.tsx')
  return { default: loaded }
})

interface LedgerRowViewProps {
  readonly row: LedgerRow
  readonly currency: string
  readonly printer: Printer
  readonly isOpen: boolean
  readonly isTicked: boolean
}

const NO_FIGURE = { mid: null, range: '' } as const

/** One part on one line; opened, its settings follow on the next. */
export const LedgerRowView = memo(function LedgerRowView(props: LedgerRowViewProps) {
  const { row, currency, printer, isOpen, isTicked } = props
  const { part, material, work, sum } = row
  const totals = sum === null ? null : printedTotals(sum)
  const read = readOf(work)
  const rough = row.basis === 'rough'
  const share = sum?.massShare ?? 0
  const bounds = read?.measure.boundsMm
  const bedMark = bounds === undefined ? null : bedWords(bounds, part, printer).mark
  const marks = [weighedMark(row.sum), plateMark(read?.plate), bedMark].filter(
    (mark) => mark !== null,
  )
  const panelId = `part-${part.id}`
  return (
    <>
      <tr className={`row${isOpen ? ' row-open' : ''}${isTicked ? ' row-ticked' : ''}`}>
        <TickCell partId={part.id} name={part.name} isTicked={isTicked} />
        <th scope="row" className="cell-name">
          <OpenButton
            partId={part.id}
            panelId={panelId}
            name={part.name}
            picture={read?.thumbnail ?? null}
            findings={findingsOf(work)}
            mark={marks.length === 0 ? null : marks.join(', ')}
            isOpen={isOpen}
            isWorking={isWorking(work)}
          />
          <RowStatus partId={part.id} work={work} />
        </th>
        <td className="cell-pieces figures">
          <span className="figure">
            {part.quantity}
            <span className="cell-unit">{part.spares > 0 ? ` +${part.spares}` : ''} ×</span>
          </span>
          <span className="range">{pieceWords(part)}</span>
        </td>
        <td className="cell-material">{material.name}</td>
        <td className="cell-recipe">{recipeWords(part)}</td>
        <FigureCell
          className="cell-grams"
          unit="g"
          {...(totals === null ? NO_FIGURE : showGrams(totals.massG))}
          rough={rough}
        />
        <FigureCell
          className="cell-cost"
          unit={currency}
          {...(totals === null ? NO_FIGURE : showMoney(totals.cost))}
          rough={rough}
        />
        <FigureCell
          className="cell-hours"
          unit="h"
          {...(totals === null ? NO_FIGURE : showTime(totals.timeS))}
          rough={rough}
        />
        <td className="cell-share figures">
          <span className="figure">
            {totals === null ? '–' : showNumber(share * 100, share < 0.0995 ? 1 : 0)}
          </span>
          <span className="share-bar" aria-hidden="true">
            <span style={{ scale: `${share} 1` }} />
          </span>
        </td>
      </tr>
      {isOpen ? (
        <tr className="row-panel">
          <td colSpan={9} id={panelId}>
            <Suspense fallback={null}>
              <PartPanel row={row} />
            </Suspense>
          </td>
        </tr>
      ) : null}
    </>
  )
})

/** Whether a status line stands below the name. */
function isWorking(work: PartWork): boolean {
  return work.kind !== 'failed' && (work.kind !== 'done' || work.newerFraction !== null)
}

/** A weighing of the part as it was before; one that holds needs no words here. */
function weighedMark(sum: FrameRow | null): string | null {
  if (sum === null || sum.changes.length === 0) return null
  const before = `weighed before its ${sum.changes.join(' and ')} changed`
  return sum.scaleRatio === null
    ? `${before}, what was reckoned then is not known: weigh it again or drop it`
    : before
}

function pieceWords(part: { readonly mirrored: number; readonly spares: number }): string {
  const words: string[] = []
  if (part.mirrored > 0) words.push(`${part.mirrored} mirrored`)
  if (part.spares > 0) words.push(`+${part.spares} spare`)
  return words.join(', ')
}
