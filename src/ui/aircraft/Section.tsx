import { startTransition, useId, useState, type ReactNode } from 'react'
import { Button } from 'react-aria-components'

interface SectionProps {
  readonly title: string
  /** The section in one line, seen while it is closed too. */
  readonly summary: ReactNode
  readonly children: () => ReactNode
}

/** One line of the page that opens in place; nothing inside is worked out while it is closed. */
export function Section({ title, summary, children }: SectionProps) {
  const [isOpen, setOpen] = useState(false)
  const id = useId()
  return (
    <section className={isOpen ? 'craft craft-open' : 'craft'} aria-labelledby={`${id}-title`}>
      <div className="craft-line">
        <h2 id={`${id}-title`}>
          <Button
            className="craft-opener"
            aria-expanded={isOpen}
            {...(isOpen ? { 'aria-controls': `${id}-body` } : {})}
            onPress={() => {
              // Drawn in small steps, between which the page takes input.
              startTransition(() => {
                setOpen(!isOpen)
              })
            }}
          >
            {title}
            <span aria-hidden="true" className="caret" />
          </Button>
        </h2>
        <p className="craft-summary">{summary}</p>
      </div>
      {isOpen ? (
        <div id={`${id}-body`} className="craft-body">
          {children()}
        </div>
      ) : null}
    </section>
  )
}
