import { placeWords } from '../../core/mesh/placeWords.ts'
import type { Finding, Grade } from '../../core/model/mesh.ts'

/** What is odd about the mesh in whole sentences, in the order given: heaviest first. */
export function FindingList({ findings }: { readonly findings: readonly Finding[] }) {
  if (findings.length === 0)
    return <p className="hint">Nothing odd found: the mesh is closed and faces outward.</p>
  return (
    <ul className="findings">
      {findings.map((finding) => (
        <li
          key={finding.code + finding.message}
          className={`finding finding-${finding.grade.replaceAll(' ', '-')}`}
        >
          <strong>{WORDS[finding.grade]}</strong> {finding.message}
          {placeWords(finding)}
        </li>
      ))}
    </ul>
  )
}

const WORDS: Readonly<Record<Grade, string>> = {
  'changes the grams': 'Changes the grams',
  'cannot print': 'Cannot print',
  'worth knowing': 'Worth knowing',
  note: 'Note',
}
