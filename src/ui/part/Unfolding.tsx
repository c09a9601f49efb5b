import { useState, type ReactNode } from 'react'
import { Button } from 'react-aria-components'

/** Open once, open for every part of this visit; by the words that open it. */
const openAlready = new Set<string>()

interface UnfoldingProps {
  readonly opens: string
  readonly closes: string
  /** Drawn while it is open. */
  readonly children: () => ReactNode
}

/** A part of the part's sheet that is unfolded by a button. */
export function Unfolding({ opens, closes, children }: UnfoldingProps) {
  const [isOpen, setOpen] = useState(openAlready.has(opens))
  return (
    <div className="part-rest">
      <Button
        className="quiet"
        aria-expanded={isOpen}
        onPress={() => {
          if (isOpen) openAlready.delete(opens)
          else openAlready.add(opens)
          setOpen(!isOpen)
        }}
      >
        {isOpen ? closes : opens}
      </Button>
      {isOpen ? children() : null}
    </div>
  )
}
