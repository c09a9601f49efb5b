import { keepsLimit } from './gives/againstLimit.ts'
import type { GivesLimit } from './gives/types.ts'
import type { Ceilings, Option, PartOptions } from './types.ts'

/** What a search is to come out with. */
export interface Wants {
  readonly ceilings: Ceilings
  /** Least stiffness of a part over that of the part as it stands, by part id. */
  readonly floors: ReadonlyMap<string, number>
  /**
   * How far a part may give and how high it must ring, by part id. A free part keeps to them too.
   */
  readonly gives?: ReadonlyMap<string, GivesLimit>
  /** Parts whose stiffness nobody asks for, by id. */
  readonly free: ReadonlySet<string>
}

/** A floor that is met to the digit may miss by what floating point leaves. */
const ROUNDING = 1e-9

/**
 * Options as stiff as wanted; of free parts all, and their stiffness counts no more. What is asked
 * of one part is met by its options alone, whatever the others get: leaving out those that do not
 * meet it leaves the front of all assignments that do.
 */
export function asWanted(
  parts: readonly PartOptions[],
  { floors, free, gives }: Pick<Wants, 'floors' | 'free' | 'gives'>,
): readonly PartOptions[] {
  return parts.map(({ partId, options: all }) => {
    const options = meeting(partId, all, gives)
    if (free.has(partId)) return { partId, options: options.map(unasked) }
    const floor = floors.get(partId) ?? 0
    return { partId, options: options.filter((one) => one.stiffness >= floor - ROUNDING) }
  })
}

function meeting(
  partId: string,
  options: readonly Option[],
  gives: Wants['gives'],
): readonly Option[] {
  const limit = gives?.get(partId)
  return limit === undefined ? options : options.filter((one) => meets(one, limit))
}

/** Whether an option gives no further and rings no lower; one that nothing is known of does not. */
function meets({ gives }: Pick<Option, 'gives'>, limit: GivesLimit): boolean {
  const { deflectionMm: most = Infinity, firstHz: least = 0 } = limit
  if (gives === undefined) return most === Infinity && !(least > 0)
  return (
    keepsLimit('deflectionMm', most, gives.deflectionMm) &&
    (!(least > 0) || keepsLimit('firstHz', least, gives.firstHz ?? 0))
  )
}

/**
 * All options, their stiffness over what is asked of the part: 1 meets it. Parts of which nothing
 * is asked do not count.
 */
export function againstFloors(
  parts: readonly PartOptions[],
  { floors, free, gives }: Pick<Wants, 'floors' | 'free' | 'gives'>,
): readonly PartOptions[] {
  return parts.map(({ partId, options: all }) => {
    const options = meeting(partId, all, gives)
    const floor = free.has(partId) ? 0 : (floors.get(partId) ?? 0)
    const asked = (one: Option): Option =>
      floor > 0 ? { ...one, stiffness: one.stiffness / floor } : unasked(one)
    return { partId, options: options.map(asked) }
  })
}

const unasked = (one: Option): Option => ({ ...one, stiffness: Infinity })

/**
 * All options of the others as wanted, and of one part all that meet everything else asked of it,
 * their stiffness being how well they meet the one limit: N more is better either way.
 */
export function byGives(
  parts: readonly PartOptions[],
  wants: Pick<Wants, 'floors' | 'free' | 'gives'>,
  partId: string,
  limit: keyof GivesLimit,
): readonly PartOptions[] {
  const gives = new Map(wants.gives)
  const { [limit]: _, ...others } = gives.get(partId) ?? {}
  gives.set(partId, others)
  return asWanted(parts, { ...wants, gives }).map((own) => ({
    partId: own.partId,
    options: own.options.map((one) =>
      own.partId === partId ? { ...one, stiffness: goodness(one, limit) } : unasked(one),
    ),
  }))
}

/** Grows as the limit is better met: a tone, or one over a deflection. */
export function goodness({ gives }: Pick<Option, 'gives'>, limit: keyof GivesLimit): number {
  if (gives === undefined) return 0
  return limit === 'firstHz' ? (gives.firstHz ?? 0) : 1 / gives.deflectionMm
}
