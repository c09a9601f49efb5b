import * as v from 'valibot'
import { FIND_LIMITS, MASS_LIMITS, RECIPE_LIMITS, type Limits } from '../core/data/limits.ts'
import { numberIn, parse } from './settings.ts'

/** What `--find` is asked, in the words of its JSON; parts by name, item number or role. */
export interface FindAsk {
  readonly printedG?: number | undefined
  readonly lessG?: number | undefined
  readonly hours?: number | undefined
  readonly cost?: number | undefined
  readonly stiffness?: number | Readonly<Record<string, number>> | undefined
  /** Of parts by name or role: most they may give under their load, mm. */
  readonly deflectionMm?: Readonly<Record<string, number>> | undefined
  /** Least first tone, Hz, or `turns`: clear of what the propeller turns at in hover. */
  readonly firstHz?: Readonly<Record<string, number | 'turns'>> | undefined
  readonly free?: readonly string[] | undefined
  readonly keepParts?: readonly string[] | undefined
  readonly keepSettings?: readonly ('walls' | 'skins' | 'infill')[] | undefined
  readonly walls?: readonly number[] | undefined
  readonly skins?: readonly number[] | undefined
  readonly infillPct?: readonly number[] | undefined
  readonly layerMm?: readonly number[] | undefined
  readonly materials?: readonly string[] | undefined
  readonly most?: number | undefined
}

const names = v.array(
  v.string(({ input }) => `holds ${JSON.stringify(input)}; it must be names`),
  ({ input }) => `is ${JSON.stringify(input)}; it must be a list`,
)
const listOf = (limits: Limits) =>
  v.pipe(
    v.array(numberIn(limits), ({ input }) => `is ${JSON.stringify(input)}; it must be a list`),
    v.nonEmpty('is empty; leave it out, or say what may be tried'),
  )

const ASK = v.strictObject({
  printedG: v.optional(numberIn(MASS_LIMITS.limitG)),
  lessG: v.optional(numberIn(FIND_LIMITS.lessG)),
  hours: v.optional(numberIn(FIND_LIMITS.hours)),
  cost: v.optional(numberIn(FIND_LIMITS.cost)),
  stiffness: v.optional(
    v.union(
      [numberIn(FIND_LIMITS.stiffness), v.record(v.string(), numberIn(FIND_LIMITS.stiffness))],
      ({ input }) =>
        `is ${JSON.stringify(input)}; it must be a number such as 0.9, or one for each part, ` +
        `from ${FIND_LIMITS.stiffness.min} to ${FIND_LIMITS.stiffness.max}`,
    ),
  ),
  deflectionMm: v.optional(
    v.record(
      v.string(),
      numberIn(FIND_LIMITS.deflectionMm),
      ({ input }) => `is ${JSON.stringify(input)}; it must name parts, such as {"arm": 2}`,
    ),
  ),
  firstHz: v.optional(
    v.record(
      v.string(),
      v.union(
        [numberIn(FIND_LIMITS.firstHz), v.literal('turns')],
        ({ input }) =>
          `is ${JSON.stringify(input)}; it must be a number of Hz from ` +
          `${FIND_LIMITS.firstHz.min} to ${FIND_LIMITS.firstHz.max}, or "turns"`,
      ),
      ({ input }) => `is ${JSON.stringify(input)}; it must name parts, such as {"arm": 90}`,
    ),
  ),
  free: v.optional(names),
  keepParts: v.optional(names),
  keepSettings: v.optional(
    v.array(
      v.picklist(
        ['walls', 'skins', 'infill'],
        ({ input }) => `holds ${JSON.stringify(input)}; it must be of walls, skins, infill`,
      ),
    ),
  ),
  walls: v.optional(listOf(RECIPE_LIMITS.walls)),
  skins: v.optional(listOf(RECIPE_LIMITS.topSkins)),
  infillPct: v.optional(listOf(RECIPE_LIMITS.infillPct)),
  layerMm: v.optional(listOf(RECIPE_LIMITS.layerMm)),
  materials: v.optional(names),
  most: v.optional(numberIn(FIND_LIMITS.most)),
})

/** Throws UsageError. */
export function findAskFrom(text: string): FindAsk {
  return parse('--find', ASK, text, '{"printedG": 145, "hours": 9}')
}
