import { lazy, Suspense, useState } from 'react'
import { Button } from 'react-aria-components'
import { useAppState } from '../../appContext.ts'

const HabitFields = lazy(async () => {
  const { HabitFields: fields } = await import('./HabitFields.tsx')
  return { default: fields }
})

/**
 * The way to the printer's habits: most users never need them, so they are loaded when asked for.
 */
export function HabitsStep() {
  const known = useAppState((state) => Object.keys(state.frame.printer.habits ?? {}).length)
  const [open, setOpen] = useState(false)
  return (
    <section className="habits" aria-label="Habits of laying">
      <h3>Habits of laying</h3>
      <p className="hint">
        Toolpaths follow one geometry with different habits. {knownWords(known)}
      </p>
      <Button
        className="outlined"
        aria-expanded={open}
        onPress={() => {
          setOpen(!open)
        }}
      >
        {open ? 'Hide habits' : 'Show habits'}
      </Button>
      {open ? (
        <Suspense fallback={null}>
          <HabitFields />
        </Suspense>
      ) : null}
    </section>
  )
}

function knownWords(known: number): string {
  if (known === 0) return 'None of yours is known, so the usual ones are taken, with their doubt.'
  return known === 1
    ? 'One of yours is known; the usual ones are taken for the rest.'
    : `${known} of yours are known; the usual ones are taken for the rest.`
}
