import type { ReactNode } from 'react'
import { Button, Tooltip, TooltipTrigger } from 'react-aria-components'

/** A small mark that explains itself on hover and on focus. */
export function Tip({ mark, children, label }: TipProps) {
  return (
    <TooltipTrigger delay={150} closeDelay={80}>
      <Button className="tip-mark" aria-label={label}>
        {mark}
      </Button>
      <Tooltip className="tip" offset={6}>
        {children}
      </Tooltip>
    </TooltipTrigger>
  )
}

interface TipProps {
  readonly mark: string
  /** What a screen reader says for the mark; the tip itself follows as its description. */
  readonly label: string
  readonly children: ReactNode
}
