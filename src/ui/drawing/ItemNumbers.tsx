import type { KeyboardEvent } from 'react'
import type { Leader } from '../../core/drawing/placeLeaders.ts'

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
  readonly litId: string | null
  readonly chosenId: string | null
  readonly onHover: (item: string | null) => void
  readonly onChoose: (item: string) => void
}

/** What is pressed at the numbers: buttons in the order of the list, over the numbers drawn. */
export function ItemNumbers(props: ItemNumbersProps) {
  const { items, leaders, litId, chosenId, onHover, onChoose } = props
  return items.map(({ id, number, name, words, fault }) => {
    const leader = leaders.get(id)
    if (leader === undefined) return null
    return (
      <button
        key={id}
        type="button"
        data-item={number}
        className={`item-number item-number-${leader.side}${litId === id || chosenId === id ? ' item-number-lit' : ''}`}
        style={{ left: `${leader.number.x}px`, top: `${leader.number.y}px` }}
        aria-pressed={chosenId === id}
        aria-label={
          [`${number} ${name}`, words, fault ?? ''].filter(Boolean).join(', ') +
          (chosenId === id ? ': open its sheet' : ': choose')
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
}

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
  readonly litIds: readonly (string | null)[]
  readonly showsWords: boolean
}

/**
 * The numbers as they are drawn and printed, each where its leader line begins, with a figure of it
 * below.
 */
export function NumberWords({ items, leaders, litIds, showsWords }: NumberWordsProps) {
  return (
    <g aria-hidden="true">
      {items.map(({ id, number, words, fault }) => {
        const at = leaders.get(id)?.number
        if (at === undefined) return null
        const lit = litIds.includes(id) ? ' item-words-lit' : ''
        const colour = lit === '' && fault !== null ? ' item-words-amber' : lit
        return (
          <g key={id} className={`item-words${colour}`} transform={`translate(${at.x} ${at.y})`}>
            <text y="6">{number}</text>
            {showsWords && (fault ?? words) !== '' ? (
              <text className="item-mass" y="20">
                {fault ?? words}
              </text>
            ) : null}
          </g>
        )
      })}
    </g>
  )
}
