import type { Range } from '../model/figures.ts'
import type { Spool } from '../model/spools.ts'

/**
 * Kept back on every reel, whose last metres no printer feeds (the wiki of polymaker.com on running
 * out: 20 g).
 */
export const KEPT_BACK_G = 20

/** What a run takes off a spool. */
export interface RunNeed {
  readonly materialId: string
  readonly material: string
  /** Supports and brim with it; it is planned by the high end. */
  readonly spoolG: Range
}

export interface ToBuy {
  readonly materialId: string
  readonly material: string
  /** Of runs that no spool on the shelf finishes, g. */
  readonly neededG: number
}

export interface SpoolPlan {
  /** The spool that finishes each run, by id; null where none does. */
  readonly runs: readonly (string | null)[]
  /** By spool, g that can still be printed after all runs. */
  readonly leftG: ReadonlyMap<string, number>
  readonly toBuy: readonly ToBuy[]
}

/** What of a spool can still be printed, g. */
export function printableG({ grossG, emptyG }: Spool): number {
  return Math.max(0, grossG - emptyG - KEPT_BACK_G)
}

/**
 * Ways looked at for one plastic; past them the best so far stands. Ten runs on four spools take
 * fewer.
 */
const MOST_STEPS = 20_000

/**
 * Which spool finishes which run, so that least plastic is to be bought: spools are not changed in
 * the middle of a print, so a run has one, and no two runs count on the same plastic. Of ways that
 * leave as little the first, in which the heaviest run has the spool with least on it that does,
 * and so on.
 */
export function assignSpools(needs: readonly RunNeed[], shelf: readonly Spool[]): SpoolPlan {
  const leftG = new Map(shelf.map((spool) => [spool.id, printableG(spool)]))
  const runs: (string | null)[] = needs.map(() => null)
  const toBuy: ToBuy[] = []
  for (const materialId of new Set(needs.map((need) => need.materialId))) {
    const own = needs
      .map((need, at) => ({ at, ...need, needG: need.spoolG.high }))
      .filter((need) => need.materialId === materialId)
      .toSorted((a, b) => b.needG - a.needG)
    const spools = shelf.filter((spool) => spool.materialId === materialId)
    const chosen = leastMissing(
      own.map(({ needG }) => needG),
      spools.map((spool) => leftG.get(spool.id) ?? 0),
    )
    let neededG = 0
    for (const [i, { at, needG }] of own.entries()) {
      const spool = spools[chosen[i] ?? -1]
      if (spool === undefined) neededG += needG
      else leftG.set(spool.id, (leftG.get(spool.id) ?? 0) - needG)
      runs[at] = spool?.id ?? null
    }
    if (neededG > 0) toBuy.push({ materialId, material: own[0]?.material ?? materialId, neededG })
  }
  return { runs, leftG, toBuy }
}

/**
 * The place of the spool of each need, −1 for none, so that those without one are least together. g
 */
function leastMissing(needsG: readonly number[], roomsG: readonly number[]): readonly number[] {
  const rooms = [...roomsG]
  const chosen = needsG.map(() => -1)
  let best: readonly number[] = chosen.slice()
  let bestG = Infinity
  let steps = 0
  const place = (i: number, missingG: number): void => {
    if (missingG >= bestG || ++steps > MOST_STEPS) return
    const needG = needsG[i]
    if (needG === undefined) {
      ;[best, bestG] = [chosen.slice(), missingG]
      return
    }
    const takes = rooms
      .map((roomG, at) => ({ roomG, at }))
      .filter(({ roomG }) => roomG >= needG)
      .toSorted((a, b) => a.roomG - b.roomG)
    for (const { roomG, at } of takes) {
      rooms[at] = roomG - needG
      chosen[i] = at
      place(i + 1, missingG)
      rooms[at] = roomG
    }
    chosen[i] = -1
    place(i + 1, missingG + needG)
  }
  place(0, 0)
  return best
}

/**
 * Whether a plastic drinks so much water in a night or two that it has to be dried first: nylons
 * (vshaper.com).
 */
export function drinksWater(materialId: string): boolean {
  return /^pa\d/.test(materialId)
}
