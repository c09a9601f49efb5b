import type { LedgerRow } from '../../state/store/derived.ts'
import { printedTotals } from './printedTotals.ts'

export type ColumnId =
  'name' | 'pieces' | 'material' | 'recipe' | 'grams' | 'cost' | 'hours' | 'share'

/** How the ledger is ordered; `null` means as the parts came in. */
export type Order = { readonly column: ColumnId; readonly descending: boolean } | null

/**
 * Figures start with the heaviest, words with A; a third press brings back the order of arrival.
 */
export function nextOrder(order: Order, column: ColumnId): Order {
  const figuresFirst = FIGURES.has(column)
  if (order?.column !== column) return { column, descending: figuresFirst }
  if (order.descending === figuresFirst) return { column, descending: !figuresFirst }
  return null
}

export function sortRows(rows: readonly LedgerRow[], order: Order): readonly LedgerRow[] {
  if (order === null) return rows
  const sign = order.descending ? -1 : 1
  return rows.toSorted((a, b) => sign * compare(a, b, order.column))
}

const FIGURES: ReadonlySet<ColumnId> = new Set(['pieces', 'grams', 'cost', 'hours', 'share'])
const words = new Intl.Collator(undefined, { numeric: true })

function compare(a: LedgerRow, b: LedgerRow, column: ColumnId): number {
  switch (column) {
    case 'name':
      return words.compare(a.part.name, b.part.name)
    case 'pieces':
      return a.part.quantity + a.part.spares - b.part.quantity - b.part.spares
    case 'material':
      return words.compare(a.material.name, b.material.name)
    case 'recipe':
      return a.part.recipe.infillPct - b.part.recipe.infillPct
    case 'grams':
    case 'share':
      return figureOf(a, 'massG') - figureOf(b, 'massG')
    case 'cost':
      return figureOf(a, 'cost') - figureOf(b, 'cost')
    case 'hours':
      return figureOf(a, 'timeS') - figureOf(b, 'timeS')
  }
}

function figureOf({ sum }: LedgerRow, figure: 'massG' | 'cost' | 'timeS'): number {
  return sum === null ? -1 : printedTotals(sum)[figure].mid
}
