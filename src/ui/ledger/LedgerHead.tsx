import { memo } from 'react'
import { Button, Checkbox } from 'react-aria-components'
import { nextOrder, type ColumnId, type Order } from './columns.ts'
import { massUnit } from '../../core/words/shownUnits.ts'

interface LedgerHeadProps {
  readonly currency: string
  readonly order: Order
  readonly onOrder: (order: Order) => void
  readonly ticked: 'none' | 'some' | 'all'
  readonly onTickAll: (all: boolean) => void
}

interface Key {
  readonly id: ColumnId
  readonly words: string
  readonly unit?: string
}

/** What the list can be put in order by: one key a column, and three for the words below a name. */
const NAME_KEYS: readonly Key[] = [
  { id: 'name', words: 'Part' },
  { id: 'material', words: 'Material' },
  { id: 'recipe', words: 'Infill' },
  { id: 'share', words: 'Share' },
]

/** Keys that order the list, and the tick for all of it. */
export const LedgerHead = memo(function LedgerHead(props: LedgerHeadProps) {
  const { currency, order, onOrder, ticked, onTickAll } = props
  const figures: readonly Key[] = [
    { id: 'pieces', words: 'Qty' },
    { id: 'grams', words: 'Mass', unit: massUnit() },
    { id: 'cost', words: 'Cost', unit: currency },
    { id: 'hours', words: 'Time', unit: 'h:min' },
  ]
  const sort = ({ id, words, unit }: Key) => (
    <Button
      key={id}
      className="sort"
      aria-label={`Order by ${words}${unit === undefined ? '' : ` ${unit}`}`}
      onPress={() => {
        onOrder(nextOrder(order, id))
      }}
    >
      <span>
        {words}
        {unit === undefined ? null : <small> {unit}</small>}
      </span>
      {order?.column === id ? (
        <span className="sort-mark" aria-hidden="true">
          {order.descending ? '↓' : '↑'}
        </span>
      ) : null}
    </Button>
  )
  const direction = (keys: readonly Key[]) =>
    order === null || keys.every(({ id }) => id !== order.column)
      ? 'none'
      : order.descending
        ? 'descending'
        : 'ascending'
  return (
    <thead>
      <tr>
        <th scope="col" className="cell-item">
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
        <th scope="col" className="cell-name" aria-sort={direction(NAME_KEYS)}>
          <span className="sort-keys">{NAME_KEYS.map(sort)}</span>
        </th>
        {figures.map((key) => (
          <th
            key={key.id}
            scope="col"
            className={`cell-${key.id} figures`}
            aria-sort={direction([key])}
          >
            {sort(key)}
          </th>
        ))}
      </tr>
    </thead>
  )
})
