import type { Finding, Grade } from './mesh.ts'

/** Heaviest first. */
const GRADES: readonly Grade[] = ['changes the grams', 'cannot print', 'worth knowing', 'note']

/** Heaviest first; those of one grade stay in their order. */
export function heaviestFirst(findings: readonly Finding[]): readonly Finding[] {
  return findings.toSorted((a, b) => GRADES.indexOf(a.grade) - GRADES.indexOf(b.grade))
}
