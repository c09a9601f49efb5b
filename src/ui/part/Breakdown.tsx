import type { FrameRow } from '../../core/frame/types.ts'
import type { PartFigures } from '../../core/model/figures.ts'
import { showMass, showNumber } from '../show.ts'
import { laidInPiece, type LaidShare } from './laidShares.ts'
import { HelpMark } from '../help/HelpMark.tsx'
import type { HelpWord } from '../help/helpWords.ts'

const HELP: Partial<Readonly<Record<LaidShare['id'], HelpWord>>> = {
  gaps: 'gap line',
  strands: 'strand',
  supports: 'support',
}

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
      <ul>
        {shares.map(({ id, words, massG, share }) => (
          <li key={id}>
            <span className={`key laid-${id}`} aria-hidden="true" />
            {words}
            {HELP[id] === undefined ? null : <HelpMark of={HELP[id]} />} <b>{showMass(massG)}</b>{' '}
            <span className="quiet-text">{showNumber(share * 100, 0)} %</span>
          </li>
        ))}
      </ul>
    </figure>
  )
}
