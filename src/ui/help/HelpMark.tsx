import { lazy, Suspense, useId, useRef, useState } from 'react'
import type { HelpWord } from './helpWords.ts'

const HelpCard = lazy(async () => ({ default: (await import('./HelpCard.tsx')).HelpCard }))

/**
 * A mark beside a word that tells what it is: pressed by mouse, finger or key. The words themselves
 * are fetched when one is first asked for.
 */
export function HelpMark({ of }: { readonly of: HelpWord }) {
  const [isOpen, setOpen] = useState(false)
  const button = useRef<HTMLButtonElement>(null)
  const id = useId()
  return (
    <>
      <button
        ref={button}
        type="button"
        className="help-mark"
        aria-label={`What is meant by ${of}`}
        aria-expanded={isOpen}
        aria-controls={isOpen ? id : undefined}
        onClick={() => {
          setOpen(!isOpen)
        }}
      >
        ?
      </button>
      {isOpen ? (
        <Suspense>
          <HelpCard
            id={id}
            of={of}
            mark={button}
            onClose={() => {
              setOpen(false)
            }}
          />
        </Suspense>
      ) : null}
    </>
  )
}
