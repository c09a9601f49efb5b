import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { Item } from '../../../core/model/aircraft.ts'
import { formatMoney } from '../../../core/words/format.ts'
import { boughtAircraft } from '../../../state/store/derived.ts'
import { useActions, useAppState } from '../../appContext.ts'
import { Section } from '../Section.tsx'
import { useAircraft, usePutAircraft } from '../useAircraft.ts'
import { tenthMass } from '../words.ts'
import { CatalogueForm } from './CatalogueForm.tsx'
import { ItemTable } from './ItemTable.tsx'
import { ScrewHelper } from './ScrewHelper.tsx'
import { ShelfList } from './ShelfList.tsx'
import { newItem } from './newItem.ts'

type Way = 'catalogue' | 'shelf' | 'screw'

const WAYS: readonly { readonly id: Way; readonly words: string }[] = [
  { id: 'catalogue', words: 'From the catalogue' },
  { id: 'shelf', words: 'From my shelf' },
  { id: 'screw', words: 'Find a screw length' },
]

/** Everything that flies and is not printed. */
export function ItemsSection() {
  const { aircraft, view, currency } = useAircraft()
  const putAircraft = usePutAircraft()
  const { tell } = useActions()
  const [way, setWay] = useState<Way | null>(null)
  const [openId, setOpenId] = useState<string | null>(null)
  const { items } = aircraft
  const bought = useAppState(boughtAircraft).items
  const { massG, cost } = view.ledger.bought

  const put = (next: readonly Item[], what: string) => {
    putAircraft({ items: next }, what)
  }
  const add = (item: Item) => {
    const same = items.find((each) => each.name === item.name && each.massG === item.massG)
    if (same === undefined) put([...items, item], `add “${item.name}”`)
    else {
      const quantity = same.quantity + item.quantity
      put(
        items.map((each) => (each === same ? { ...same, quantity } : each)),
        `add “${item.name}”`,
      )
    }
  }
  const typeIn = () => {
    const item = newItem()
    put([...items, item], 'add an item')
    setOpenId(item.id)
    setWay(null)
  }

  return (
    <Section
      title="Bolts and bought items"
      summary={
        bought.length === 0
          ? 'none yet'
          : `${bought.length} ${bought.length === 1 ? 'line' : 'lines'} · ` +
            `${tenthMass(massG)} · ${formatMoney(cost, currency)}`
      }
    >
      <div className="craft-full">
        {view.ledger.lines.length > 0 && bought.length === 0 ? (
          <p className="hint">
            Screws, motors, pack, camera: with them on the list the page knows the all-up weight.
          </p>
        ) : null}
        <ItemTable
          items={bought}
          ledger={view.ledger}
          currency={currency}
          openId={openId}
          onOpen={setOpenId}
          onChange={(item) => {
            put(
              items.map((each) => (each.id === item.id ? item : each)),
              `change “${item.name}”`,
            )
          }}
          onRemove={(item) => {
            put(
              items.filter((each) => each.id !== item.id),
              `remove “${item.name}”`,
            )
            tell(`Removed “${item.name}”.`)
            setOpenId(null)
          }}
        />
        {view.doubt.countedItems.some((item, i) => item !== view.doubt.items[i]) ? (
          <p className="hint">
            Each is what was typed; mass and sums are as the weighing of the whole aircraft corrects
            them.
          </p>
        ) : null}
        <div className="button-line craft-ways">
          {WAYS.map(({ id, words }) => (
            <Button
              key={id}
              className="quiet"
              aria-expanded={way === id}
              onPress={() => {
                setWay(way === id ? null : id)
              }}
            >
              {words}
            </Button>
          ))}
          <Button className="quiet" onPress={typeIn}>
            Type one in
          </Button>
        </div>
        {way === 'catalogue' ? <CatalogueForm currency={currency} onAdd={add} /> : null}
        {way === 'shelf' ? <ShelfList currency={currency} onAdd={add} /> : null}
        {way === 'screw' ? <ScrewHelper onAdd={add} /> : null}
      </div>
    </Section>
  )
}
