import type { Leader } from '../../../core/drawing/placeLeaders.ts'

export interface NumberedItem {
  readonly id: string
  /** Number on its row of the list. */
  readonly number: number
  readonly name: string
  /** Mass of its pieces, for the eye; empty while unknown. */
  readonly mass: string
}

interface ItemNumbersProps {
  readonly items: readonly NumberedItem[]
  readonly leaders: ReadonlyMap<string, Leader>
  readonly litId: string | null
  readonly showsMass: boolean
  readonly onHover: (item: string | null) => void
  readonly onChoose: (item: string) => void
}

/** The numbers beside the drawing, as buttons in the order of the list; each stands where its leader line begins. */
export function ItemNumbers(props: ItemNumbersProps) {
  const { items, leaders, litId, showsMass, onHover, onChoose } = props
  return items.map(({ id, number, name, mass }) => {
    const leader = leaders.get(id)
    if (leader === undefined) return null
    return (
      <button
        key={id}
        type="button"
        className={`item-number item-number-${leader.side}${litId === id ? ' item-number-lit' : ''}`}
        style={{ left: `${leader.number.x}px`, top: `${leader.number.y}px` }}
        aria-label={`${number} ${name}${mass === '' ? '' : `, ${mass} g`}: open`}
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
      >
        {number}
        {showsMass && mass !== '' ? <span className="item-mass">{mass} g</span> : null}
      </button>
    )
  })
}
