import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { Item } from '../../../core/model/aircraft.ts'
import { Choice } from '../../fields/Choice.tsx'
import { ITEM_LIMITS, PLACE_LIMITS } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { TextBox } from '../TextBox.tsx'
import { BodyFields } from './BodyFields.tsx'
import { ITEM_GROUPS, MASS_STATUSES } from '../../../core/data/itemKinds.ts'
import { GROUP_WORDS } from '../words.ts'
import { keepOnShelf } from '../../../state/storage/shelf.ts'

interface ItemPanelProps {
  readonly item: Item
  readonly currency: string
  readonly onChange: (item: Item) => void
  readonly onRemove: (item: Item) => void
}

const AXES = [
  { at: 0, label: 'Forward of middle' },
  { at: 1, label: 'Left of middle' },
  { at: 2, label: 'Above middle' },
] as const

/** Every field of one item. */
export function ItemPanel({ item, currency, onChange, onRemove }: ItemPanelProps) {
  const [kept, setKept] = useState<string | null>(null)
  const put = (patch: Partial<Item>) => {
    onChange({ ...item, ...patch })
  }
  const place = item.positionMm
  return (
    <div className="craft-inset item-fields" role="group" aria-label={`Item ${item.name}`}>
      <TextBox
        label="Name"
        value={item.name}
        onChange={(name) => {
          put({ name })
        }}
      />
      <Choice
        label="Group"
        value={item.group}
        options={ITEM_GROUPS.map((id) => ({ id, name: GROUP_WORDS[id] }))}
        onChange={(group) => {
          put({ group })
        }}
      />
      <NumberBox
        label="Pieces"
        limits={ITEM_LIMITS.quantity}
        value={item.quantity}
        step={1}
        onChange={(quantity) => {
          put({ quantity })
        }}
      />
      <NumberBox
        label="Mass of one"
        limits={ITEM_LIMITS.massG}
        value={item.massG}
        step={0.01}
        digits={3}
        unit="g"
        onChange={(massG) => {
          put({ massG, basis: 'typed' })
        }}
      />
      <NumberBox
        label="Cost of one"
        limits={ITEM_LIMITS.costEach}
        value={item.costEach}
        step={0.01}
        unit={currency}
        onChange={(costEach) => {
          put({ costEach })
        }}
      />
      <Choice
        label="Its mass is"
        value={item.status}
        options={MASS_STATUSES.map((id) => ({ id, name: id }))}
        onChange={(status) => {
          put({ status })
        }}
      />
      {place === null ? null : (
        <>
          {AXES.map(({ at, label }) => (
            <NumberBox
              key={at}
              label={label}
              limits={PLACE_LIMITS.positionMm}
              value={place[at]}
              step={1}
              digits={1}
              unit="mm"
              onChange={(mm) => {
                put({
                  positionMm: [
                    at === 0 ? mm : place[0],
                    at === 1 ? mm : place[1],
                    at === 2 ? mm : place[2],
                  ],
                })
              }}
            />
          ))}
        </>
      )}
      <BodyFields
        body={item.body}
        onChange={(body) => {
          const { body: _old, ...rest } = item
          onChange(body === undefined ? rest : { ...rest, body })
        }}
      />
      <div className="button-line item-buttons">
        <Button
          className="quiet"
          onPress={() => {
            put({ positionMm: place === null ? [0, 0, 0] : null })
          }}
        >
          {place === null ? 'Give it a place' : 'Take its place away'}
        </Button>
        <Button
          className="quiet"
          onPress={() => {
            setKept(keepOnShelf(item) ? 'On your shelf.' : 'This browser keeps nothing.')
          }}
        >
          Keep on my shelf
        </Button>
        <Button
          className="quiet"
          onPress={() => {
            onRemove(item)
          }}
        >
          Remove
        </Button>
        <span role="status" className="hint">
          {kept}
        </span>
      </div>
    </div>
  )
}
