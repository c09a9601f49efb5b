import type { PartFigures } from '../model/figures.ts'

/** What one error alone does to a cost, either way, in 95 % of cases; in the prices' currency. */
export interface CostBlame {
  readonly name: string
  readonly money: number
}

/** Standard deviations either side that hold 95 %, as everywhere in the doubts. */
const SIGMAS = 2
const OWN = 'Counting, part by part'

/**
 * Which errors carry the doubt of what some pieces cost together, the largest first. An error that parts share adds up over
 * them; what each part has of its own is taken together.
 */
export function costBlame(
  rows: readonly {
    readonly pieces: number
    readonly figures: Pick<PartFigures, 'cost' | 'doubt'>
  }[],
): readonly CostBlame[] {
  const money = new Map<string, CostBlame>()
  let own = 0
  for (const { pieces, figures } of rows) {
    const together = pieces * figures.cost.mid
    own = Math.hypot(own, together * figures.doubt.cost.own)
    for (const { id, name, effect } of figures.doubt.cost.shared) {
      const before = money.get(id)?.money ?? 0
      money.set(id, { name, money: before + together * effect })
    }
  }
  return [...money.values(), { name: OWN, money: own }]
    .map((blame) => ({ ...blame, money: SIGMAS * Math.abs(blame.money) }))
    .filter((blame) => blame.money > 0)
    .toSorted((a, b) => b.money - a.money)
}
