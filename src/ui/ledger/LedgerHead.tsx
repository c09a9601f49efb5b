import { Button, Checkbox } from 'react-aria-components'
import { nextOrder, type ColumnId, type Order } from './columns.ts'

interface LedgerHeadProps {
  readonly currency: string
  readonly order: Order
  readonly onOrder: (order: Order) => void
  readonly ticked: 'none' | 'some' | 'all'
  readonly onTickAll: (all: boolean) => void
}

interface Column {
  readonly id: ColumnId
  readonly words: string
  readonly unit?: string
  readonly figures?: true
}

export function LedgerHead({ currency, order, onOrder, ticked, onTickAll }: LedgerHeadProps) {
  const columns: readonly Column[] = [
    { id: 'name', words: 'Part' },
    { id: 'pieces', words: 'Pieces', figures: true },
    { id: 'material', words: 'Material' },
    { id: 'recipe', words: 'Recipe' },
    { id: 'grams', words: 'Mass', unit: 'g', figures: true },
    { id: 'cost', words: 'Cost', unit: currency, figures: true },
    { id: 'hours', words: 'Time', unit: 'h:min', figures: true },
    { id: 'share', words: 'Share', unit: '% of g', figures: true },
  ]
  return (
    <thead>
      <tr>
        <th scope="col" className="cell-tick">
          <Checkbox
            className="tick"
            aria-label="Tick all parts"
            isSelected={ticked === 'all'}
            isIndeterminate={ticked === 'some'}
            onChange={onTickAll}
          >
            <span className="tick-box" />
          </Checkbox>
        </th>
        {columns.map(({ id, words, unit, figures }) => (
          <th
            key={id}
            scope="col"
            className={`cell-${id}${figures === true ? ' figures' : ''}`}
            aria-sort={
              order?.column !== id ? 'none' : order.descending ? 'descending' : 'ascending'
            }
          >
            <Button
              className="sort"
              onPress={() => {
                onOrder(nextOrder(order, id))
              }}
            >
              <span>
                {words}
                {unit === undefined ? null : <small> {unit}</small>}
              </span>
              <span className="sort-mark" aria-hidden="true">
                {order?.column !== id ? '' : order.descending ? '↓' : '↑'}
              </span>
            </Button>
          </th>
        ))}
      </tr>
    </thead>
  )
}
