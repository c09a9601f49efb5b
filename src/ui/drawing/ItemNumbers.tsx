import { memo, type KeyboardEvent } from 'react'
import type { Leader } from '../../core/drawing/placeLeaders.ts'
import { useIsPointedAt } from '../set/pointedItem.ts'

export interface NumberedItem {
  readonly id: string
  /** Number on its row of the list. */
  readonly number: number
  readonly name: string
  /**
   * What stands below the number: its grams, or what the drawing is toned by; empty while unknown.
   */
  readonly words: string
  /**
   * What is wrong with it, in a few words; null where nothing is. It takes the place of the words.
   */
  readonly fault: string | null
}

interface ItemNumbersProps {
  readonly items: readonly NumberedItem[]
  readonly leaders: ReadonlyMap<string, Leader>
  readonly chosenId: string | null
  readonly onHover: (item: string | null) => void
  readonly onChoose: (item: string) => void
}

/** What is pressed at the numbers: buttons in the order of the list, over the numbers drawn. */
export function ItemNumbers({ items, leaders, chosenId, onHover, onChoose }: ItemNumbersProps) {
  return items.map((item) => {
    const leader = leaders.get(item.id)
    if (leader === undefined) return null
    return (
      <ItemNumber
        key={item.id}
        item={item}
        leader={leader}
        isChosen={chosenId === item.id}
        onHover={onHover}
        onChoose={onChoose}
      />
    )
  })
}

interface ItemNumberProps extends Pick<ItemNumbersProps, 'onHover' | 'onChoose'> {
  readonly item: NumberedItem
  readonly leader: Leader
  readonly isChosen: boolean
}

const ItemNumber = memo(function ItemNumber(props: ItemNumberProps) {
  const { item, leader, isChosen, onHover, onChoose } = props
  const { id, number, name, words, fault } = item
  const isLit = useIsPointedAt(id) || isChosen
  return (
    <button
      type="button"
      data-item={number}
      className={`item-number item-number-${leader.side}${isLit ? ' item-number-lit' : ''}`}
      style={{ left: `${leader.number.x}px`, top: `${leader.number.y}px` }}
      aria-pressed={isChosen}
      aria-label={
        [`${number} ${name}`, words, fault ?? ''].filter(Boolean).join(', ') +
        (isChosen ? ': open its sheet' : ': choose')
      }
      onPointerEnter={() => {
        onHover(id)
      }}
      onPointerLeave={() => {
        onHover(null)
      }}
      onFocus={() => {
        onHover(id)
      }}
      onBlur={() => {
        onHover(null)
      }}
      onClick={() => {
        onChoose(id)
      }}
      onKeyDown={walkNumbers}
    />
  )
})

const WALKS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowUp: -1,
  ArrowRight: 1,
  ArrowDown: 1,
}

/** Arrows go from number to number in the order of the list; 1 to 9 jump. */
function walkNumbers(event: KeyboardEvent<HTMLButtonElement>): void {
  const own = event.currentTarget
  const all = [...(own.parentElement?.querySelectorAll<HTMLButtonElement>('.item-number') ?? [])]
  const step = WALKS[event.key]
  const next =
    step === undefined
      ? all.find((button) => button.dataset['item'] === event.key)
      : all[(all.indexOf(own) + step + all.length) % all.length]
  if (next === undefined) return
  event.preventDefault()
  next.focus()
}

interface NumberWordsProps {
  readonly items: readonly NumberedItem[]
  readonly leaders: ReadonlyMap<string, Leader>
  readonly chosenId: string | null
  readonly showsWords: boolean
}

/**
 * The numbers as they are drawn and printed, each where its leader line begins, with a figure of it
 * below.
 */
export function NumberWords({ items, leaders, chosenId, showsWords }: NumberWordsProps) {
  return (
    <g aria-hidden="true">
      {items.map((item) => {
        const leader = leaders.get(item.id)
        return leader === undefined ? null : (
          <NumberWord
            key={item.id}
            item={item}
            leader={leader}
            isChosen={chosenId === item.id}
            showsWords={showsWords}
          />
        )
      })}
    </g>
  )
}

interface NumberWordProps extends Omit<ItemNumberProps, 'onHover' | 'onChoose'> {
  readonly showsWords: boolean
}

const NumberWord = memo(function NumberWord(props: NumberWordProps) {
  const { item, leader, isChosen, showsWords } = props
  const { id, number, words, fault } = item
  const isLit = useIsPointedAt(id) || isChosen
  const colour = isLit ? ' item-words-lit' : fault === null ? '' : ' item-words-amber'
  const { x, y } = leader.number
  return (
    <g className={`item-words${colour}`} transform={`translate(${x} ${y})`}>
      <text y="6">{number}</text>
      {showsWords && (fault ?? words) !== '' ? (
        <text className="item-mass" y="20">
          {fault ?? words}
        </text>
      ) : null}
    </g>
  )
})
