import { memo } from 'react'

interface FigureCellProps {
  readonly className: string
  /** What a phone shows in front of or behind the figure, where the table's head is gone. */
  readonly unit: string
  /** Null while there is no figure. */
  readonly mid: string | null
  readonly range: string
  readonly rough: boolean
}

/**
 * A figure with its range in small print below; "~" marks one that still rests on volume and area
 * alone.
 */
export const FigureCell = memo(function FigureCell(props: FigureCellProps) {
  const { className, unit, mid, range, rough } = props
  return (
    <td className={`${className} figures`}>
      {mid === null ? (
        <span className="quiet-text">–</span>
      ) : (
        <>
          <span className="figure">
            {rough && !mid.startsWith('<') ? '~' : ''}
            {mid}
            <span className="cell-unit"> {unit}</span>
          </span>
          <span className="range">{range}</span>
        </>
      )}
    </td>
  )
})
