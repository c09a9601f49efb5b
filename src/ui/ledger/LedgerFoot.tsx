import { leftOutOfAll, leftOutWords, piecesWords } from '../../core/frame/sayings.ts'
import type { FrameSum } from '../../core/frame/types.ts'
import { frameSum } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { showGrams, showMoney, showTime } from '../show.ts'
import { FigureCell } from './FigureCell.tsx'
import { massUnit } from '../../core/words/shownUnits.ts'

/**
 * The last line of the list: the mass of what flies; cost and hours of all that is printed, as in
 * the lines above.
 */
export function LedgerFoot() {
  const sums = useAppState(frameSum)
  const { pieces, printed, withSpares } = sums
  const words = footWords(sums)
  const currency = useAppState((state) => state.frame.prices.currency)
  if (printed.pieces === 0) return null
  return (
    <tfoot>
      <tr className="row-total">
        <td className="cell-item" />
        <th scope="row" className="cell-name">
          <span className="row-name-total">Printed, on the aircraft</span>
          {words === null ? null : <span className="row-below">{words}</span>}
        </th>
        <td className="cell-pieces figures">
          <span className="figure">
            {pieces.flying}
            <span className="cell-unit"> ×</span>
          </span>
        </td>
        <FigureCell
          className="cell-grams"
          unit={massUnit()}
          {...showGrams(printed.massG)}
          rough={false}
          byMark
        />
        <FigureCell
          className="cell-cost"
          unit={currency}
          {...showMoney(withSpares.cost, currency)}
          rough={false}
        />
        <FigureCell className="cell-hours" unit="h" {...showTime(withSpares.timeS)} rough={false} />
      </tr>
    </tfoot>
  )
}

/** Cost and hours count the spares too, and go without what the scale alone knows. */
function footWords({ pieces, leftOut }: FrameSum): string | null {
  const without = leftOutOfAll(leftOut)
  if (pieces.spares === 0) return without
  const all = `cost and hours of ${piecesWords(pieces.flying, pieces.spares)}`
  if (without === null) return all
  return leftOutWords(leftOut, 'mass') === null
    ? `${all} ${leftOutWords(leftOut, 'cost and hours')}`
    : `${all} · ${without}`
}
