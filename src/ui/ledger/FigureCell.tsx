import { memo } from 'react'
import { markPad } from '../fields/markPad.ts'

interface FigureCellProps {
  readonly className: string
  /** What a phone shows in front of or behind the figure, where the table's head is gone. */
  readonly unit: string
  /** Null while there is no figure. */
  readonly mid: string | null
  readonly range: string
  readonly rough: boolean
  /** Whether the column stands by its decimal mark: figures in it have one decimal or two. */
  readonly byMark?: boolean
}

/**
 * A figure with its range in small print below; "~" marks one that still rests on volume and area
 * alone.
 */
export const FigureCell = memo(function FigureCell(props: FigureCellProps) {
  const { className, unit, mid, range, rough, byMark = false } = props
  return (
    <td className={`${className} figures`}>
      {mid === null ? (
        <span className="quiet-text">–</span>
      ) : (
        <>
          <span className="figure" data-pad={byMark ? markPad(mid) : undefined}>
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
