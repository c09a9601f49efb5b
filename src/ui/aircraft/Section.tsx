import { useId, type ReactNode } from 'react'
import { HelpMark } from '../help/HelpMark.tsx'
import type { HelpWord } from '../help/helpWords.ts'

interface SectionProps {
  readonly title: string
  /** The section in one line. */
  readonly summary: ReactNode
  readonly children: ReactNode
  /** The word of the title that wants telling. */
  readonly help?: HelpWord
  /** False where it would print nothing but empty fields. */
  readonly onPaper?: boolean
}

/** One region of a sheet: its name, itself in one line, and all of it below. */
export function Section({ title, summary, children, help, onPaper = true }: SectionProps) {
  const id = useId()
  return (
    <section className={onPaper ? 'craft' : 'craft screen-only'} aria-labelledby={`${id}-title`}>
      <div className="craft-line">
        <h3 id={`${id}-title`} className="craft-title">
          {title}
        </h3>
        {help === undefined ? null : <HelpMark of={help} />}
        <p className="craft-summary">{summary}</p>
      </div>
      <div className="craft-body">{children}</div>
    </section>
  )
}
