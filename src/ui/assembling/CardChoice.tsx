import { useRef, type KeyboardEvent, type ReactNode, type RefObject } from 'react'

export interface Card {
  readonly key: string
  /** Said in full to readers of a screen. */
  readonly label: string
  readonly picture: ReactNode
  readonly words: ReactNode
}

interface CardChoiceProps {
  readonly name: string
  readonly cards: readonly Card[]
  readonly at: number
  readonly onChange: (at: number) => void
  readonly group?: RefObject<HTMLDivElement | null>
}

/** One of a few pictures: a radio group, walked by arrows. */
export function CardChoice({ name, cards, at, onChange, group }: CardChoiceProps) {
  const own = useRef<HTMLDivElement>(null)
  const place = group ?? own
  const walk = (event: KeyboardEvent) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key]
    if (step === undefined || cards.length === 0) return
    event.preventDefault()
    event.stopPropagation()
    const next = (at + step + cards.length) % cards.length
    onChange(next)
    place.current?.querySelectorAll<HTMLElement>('[role=radio]')[next]?.focus()
  }
  return (
    <div ref={place} className="cards" role="radiogroup" aria-label={name}>
      {cards.map(({ key, label, picture, words }, i) => (
        <button
          key={key}
          type="button"
          role="radio"
          className="card"
          aria-checked={i === at}
          aria-label={label}
          tabIndex={i === at ? 0 : -1}
          onKeyDown={walk}
          onClick={() => {
            onChange(i)
          }}
        >
          {picture}
          <span className="card-words">{words}</span>
        </button>
      ))}
    </div>
  )
}
