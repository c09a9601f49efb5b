import { COVERAGE } from '../doubt/bell.ts'
import { blameFor } from '../doubt/blame.ts'
import type { FrameDoubt } from './frameDoubt.ts'

/** What one error alone does to a cost, either way, in 95 % of cases; in the prices' currency. */
export interface CostBlame {
  readonly name: string
  readonly money: number
}

const OWN = 'Counting, part by part'

/**
 * Which errors carry the doubt of what all printed pieces cost together, spares with them, the
 * largest first, once scale and clock were heard. What each part has of its own is taken together.
 */
export function costBlame({ all, known, names }: FrameDoubt): readonly CostBlame[] {
  const blame = blameFor(all('cost'), known.belief)
  const own = Math.hypot(...blame.flatMap(({ kind, sigma }) => (kind === 'own' ? [sigma] : [])))
  return [
    ...blame.flatMap(({ id, kind, sigma }) =>
      kind === 'shared' ? [{ name: names.get(id) ?? id, money: COVERAGE * sigma }] : [],
    ),
    { name: OWN, money: COVERAGE * own },
  ]
    .filter(({ money }) => money > 0)
    .toSorted((a, b) => b.money - a.money)
}
