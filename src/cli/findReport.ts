import type { Binding } from '../core/choose/whyNone.ts'
import type { Gives } from '../core/choose/gives/types.ts'
import type { Range } from '../core/model/figures.ts'

/** Settings of a part that a search may change, with its plastic. */
export interface FoundRecipe {
  readonly walls: number
  readonly topSkins: number
  readonly bottomSkins: number
  readonly infillPct: number
  readonly layerMm: number
  readonly material: string
}

/** One solution as `--find --json` prints it. Field names and meanings are stable. */
export interface FoundSolution {
  /** Of all printed pieces that fly. */
  readonly massG: number
  /** Of all that is printed, spares too, each piece by itself. */
  readonly hours: number
  readonly cost: number
  /**
   * Of the part that loses most, over that of the part as it stands; null where nobody asks for
   * any. From sections of the layers, ratios good to ±15 %.
   */
  readonly stiffness: number | null
  /**
   * Of parts that were asked how far they give or how they ring, by name: under their load, mm, and
   * the first tone, Hz. Solid or beam model; mids, good to 25 % and 13 %.
   */
  readonly gives?: Readonly<Record<string, Gives | null>>
  /** Of every part, by its name; of a second part of that name, by name and item number. */
  readonly recipes: Readonly<Record<string, FoundRecipe>>
}

/** What a search came to. */
export interface FindReport {
  readonly currency: string
  readonly solutions: readonly FoundSolution[]
  /** Mass of each solution with its range. */
  readonly massG: readonly Range[]
  /**
   * Solutions there are; `solutions` are those that differ most, where there are more than asked
   * for.
   */
  readonly count: number
  /** The frame as it stands. */
  readonly now: FoundSolution
  /** Why there is none. */
  readonly bindings: readonly Binding[]
  /** Of the parts, by id. */
  readonly names: ReadonlyMap<string, string>
  readonly notes: readonly string[]
}

/** Names parts by their id. */
export function nameIn({ names }: Pick<FindReport, 'names'>): (partId: string) => string {
  return (partId) => names.get(partId) ?? partId
}
