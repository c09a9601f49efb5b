import type { ReactNode } from 'react'

export interface Fact {
  readonly words: string
  readonly figure: ReactNode
  /** Range or what else belongs behind the figure, in small print. */
  readonly small?: ReactNode
  readonly strong?: boolean
}

/** Words left, figures right, a hairline below: the ledger's own form. */
export function Facts({ of }: { readonly of: readonly Fact[] }) {
  return (
    <dl
      className={
        of.some(({ small }) => small !== undefined)
          ? 'facts craft-facts'
          : 'facts craft-facts craft-bare'
      }
    >
      {of.map(({ words, figure, small, strong = false }) => (
        <div key={words} className={strong ? 'craft-strong' : undefined}>
          <dt>{words}</dt>
          <dd>
            <span className="craft-fact">{figure}</span>
            {small === undefined ? null : <span className="range">{small}</span>}
          </dd>
        </div>
      ))}
    </dl>
  )
}
