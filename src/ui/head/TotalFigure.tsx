import type { ReactNode } from 'react'

interface TotalFigureProps {
  readonly id: 'grams' | 'limit' | 'all-up' | 'pieces' | 'cost' | 'time' | 'carbon'
  readonly words: string
  readonly figure: ReactNode
  readonly unit?: string
  /** The range, or what else belongs beside the figure. */
  readonly below?: ReactNode
  /** The range, where there is no room for it. */
  readonly title?: string
  readonly lead?: boolean
  /** Beyond what the builder allows. */
  readonly isOver?: boolean
}

/** One of the frame's totals. */
export function TotalFigure(props: TotalFigureProps) {
  const { id, words, figure, unit, below, title, lead = false, isOver = false } = props
  return (
    <div className={`total total-${id}${lead ? ' total-lead' : ''}`} title={title}>
      <dt className="unseen">{words}</dt>
      <dd>
        <span className={isOver ? 'total-figure wrong-text' : 'total-figure'}>{figure}</span>
        {unit === undefined ? null : <span className="total-unit"> {unit}</span>}
        {title === undefined || title === '' ? null : <span className="unseen"> ({title})</span>}
        {below === undefined ? null : <span className="total-range"> {below}</span>}
      </dd>
    </div>
  )
}
