import type { PartMark } from './partMarks.ts'

/** The marks on a part's drawing in words, each under its sign. */
export function MarkList({ marks }: { readonly marks: readonly PartMark[] }) {
  if (marks.length === 0) return null
  return (
    <ul className="part-marks" aria-label="Shown on the drawing">
      {marks.map(({ sign, kind, words, anchors }) => (
        <li key={sign} className={kind === 'finding' || kind === 'over' ? 'amber' : undefined}>
          <b>{sign}</b>
          <span>
            {words}
            {anchors === null ? <small> (not seen from here)</small> : null}
          </span>
        </li>
      ))}
    </ul>
  )
}
