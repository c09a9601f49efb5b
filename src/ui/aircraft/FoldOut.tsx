import { useState, type ReactNode } from 'react'
import { Button } from 'react-aria-components'

interface FoldOutProps {
  /** On the button. */
  readonly opens: string
  /** What the fields are, for those who cannot see them. */
  readonly about: string
  readonly children: (fold: () => void) => ReactNode
}

/** Fields that only some builders need, behind a button. */
export function FoldOut({ opens, about, children }: FoldOutProps) {
  const [isOpen, setOpen] = useState(false)
  return (
    <>
      <div className="button-line">
        <Button
          className="quiet"
          aria-expanded={isOpen}
          onPress={() => {
            setOpen(!isOpen)
          }}
        >
          {opens}
        </Button>
      </div>
      {isOpen ? (
        <div className="craft-inset" role="group" aria-label={about}>
          {children(() => {
            setOpen(false)
          })}
        </div>
      ) : null}
    </>
  )
}
