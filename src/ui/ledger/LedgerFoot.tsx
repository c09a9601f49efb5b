import { leftOutOfAll, piecesWords } from '../../core/frame/sayings.ts'
import { frameSum } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { showGrams, showMoney, showTime } from '../show.ts'
import { FigureCell } from './FigureCell.tsx'

/** The last line of the list: the mass of what flies; cost and hours of all that is printed, as in the lines above. */
export function LedgerFoot() {
  const { pieces, printed, withSpares, leftOut } = useAppState(frameSum)
  const without = leftOutOfAll(leftOut)
  const currency = useAppState((state) => state.frame.prices.currency)
  if (printed.pieces === 0) return null
  return (
    <tfoot>
      <tr className="row-total">
        <td className="cell-item" />
        <th scope="row" className="cell-name">
          <span className="row-name-total">Printed, on the aircraft</span>
          {pieces.spares === 0 && without === null ? null : (
            <span className="row-below">
              {[
                ...(pieces.spares === 0
                  ? []
                  : [`cost and hours of ${piecesWords(pieces.flying, pieces.spares)}`]),
                ...(without === null ? [] : [without]),
              ].join(' · ')}
            </span>
          )}
        </th>
        <td className="cell-pieces figures">
          <span className="figure">
            {pieces.flying}
            <span className="cell-unit"> ×</span>
          </span>
        </td>
        <FigureCell className="cell-grams" unit="g" {...showGrams(printed.massG)} rough={false} />
        <FigureCell
          className="cell-cost"
          unit={currency}
          {...showMoney(withSpares.cost)}
          rough={false}
        />
        <FigureCell className="cell-hours" unit="h" {...showTime(withSpares.timeS)} rough={false} />
      </tr>
    </tfoot>
  )
}
