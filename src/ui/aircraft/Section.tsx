import { useId, type ReactNode } from 'react'

interface SectionProps {
  readonly title: string
  /** The section in one line. */
  readonly summary: ReactNode
  readonly children: ReactNode
}

/** One region of a sheet: its name, itself in one line, and all of it below. */
export function Section({ title, summary, children }: SectionProps) {
  const id = useId()
  return (
    <section className="craft" aria-labelledby={`${id}-title`}>
      <div className="craft-line">
        <h3 id={`${id}-title`} className="craft-title">
          {title}
        </h3>
        <p className="craft-summary">{summary}</p>
      </div>
      <div className="craft-body">{children}</div>
    </section>
  )
}
