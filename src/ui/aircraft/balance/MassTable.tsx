import type { FrameBalance } from '../../../core/aircraft/balance/frameBalance.ts'
import { lengthUnit, massUnit } from '../../../core/words/shownUnits.ts'
import { markPad } from '../../fields/markPad.ts'
import { showMm, trueMinus } from '../../show.ts'
import { pieceG } from '../words.ts'

interface MassTableProps {
  readonly id: string
  readonly balance: FrameBalance
}

/** Every mass that is drawn as a circle, and where its middle is. */
export function MassTable({ id, balance }: MassTableProps) {
  // Two pieces may share a name and a place, and nothing here moves.
  const rows = balance.placed.map((mass, index) => ({ ...mass, key: `${mass.id} ${index}` }))
  return (
    <details id={id} className="picture-twin">
      <summary>Both views as a table</summary>
      <div className="wide-table">
        <table className="sides">
          <caption className="unseen">Masses and their middles, from the middle</caption>
          <thead>
            <tr>
              <th scope="col">Mass</th>
              <th scope="col" className="figures">
                {massUnit()}
              </th>
              {['Forward', 'Left', 'Up'].map((way) => (
                <th key={way} scope="col" className="figures">
                  {way} <small>{lengthUnit()}</small>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ key, name, massG, centreMm }) => (
              <tr key={key}>
                <th scope="row">{name}</th>
                <td className="figures" data-pad={markPad(pieceG(massG))}>
                  {pieceG(massG)}
                </td>
                {(['x', 'y', 'z'] as const).map((axis, k) => (
                  <td key={axis} className="figures">
                    {trueMinus(showMm(centreMm[k] ?? 0, 0))}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  )
}
