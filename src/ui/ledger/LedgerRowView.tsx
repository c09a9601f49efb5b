import { memo } from 'react'
import type { FrameRow } from '../../core/frame/types.ts'
import type { Printer } from '../../core/model/figures.ts'
import type { LedgerRow } from '../../state/store/derived.ts'
import { bedWords } from '../part/bedWords.ts'
import { plateMark } from '../part/plateWords.ts'
import { formatAddress } from '../set/address.ts'
import { pointAt, useIsPointedAt } from '../set/pointedItem.ts'
import { showGrams, showMoney, showTime } from '../show.ts'
import { Cautions } from './Cautions.tsx'
import { FigureCell } from './FigureCell.tsx'
import { printedTotals } from './printedTotals.ts'
import { recipeWords } from './recipeWords.ts'
import { RowStatus } from './RowStatus.tsx'
import { TickBox } from './TickBox.tsx'
import { findingsOf, isCounting, readOf } from './partWork.ts'
import { massUnit } from '../../core/words/shownUnits.ts'

interface LedgerRowViewProps {
  readonly row: LedgerRow
  /** Its number in the list and in the drawing, from 1. */
  readonly item: number
  readonly currency: string
  readonly printer: Printer
  /** Share of the heaviest line, 0–1. */
  readonly weight: number
  readonly isChosen: boolean
  readonly isTicked: boolean
  readonly onChoose: (partId: string) => void
}

const NO_FIGURE = { mid: null, range: '' } as const

/** One line of the item list; its name leads to the part's own sheet. */
export const LedgerRowView = memo(function LedgerRowView(props: LedgerRowViewProps) {
  const { row, item, currency, printer, weight, isChosen, isTicked, onChoose } = props
  const { part, material, work, sum } = row
  const isLit = useIsPointedAt(part.id)
  const totals = sum === null ? null : printedTotals(sum)
  const isCounted = totals !== null && row.figures !== null
  const read = readOf(work)
  const rough = row.basis === 'rough' || row.basis === 'coarse'
  const bounds = read?.measure.boundsMm
  const bedMark = bounds === undefined ? null : bedWords(bounds, part, printer).mark
  const marks = [weighedMark(row.sum), plateMark(read?.plate), bedMark].filter(
    (mark) => mark !== null,
  )
  const mass = totals === null ? NO_FIGURE : showGrams(totals.massG)
  const classes = ['row']
  if (isChosen) classes.push('row-chosen')
  if (isLit) classes.push('row-lit')
  if (isTicked) classes.push('row-ticked')
  return (
    <tr
      className={classes.join(' ')}
      onPointerEnter={() => {
        pointAt(part.id)
      }}
      onPointerLeave={() => {
        pointAt(null)
      }}
      onFocus={() => {
        pointAt(part.id)
      }}
      onBlur={() => {
        pointAt(null)
      }}
      onClick={(event) => {
        // A press beside the name, the tick or a remedy chooses the line.
        if (event.target instanceof Element && event.target.closest('a, button, label') === null)
          onChoose(part.id)
      }}
    >
      <td className="cell-item">
        <span className="row-item" aria-hidden="true">
          {item}
        </span>
        <TickBox partId={part.id} name={part.name} isTicked={isTicked} />
      </td>
      <th scope="row" className="cell-name">
        <a className="row-name" href={formatAddress('part', item)}>
          {part.name}
        </a>
        <span className="row-below">
          <span className="row-recipe">
            {material.name} · {recipeWords(part)}
            {pieceWords(part)}
          </span>
          <Cautions
            findings={findingsOf(work)}
            mark={marks.length === 0 ? null : marks.join(', ')}
          />
        </span>
        <RowStatus partId={part.id} work={work} />
        <span className="row-weight" aria-hidden="true" style={{ scale: `${weight} 1` }} />
      </th>
      <td className={`cell-pieces figures${isCounting(work) ? ' row-working' : ''}`}>
        <span className="figure">
          {part.quantity}
          <span className="cell-unit"> ×</span>
        </span>
      </td>
      <FigureCell
        className="cell-grams"
        unit={massUnit()}
        mid={mass.mid}
        range={sum?.massFrom === 'weighed' ? 'weighed' : mass.range}
        rough={rough}
        byMark
      />
      <FigureCell
        className="cell-cost"
        unit={currency}
        {...(isCounted ? showMoney(totals.cost, currency) : NO_FIGURE)}
        rough={rough}
      />
      <FigureCell
        className="cell-hours"
        unit="h"
        {...(isCounted ? showTime(totals.timeS) : NO_FIGURE)}
        rough={rough}
      />
    </tr>
  )
})

/**
 * A weighing of the part as it was before; one that holds needs no words where there are figures.
 */
function weighedMark(sum: FrameRow | null): string | null {
  if (sum === null) return null
  if (sum.figures === null) return 'counts by the scale, without cost and hours'
  if (sum.changes.length === 0) return null
  const before = `weighed before its ${sum.changes.join(' and ')} changed`
  return sum.scaleRatio === null
    ? `${before}, what was reckoned then is not known: weigh it again or drop it`
    : before
}

function pieceWords(part: { readonly mirrored: number; readonly spares: number }): string {
  const mirrored = part.mirrored > 0 ? ` · ${part.mirrored} mirrored` : ''
  return part.spares > 0 ? `${mirrored} · and ${part.spares} spare` : mirrored
}
