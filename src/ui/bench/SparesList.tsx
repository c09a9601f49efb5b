import { piecesWords } from '../../core/frame/sayings.ts'
import type { FrameRow } from '../../core/frame/types.ts'
import { PIECES_LIMITS } from '../../core/data/limits.ts'
import { ledgerRows, type LedgerRow } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { usePartEdit } from '../part/usePartEdit.ts'
import { showGrams, showMoney, showTime } from '../show.ts'
import { massUnit } from '../../core/words/shownUnits.ts'

/** What lies in the bag: so many of each part are printed besides those that fly. */
export function SparesList() {
  const rows = useAppState(ledgerRows)
  const currency = useAppState((state) => state.frame.prices.currency)
  return (
    <ul className="spares">
      {rows.map((row) => (
        <SpareLine key={row.part.id} row={row} currency={currency} />
      ))}
    </ul>
  )
}

function SpareLine({ row, currency }: { readonly row: LedgerRow; readonly currency: string }) {
  const { part, sum } = row
  const write = usePartEdit(part.id)
  const { spares } = part
  return (
    <li>
      <span>{part.name}</span>
      <span className="quiet-text">
        {sum === null || spares === 0
          ? piecesWords(part.quantity, spares)
          : `${piecesWords(part.quantity, spares)} · ${moreWords(sum, currency)} more`}
      </span>
      <NumberBox
        label={`Spares of ${part.name}`}
        bare
        limits={PIECES_LIMITS.spares}
        value={spares}
        step={1}
        unit="spare"
        onChange={(count) => {
          write.edit({ spares: count })
        }}
      />
    </li>
  )
}

/** What the spare pieces take; of a part that only the scale knows, their grams. */
function moreWords({ figures, spares }: FrameRow, currency: string): string {
  const grams = `${showGrams(spares.massG).mid} ${massUnit()}`
  if (figures === null) return grams
  return `${grams}, ${showMoney(spares.cost, currency).mid} ${currency}, ${showTime(spares.timeS).mid} h`
}
