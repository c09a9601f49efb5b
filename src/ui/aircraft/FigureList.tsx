import type { ReactNode } from 'react'
import { HelpMark } from '../help/HelpMark.tsx'
import type { HelpWord } from '../help/helpWords.ts'

export interface ListedFigure {
  readonly words: string
  /** The word in them that wants telling. */
  readonly help?: HelpWord
  readonly figure: ReactNode
  /** Range or what else belongs behind the figure, in small print. */
  readonly small?: ReactNode
  readonly strong?: boolean
}

/** Words left, figures right, a hairline below: the ledger's own form. */
export function FigureList({ of }: { readonly of: readonly ListedFigure[] }) {
  return (
    <dl
      className={
        of.some(({ small }) => small !== undefined)
          ? 'terms craft-figures'
          : 'terms craft-figures craft-bare'
      }
    >
      {of.map(({ words, help, figure, small, strong = false }) => (
        <div key={words} className={strong ? 'craft-strong' : undefined}>
          <dt>
            {words}
            {help === undefined ? null : <HelpMark of={help} />}
          </dt>
          <dd>
            <span className="craft-fact">{figure}</span>
            {small === undefined ? null : <span className="range">{small}</span>}
          </dd>
        </div>
      ))}
    </dl>
  )
}
