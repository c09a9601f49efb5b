import { useState, type ReactNode } from 'react'
import { Button, Tooltip, TooltipTrigger } from 'react-aria-components'

/** A small mark that explains itself on hover, on focus, and to a finger that presses it. */
export function Tip({ mark, children, label }: TipProps) {
  const [isOpen, setOpen] = useState(false)
  return (
    <TooltipTrigger delay={150} closeDelay={80} isOpen={isOpen} onOpenChange={setOpen}>
      <Button
        className="tip-mark"
        aria-label={label}
        onPress={({ pointerType }) => {
          if (pointerType === 'touch') setOpen(!isOpen)
        }}
      >
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
