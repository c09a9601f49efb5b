import { toldWords } from '../../../core/words/toldWords.ts'
import { formatMoney, formatPercent } from '../../../core/words/format.ts'
import type { TwinEntry } from '../../../core/aircraft/report/types.ts'
import type { PartShape } from '../../../state/store/types.ts'
import { figureWords, pieceG, pieceSpan, spanWords } from '../words.ts'
import { TwinChoice } from './TwinChoice.tsx'
import { massUnit, lengthUnit } from '../../../core/words/shownUnits.ts'
import { markPad } from '../../fields/markPad.ts'

interface TwinTableProps {
  readonly parts: readonly TwinEntry[]
  readonly shapes: ReadonlyMap<string, PartShape>
  readonly currency: string
}

/** Which parts are flat, and what each would be in plate. */
export function TwinTable({ parts, shapes, currency }: TwinTableProps) {
  const cut = parts.flatMap(({ twin, ...entry }) => (twin === null ? [] : [{ ...entry, twin }]))
  const staying = parts.filter(({ twin }) => twin === null)
  const near = cut.flatMap(({ name, kind }) => (kind === 'bar' ? [name] : []))
  return (
    <>
      {cut.length === 0 ? null : (
        <table className="sides twins">
          <caption className="unseen">Flat parts cut from plate, one piece each</caption>
          <thead>
            <tr>
              <th scope="col">Part</th>
              <th scope="col" className="figures">
                One piece <small>{massUnit()}</small>
              </th>
              <th scope="col" className="figures">
                Cost <small>{currency}</small>
              </th>
              <th scope="col" className="figures">
                Stiffness <small>× printed</small>
              </th>
              <th scope="col" className="twin-choice-head">
                Plate <small>{lengthUnit()}</small>
              </th>
            </tr>
          </thead>
          <tbody>
            {cut.map(({ partId, name, quantity, kind, twin }) => (
              <tr key={partId}>
                <th scope="row">
                  {name}
                  <span className="range">
                    {kind === 'plate' ? 'flat' : 'nearly flat'}
                    {quantity === 1 ? '' : `, ${quantity} fly`}
                  </span>
                </th>
                <td className="figures" data-head={`one piece, ${massUnit()}`}>
                  <span data-pad={markPad(pieceG(twin.chosen.massG.mid))}>
                    {pieceG(twin.chosen.massG.mid)}
                  </span>
                  <span className="range">{pieceSpan(twin.chosen.massG)}</span>
                </td>
                <td className="figures" data-head="cost">
                  {formatMoney(twin.cost, currency)}
                  <span className="range">{formatPercent(twin.offcutShare)} offcut</span>
                </td>
                <td className="figures" data-head="stiffness, × printed">
                  {figureWords(twin.chosen.stiffness.mid, 1)}
                  <span className="range">{spanWords(twin.chosen.stiffness, '×', 1)}</span>
                </td>
                <td className="twin-choice" data-head={`plate, ${lengthUnit()}`}>
                  <TwinChoice
                    partId={partId}
                    name={name}
                    twin={twin}
                    outline={shapes.get(partId)?.outline ?? null}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {near.length === 0 ? null : (
        <p className="caution">
          A cut plate only stands in for {near.join(', ')}: the outline is not the same all the way
          up.
        </p>
      )}
      {staying.length === 0 ? null : (
        <>
          <p className="hint">Stay printed:</p>
          <ul className="staying">
            {staying.map(({ partId, name, words }) => (
              <li key={partId}>
                {name}: {toldWords(lowerFirst(words))}
              </li>
            ))}
          </ul>
        </>
      )}
      {cut.length === 0 ? null : (
        <p className="hint">
          Outlines are cut half-way up the part, in true millimetres: the finished edge, nothing
          taken off for the cutter. Judged as the part lies on the bed.
        </p>
      )}
    </>
  )
}

function lowerFirst(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1).replace(/\.$/, '')
}
