import { useEffect, useRef, type ReactNode } from 'react'

interface DrawnSheetProps {
  readonly title: ReactNode
  /** What stands beside the title, smaller: counts, and what to look at. */
  readonly below?: ReactNode
  readonly className?: string
  readonly children: ReactNode
  /** The title block; it closes every sheet. */
  readonly block: ReactNode
}

const FIGURES = [1, 2, 3, 4, 5, 6, 7, 8]
const LETTERS = ['A', 'B', 'C', 'D']

/**
 * A sheet of the set: frame with centring marks and zones after ISO 5457, title, body and title
 * block.
 */
export function DrawnSheet({ title, below, className = '', children, block }: DrawnSheetProps) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    // What had the focus went with the sheet before; without this it would be lost.
    if (document.activeElement === null || document.activeElement === document.body)
      heading.current?.focus({ preventScroll: true })
  }, [])
  return (
    <article className={`drawn-sheet ${className}`}>
      <div className="zone-marks" aria-hidden="true">
        {FIGURES.map((figure) => (
          <span key={figure} style={{ left: `${(figure - 0.5) * 12.5}%` }}>
            {figure}
          </span>
        ))}
        {LETTERS.map((letter, i) => (
          <span key={letter} className="zone-letter" style={{ top: `${(i + 0.5) * 25}%` }}>
            {letter}
          </span>
        ))}
      </div>
      <header className="sheet-title">
        <h2 ref={heading} tabIndex={-1}>
          {title}
        </h2>
        {below === undefined ? null : <div className="sheet-below">{below}</div>}
      </header>
      {children}
      {block}
    </article>
  )
}
