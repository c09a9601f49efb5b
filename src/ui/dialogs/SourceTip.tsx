import type { Sourced, SourceMark } from '../../core/model/figures.ts'
import { Tip } from '../fields/Tip.tsx'

const MARKS: Readonly<Record<SourceMark, { readonly letter: string; readonly words: string }>> = {
  read: { letter: 'r', words: 'Read in' },
  derived: { letter: 'd', words: 'Derived from' },
  memory: { letter: 'm', words: 'Not looked up' },
  weak: { letter: 'w', words: 'Weak source' },
  'common practice': { letter: 'c', words: 'Common practice' },
  user: { letter: 'you', words: 'Typed by you' },
}

/** The letter behind a number; hover or focus tells the whole source. */
export function SourceTip({ of, what }: { readonly of: Sourced; readonly what: string }) {
  const { letter, words } = MARKS[of.mark]
  return (
    <Tip mark={letter} label={`Source of ${what}`}>
      {words}: {of.source}
    </Tip>
  )
}
