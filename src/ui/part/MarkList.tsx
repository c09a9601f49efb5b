import type { Part } from '../../core/model/frame.ts'
import { markId } from './goToRemedy.ts'
import { MarkRemedy } from './MarkRemedy.tsx'
import { MARK_LIST, type PartMark } from './partMarks.ts'

interface MarkListProps {
  readonly marks: readonly PartMark[]
  /** To do something about a mark, behind its words; left out on paper. */
  readonly part?: Part
}

/** The marks on a part's drawing in words, each under its sign. */
export function MarkList({ marks, part }: MarkListProps) {
  if (marks.length === 0) return null
  return (
    <ul
      className="part-marks"
      aria-label="Shown on the drawing"
      {...(part === undefined ? {} : { id: MARK_LIST })}
    >
      {marks.map((mark) => {
        const { sign, kind, words, anchors } = mark
        return (
          <li
            key={sign}
            className={kind === 'finding' || kind === 'over' ? 'amber' : undefined}
            {...(part === undefined ? {} : { id: markId(sign), tabIndex: -1 })}
          >
            <b>{sign}</b>
            <span>
              {words}
              {anchors === null ? <small> (not seen from here)</small> : null}
              {part === undefined ? null : <MarkRemedy of={mark} part={part} />}
            </span>
          </li>
        )
      })}
    </ul>
  )
}
