import type { PartOptions, Worth } from '../../src/core/choose/types.ts'

/**
 * Worth of every assignment of options to parts there is: their product, so of a few parts only.
 */
export function allWorths(parts: readonly PartOptions[]): readonly Worth[] {
  let all: readonly Worth[] = [{ massG: 0, timeS: 0, cost: 0, stiffness: Infinity }]
  for (const { options } of parts) {
    all = all.flatMap((before) =>
      options.map((one) => ({
        massG: before.massG + one.massG,
        timeS: before.timeS + one.timeS,
        cost: before.cost + one.cost,
        stiffness: Math.min(before.stiffness, one.stiffness),
      })),
    )
  }
  return all
}
