import type { ReactNode } from 'react'
import { formatHours, formatMoney } from '../../../core/words/format.ts'
import type { TwinEntry } from '../../../core/aircraft/report/types.ts'
import type { FrameSide, FrameSides } from '../../../core/aircraft/twin/sides.ts'
import { SideBySide, withSpan, type NamedSide } from './SideBySide.tsx'
import { figureWords, moneySpan, spanG, spanWords, tenthMass } from '../words.ts'

interface SidesTableProps {
  readonly sides: FrameSides
  readonly plate: string
  readonly currency: string
  readonly parts: readonly TwinEntry[]
}

/** Printed, cut and bought side by side. */
export function SidesTable({ sides, plate, currency, parts }: SidesTableProps) {
  const columns: NamedSide<FrameSide>[] = [{ name: 'Printed', side: sides.printed }]
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
  if (sides.cut !== null) {
    rows.push([
      'Bending stiffness of flat parts',
      (side) => (side === sides.printed ? '1 ×' : side === sides.cut ? stiffnessWords(parts) : '–'),
    ])
  }
  return (
    <>
      <SideBySide caption="The frame printed and in carbon, side by side" {...{ columns, rows }} />
      {sides.cut === null ? null : (
        <p className="hint">
          Stiffness is that of each part bent lengthwise by a load from above, known to about 30 %
          for the printed one. Twist and sideways loads are not compared.
        </p>
      )}
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
