import type { ReactNode } from 'react'

interface TotalFigureProps {
  readonly words: ReactNode
  readonly figure: string
  readonly unit?: string
  /** The range, or what else belongs below the figure. */
  readonly below?: ReactNode
  readonly lead?: boolean
}

/** One of the frame's totals. */
export function TotalFigure({ words, figure, unit, below, lead = false }: TotalFigureProps) {
  return (
    <div className={lead ? 'total total-lead' : 'total'}>
      <dt>{words}</dt>
      <dd>
        <span className="total-figure">{figure}</span>
        {unit === undefined ? null : <span className="total-unit"> {unit}</span>}
        {below === undefined ? null : <span className="total-range">{below}</span>}
      </dd>
    </div>
  )
}
