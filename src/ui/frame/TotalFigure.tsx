import type { ReactNode } from 'react'

interface TotalFigureProps {
  readonly id: 'grams' | 'pieces' | 'cost' | 'time' | 'carbon'
  readonly words: ReactNode
  readonly figure: string
  readonly unit?: string
  /** The range, or what else belongs below the figure. */
  readonly below?: ReactNode
  readonly lead?: boolean
  /** Beyond what the builder allows. */
  readonly isOver?: boolean
}

/** One of the frame's totals. */
export function TotalFigure(props: TotalFigureProps) {
  const { id, words, figure, unit, below, lead = false, isOver = false } = props
  return (
    <div className={`total total-${id}${lead ? ' total-lead' : ''}`}>
      <dt>{words}</dt>
      <dd>
        <span className={isOver ? 'total-figure wrong-text' : 'total-figure'}>{figure}</span>
        {unit === undefined ? null : <span className="total-unit"> {unit}</span>}
        {below === undefined ? null : <span className="total-range">{below}</span>}
      </dd>
    </div>
  )
}
