import type { FrameRow } from '../../core/frame/types.ts'
import type { PartFigures } from '../../core/model/figures.ts'
import { HelpMark } from '../help/HelpMark.tsx'
import { LaidList } from './LaidList.tsx'
import { laidInPiece } from './laidShares.ts'

interface BreakdownProps {
  readonly figures: PartFigures
  readonly sum: FrameRow | null
}

/** One bar, split into what the piece is made of, and the same in figures below it. */
export function Breakdown({ figures, sum }: BreakdownProps) {
  const shares = laidInPiece(figures, sum)
  if (shares.length === 0) return null
  return (
    <figure className="breakdown">
      <figcaption>
        Where the grams of one piece go <HelpMark of="bead" />
      </figcaption>
      <div className="stack" aria-hidden="true">
        {shares.map(({ id, share }) => (
          <span key={id} className={`laid laid-${id}`} style={{ flexGrow: share }} />
        ))}
      </div>
      <LaidList shares={shares} hasHelp />
    </figure>
  )
}
