import { HelpMark } from '../help/HelpMark.tsx'
import type { HelpWord } from '../help/helpWords.ts'
import { showMass, showNumber } from '../show.ts'
import type { LaidShare } from './laidShares.ts'

const HELP: Partial<Readonly<Record<LaidShare['id'], HelpWord>>> = {
  gaps: 'gap line',
  strands: 'strand',
  supports: 'support',
}

interface LaidListProps {
  readonly shares: readonly LaidShare[]
  readonly hasHelp?: boolean
}

/** What something is laid as, in grams and per cent, with the key of its bar. */
export function LaidList({ shares, hasHelp = false }: LaidListProps) {
  return (
    <ul>
      {shares.map(({ id, words, massG, share }) => (
        <li key={id}>
          <span className={`key laid-${id}`} aria-hidden="true" />
          {words}
          {!hasHelp || HELP[id] === undefined ? null : <HelpMark of={HELP[id]} />}{' '}
          <b>{showMass(massG)}</b>{' '}
          <span className="quiet-text">{showNumber(share * 100, 0)} %</span>
        </li>
      ))}
    </ul>
  )
}
