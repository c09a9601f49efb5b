import { useState } from 'react'
import { Button } from 'react-aria-components'
import { newId } from '../../../state/store/newId.ts'
import type { Item } from '../../../core/model/aircraft.ts'
import { formatMoney } from '../../../core/words/format.ts'
import { BASIS_WORDS, pieceMass } from '../words.ts'
import { dropFromShelf, shelfItems } from '../../../state/storage/shelf.ts'

interface ShelfListProps {
  readonly currency: string
  readonly onAdd: (item: Item) => void
}

/** Items of earlier projects, to take again. */
export function ShelfList({ currency, onAdd }: ShelfListProps) {
  const [items, setItems] = useState(shelfItems)
  return (
    <div className="craft-inset craft-inset-wide" role="group" aria-label="My shelf">
      {items.length === 0 ? (
        <p className="hint">
          Your shelf is empty. Open an item above and press “Keep on my shelf”: it stays in this
          browser for your next aircraft.
        </p>
      ) : (
        <ul className="shelf">
          {items.map((item) => (
            <li key={item.name}>
              <span>
                {item.name}
                <span className="range">
                  {pieceMass(item.massG)} {BASIS_WORDS[item.basis]},{' '}
                  {formatMoney(item.costEach, currency)}
                </span>
              </span>
              <Button
                className="quiet"
                aria-label={`Add ${item.name}`}
                onPress={() => {
                  onAdd({ ...item, id: newId() })
                }}
              >
                Add
              </Button>
              <Button
                className="quiet"
                aria-label={`Take ${item.name} off the shelf`}
                onPress={() => {
                  dropFromShelf(item.name)
                  setItems(shelfItems())
                }}
              >
                Take off
              </Button>
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}
