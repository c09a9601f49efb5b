import { formatMoney } from '../../core/words/format.ts'
import { FigureList } from '../aircraft/FigureList.tsx'
import { useCostBlame } from '../set/useCostBlame.ts'

const SHOWN = 4

/** What would make the frame's cost surer. */
export function CostDoubt({ currency }: { readonly currency: string }) {
  const blame = useCostBlame()
  if (blame.length === 0) return null
  return (
    <>
      <h3>What the frame’s cost is unsure by</h3>
      <FigureList
        of={blame.slice(0, SHOWN).map(({ name, money }) => ({
          words: name,
          figure: `± ${formatMoney(money, currency)}`,
        }))}
      />
      <p className="hint">
        Each alone, 19 times in 20; together they add up to less. A price typed with its material
        and a clock time take theirs away; a draw read from a plug-in meter moves the middle.
      </p>
    </>
  )
}
