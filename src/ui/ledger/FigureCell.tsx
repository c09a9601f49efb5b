interface FigureCellProps {
  readonly className: string
  /** What a phone shows in front of or behind the figure, where the table's head is gone. */
  readonly unit: string
  readonly figure: { readonly mid: string; readonly range: string } | null
  readonly rough: boolean
}

/** A figure with its range in small print below; "~" marks one that still rests on volume and area alone. */
export function FigureCell({ className, unit, figure, rough }: FigureCellProps) {
  return (
    <td className={`${className} figures`}>
      {figure === null ? (
        <span className="quiet-text">–</span>
      ) : (
        <>
          <span className="figure">
            {rough && !figure.mid.startsWith('<') ? '~' : ''}
            {figure.mid}
            <span className="cell-unit"> {unit}</span>
          </span>
          <span className="range">{figure.range}</span>
        </>
      )}
    </td>
  )
}
