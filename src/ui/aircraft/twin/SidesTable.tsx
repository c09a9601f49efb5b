import type { ReactNode } from 'react'
import { formatHours, formatMoney } from '../../../core/words/format.ts'
import type { TwinEntry } from '../../../core/aircraft/report/types.ts'
import type { FrameSide, FrameSides } from '../../../core/aircraft/twin/sides.ts'
import { figureWords, moneySpan, spanG, spanWords, tenthMass } from '../words.ts'

interface SidesTableProps {
  readonly sides: FrameSides
  readonly plate: string
  readonly currency: string
  readonly parts: readonly TwinEntry[]
}

/** Printed, cut and bought side by side. */
export function SidesTable({ sides, plate, currency, parts }: SidesTableProps) {
  const columns: { readonly name: string; readonly side: FrameSide }[] = [
    { name: 'Printed', side: sides.printed },
  ]
  if (sides.cut !== null)
    columns.push({ name: `Flat parts in ${plate.toLowerCase()}`, side: sides.cut })
  if (sides.bought !== null) columns.push({ name: 'Bought in carbon', side: sides.bought })
  const rows: (readonly [string, (side: FrameSide) => ReactNode])[] = [
    [
      'Frame',
      ({ massG }) => withSpan(tenthMass(massG.mid), massG.low === massG.high ? null : spanG(massG)),
    ],
    [
      'Cost of what flies',
      ({ cost }) => withSpan(formatMoney(cost.mid, currency), moneySpan(cost, currency)),
    ],
    ['Still to print', ({ printS }) => (printS.mid > 0 ? formatHours(printS.mid) : 'nothing')],
    ['Waiting for it', ({ waitDays }) => (waitDays > 0 ? waitWords(waitDays) : 'none')],
    ['All-up', ({ auwG }) => tenthMass(auwG.mid)],
  ]
  if (columns.some(({ side }) => side.hover !== null)) {
    rows.push([
      'Hover',
      ({ hover }) =>
        hover === null
          ? '–'
          : withSpan(
              `${figureWords(hover.hoverMin.mid, 1)} min`,
              spanWords(hover.hoverMin, 'min', 1),
            ),
    ])
  }
  return (
    <>
      <table className="sides">
        <caption className="unseen">The frame printed and in carbon, side by side</caption>
        <thead>
          <tr>
            <td />
            {columns.map(({ name }) => (
              <th key={name} scope="col" className="figures">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([words, figure]) => (
            <tr key={words}>
              <th scope="row">{words}</th>
              {columns.map(({ name, side }) => (
                <td key={name} className="figures">
                  {figure(side)}
                </td>
              ))}
            </tr>
          ))}
          {sides.cut === null ? null : (
            <tr>
              <th scope="row">Bending stiffness of flat parts</th>
              {columns.map(({ name }, at) => (
                <td key={name} className="figures">
                  {at === 0 ? '1 ×' : name.startsWith('Flat') ? stiffnessWords(parts) : '–'}
                </td>
              ))}
            </tr>
          )}
        </tbody>
      </table>
      {sides.cut === null ? null : (
        <p className="hint">
          Stiffness is that of each part bent lengthwise by a load from above, known to about 30 %
          for the printed one. Twist and sideways loads are not compared.
        </p>
      )}
    </>
  )
}

function withSpan(figure: string, span: string | null) {
  return (
    <>
      {figure}
      {span === null || span === figure ? null : <span className="range">{span}</span>}
    </>
  )
}

function waitWords(days: number): string {
  const shown = figureWords(days, Number.isInteger(days) ? 0 : 1)
  return shown === '1' ? '1 day' : `${shown} days`
}

/** From the least to the stiffest of the cut parts. */
function stiffnessWords(parts: readonly TwinEntry[]): string {
  const over = parts.flatMap(({ twin }) => (twin === null ? [] : [twin.chosen.stiffness.mid]))
  if (over.length === 0) return '–'
  return spanWords({ low: Math.min(...over), mid: 0, high: Math.max(...over) }, '×', 1)
}
