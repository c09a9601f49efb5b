import type { Finding, Severity } from '../../core/model/mesh.ts'

/** What is odd about the mesh, worst first, in whole sentences. */
export function FindingList({ findings }: { readonly findings: readonly Finding[] }) {
  if (findings.length === 0)
    return <p className="hint">Nothing odd found: the mesh is closed and faces outward.</p>
  const sorted = findings.toSorted((a, b) => RANK[a.severity] - RANK[b.severity])
  return (
    <ul className="findings">
      {sorted.map((finding) => (
        <li key={finding.code + finding.message} className={`finding finding-${finding.severity}`}>
          <strong>{WORDS[finding.severity]}</strong> {finding.message}
        </li>
      ))}
    </ul>
  )
}

const RANK: Readonly<Record<Severity, number>> = { bad: 0, caution: 1, note: 2 }
const WORDS: Readonly<Record<Severity, string>> = { bad: 'Wrong', caution: 'Look', note: 'Note' }
