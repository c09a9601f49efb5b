import { Fragment } from 'react'
import { Button } from 'react-aria-components'
import type { AircraftLedger } from '../../../core/frame/ledger.ts'
import type { Item } from '../../../core/model/aircraft.ts'
import { showFixed } from '../../show.ts'
import { ITEM_GROUPS } from '../../../core/data/itemKinds.ts'
import { BASIS_WORDS, GROUP_WORDS, pieceG, tenthG, pieceMass } from '../words.ts'
import { ItemPanel } from './ItemPanel.tsx'
import { massUnit } from '../../../core/words/shownUnits.ts'
import { markPad } from '../../fields/markPad.ts'

/** Lines of joints change with them, and with nothing else. */
const isFromJoints = ({ sitesMm }: Item): boolean => sitesMm !== undefined
const basisWords = (item: Item): string =>
  isFromJoints(item) ? 'from joints' : BASIS_WORDS[item.basis]

interface ItemTableProps {
  readonly items: readonly Item[]
  readonly ledger: AircraftLedger
  readonly currency: string
  readonly openId: string | null
  readonly onOpen: (id: string | null) => void
  readonly onChange: (item: Item) => void
  readonly onRemove: (item: Item) => void
}

/** The list, by group; a line opens in place. */
export function ItemTable(props: ItemTableProps) {
  const { items, ledger, currency, openId, onOpen, onChange, onRemove } = props
  if (items.length === 0) return null
  const countedG = new Map(ledger.lines.map(({ id, massTotalG }) => [id, massTotalG]))
  return (
    <table className="items">
      <caption className="unseen">Bought items by group</caption>
      <thead>
        <tr>
          <th scope="col">Item</th>
          <th scope="col" className="figures">
            Pieces
          </th>
          <th scope="col" className="figures wide-only">
            Each <small>{massUnit()}</small>
          </th>
          <th scope="col" className="figures">
            Mass <small>{massUnit()}</small>
          </th>
          <th scope="col" className="figures wide-only">
            Cost each <small>{currency}</small>
          </th>
          <th scope="col" className="wide-only item-word">
            Status
          </th>
          <th scope="col" className="wide-only item-word">
            From
          </th>
        </tr>
      </thead>
      {ITEM_GROUPS.map((group) => {
        const own = items.filter((item) => item.group === group)
        if (own.length === 0) return null
        const massG = ledger.groups.find((share) => share.group === group)?.massG ?? 0
        return (
          <tbody key={group}>
            <tr className="items-group">
              <th scope="rowgroup" colSpan={2}>
                {GROUP_WORDS[group]}
              </th>
              <td className="wide-only" />
              <td className="figures">{tenthG(massG)}</td>
              <td className="wide-only" colSpan={3} />
            </tr>
            {own.map((item) => (
              <Fragment key={item.id}>
                <tr className={item.id === openId ? 'item item-open' : 'item'}>
                  <th scope="row">
                    {isFromJoints(item) ? (
                      item.name
                    ) : (
                      <Button
                        className="craft-opener"
                        aria-expanded={item.id === openId}
                        onPress={() => {
                          onOpen(item.id === openId ? null : item.id)
                        }}
                      >
                        {item.name}
                        <span aria-hidden="true" className="caret" />
                      </Button>
                    )}
                    <span className="range narrow-only">
                      {pieceMass(item.massG)} each, {basisWords(item)}
                    </span>
                  </th>
                  <td className="figures">{item.quantity}</td>
                  <td className="figures wide-only" data-pad={markPad(pieceG(item.massG))}>
                    {pieceG(item.massG)}
                  </td>
                  <td className="figures item-mass">{tenthG(countedG.get(item.id) ?? 0)}</td>
                  <td className="figures wide-only">{showFixed(item.costEach)}</td>
                  <td className="wide-only item-word quiet-text">{item.status}</td>
                  <td className="wide-only item-word quiet-text">{basisWords(item)}</td>
                </tr>
                {item.id === openId ? (
                  <tr className="item-panel">
                    <td colSpan={7}>
                      <ItemPanel
                        item={item}
                        currency={currency}
                        onChange={onChange}
                        onRemove={onRemove}
                      />
                    </td>
                  </tr>
                ) : null}
              </Fragment>
            ))}
          </tbody>
        )
      })}
    </table>
  )
}
