import { findFront, type SearchStep } from './findFront.ts'
import type { Assignment, Ceilings, PartOptions } from './types.ts'
import type { GivesLimit } from './gives/types.ts'
import { againstFloors, asWanted, byGives, goodness, type Wants } from './wants.ts'

/** One of the things asked for, what was asked, and what could be had. */
export interface Binding {
  readonly limit: keyof Ceilings | 'stiffness' | keyof GivesLimit
  /** Of a limit of one part. */
  readonly partId?: string
  /** In the unit of the limit: g, s, money, mm, Hz; of stiffness 1, all that was asked. */
  readonly asked: number
  /**
   * The best there is, with everything else as asked: this limit alone stands in the way, by the
   * difference. Of stiffness the share of what is asked that every part can keep.
   */
  readonly reachable: number | null
  /**
   * The best there is with nothing else asked; above `asked`, the limit is out of reach by itself.
   */
  readonly alone: number
}

/**
 * Why nothing was found: of each limit what would have to be given, by searching without it, its
 * `reachable` null where giving it alone would not do.
 */
export function* whyNone(
  parts: readonly PartOptions[],
  wants: Wants,
): Generator<SearchStep, readonly Binding[], void> {
  const bindings: Binding[] = []
  const { ceilings } = wants
  const stiff = asWanted(parts, wants)
  for (const limit of ['massG', 'timeS', 'cost'] as const) {
    const asked = ceilings[limit]
    if (asked === undefined) continue
    const { [limit]: _, ...others } = ceilings
    const front = stiff.some(({ options }) => options.length === 0)
      ? []
      : yield* findFront(stiff, others)
    bindings.push({
      limit,
      asked,
      reachable: front.length === 0 ? null : leastOf(front, limit),
      alone: parts.reduce((sum, { options }) => sum + leastOf(options, limit), 0),
    })
  }
  const isAsked = parts.some(({ partId }) => (wants.floors.get(partId) ?? 0) > 0)
  if (isAsked) {
    const against = againstFloors(parts, wants)
    const front = yield* findFront(against, ceilings)
    bindings.push({
      limit: 'stiffness',
      asked: 1,
      reachable: front.length === 0 ? null : stiffest(front),
      alone: Math.min(...against.map(({ options }) => stiffest(options))),
    })
  }
  for (const [partId, asked] of wants.gives ?? []) {
    for (const limit of ['deflectionMm', 'firstHz'] as const) {
      if (asked[limit] === undefined) continue
      const front = yield* findFront(byGives(parts, wants, partId, limit), ceilings)
      const own = parts.find((one) => one.partId === partId)?.options ?? []
      const all = own.map((one) => ({ stiffness: goodness(one, limit) }))
      const inUnit = (value: number): number => (limit === 'firstHz' ? value : 1 / value)
      bindings.push({
        limit,
        partId,
        asked: asked[limit],
        reachable: front.length === 0 ? null : inUnit(stiffest(front)),
        alone: inUnit(stiffest(all)),
      })
    }
  }
  return bindings
}

type Measured = Pick<Assignment, keyof Ceilings | 'stiffness'>

const leastOf = (all: readonly Measured[], limit: keyof Ceilings): number =>
  all.reduce((least, one) => Math.min(least, one[limit]), Infinity)

const stiffest = (all: readonly Pick<Measured, 'stiffness'>[]): number =>
  all.reduce((most, { stiffness }) => Math.max(most, stiffness), 0)
