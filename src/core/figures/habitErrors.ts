import { HABIT_RANGES } from '../data/habits.ts'
import { errorId } from '../doubt/errorId.ts'
import { deviationOf } from '../doubt/factors.ts'
import type { Census } from '../model/census.ts'
import type { SharedError } from '../model/doubt.ts'
import type { HabitNumber, Habits } from '../model/habits.ts'
import { habitsOf, ROUND_LACK } from '../model/habits.ts'
import type { Recipe } from '../model/settings.ts'
import type { Deposit } from './deposit.ts'

/**
 * What a habit changes of a part, mm³: with the lowest of its range less, with the highest more.
 */
interface Change {
  readonly less: number
  readonly more: number
}

/**
 * What the error of a habit on a printer is called. Hold and slope band are one; the ends' is made
 * in doubt/factors.ts.
 */
export function habitErrorId(habit: HabitNumber, printerId: string): string {
  return errorId(habit === 'joinedShare' ? 'ends' : habit, printerId)
}

/**
 * What each habit that is not known may change of a part's plastic, one error a habit, shared by
 * all parts of the printer. The ends of a habit's range are taken to hold 95 % of printers; a habit
 * that is known has no error. Joined ends, the first layer and packing have theirs in
 * doubt/factors.ts. Thin walls, one line below, gap lines, undersides and the widths of inner walls
 * and of the first layer have none yet; those of skins and infill change no grams.
 *
 * Estimated from what the census tells of each, not counted again: a hold of half the length holds
 * half as much, a little less than that in truth, and one that is longer as much more, at most all
 * the room there is.
 */
export function habitErrors(
  census: Census,
  recipe: Recipe,
  deposit: Deposit,
  printerId: string,
): readonly SharedError[] {
  const keptMm3 = deposit.wallMm3 + deposit.skinMm3 + deposit.infillMm3
  if (!(keptMm3 > 0)) return []
  const known = recipe.habits ?? {}
  const errors: SharedError[] = []
  const add = (habit: HabitNumber, { less, more }: Change): void => {
    const effect = known[habit] === undefined ? deviationOf({ low: less, high: more }) / keptMm3 : 0
    if (effect > 0) {
      errors.push({ id: habitErrorId(habit, printerId), name: HABIT_RANGES[habit].name, effect })
    }
  }
  const habits = habitsOf(recipe)
  // What solid adds where there would be infill.
  const sparse = Math.max(0, 1 - deposit.infillMm3 / Math.max(deposit.roomMm3, 1e-9))
  const { heldMm3, overlapMm3, roomOverlapMm3, smallSolidMm3, smallSparseMm3 } = census.byHabit
  const held = shareOfRange('slopeBandMm', habits)
  add('slopeBandMm', {
    less: heldMm3 * held.less * sparse,
    more: Math.min(heldMm3 * held.more, deposit.roomMm3) * sparse,
  })
  // Hold and band are one error while the band is not known; a known band still leaves what a hold
  // may reach beyond it.
  if (known.slopeBandMm !== undefined) {
    const beyond = holdBeyondBand(habits)
    add('holdMm', {
      less: heldMm3 * beyond.less * sparse,
      more: Math.min(heldMm3 * beyond.more, deposit.roomMm3) * sparse,
    })
  }
  add('smallRoomMm2', { less: smallSolidMm3 * sparse, more: smallSparseMm3 * sparse })
  const lapped = shareOfRange('overlapShare', habits)
  const overMm3 = overlapMm3 + roomOverlapMm3 * (1 - sparse)
  add('overlapShare', { less: overMm3 * lapped.less, more: overMm3 * lapped.more })
  const strands = shareOfRange('strandShare', habits)
  add('strandShare', {
    less: deposit.strandMm3 * strands.less,
    more: deposit.strandMm3 * strands.more,
  })
  // Walls as wide as typed take their place from skins, which weigh as much, or from rooms, which
  // do not.
  const inside = census.skinMm3 + deposit.roomMm3
  const beside = inside > 0 ? (deposit.roomMm3 / inside) * sparse : 1
  const walls = shareOfRange('outerWidthShare', habits)
  add('outerWidthShare', {
    less: (deposit.wallMm3 / recipe.walls) * beside * walls.less || 0,
    more: (deposit.wallMm3 / recipe.walls) * beside * walls.more || 0,
  })
  if (known.bead === undefined) {
    const lackMm3 = roundEndsLack(recipe, deposit.wallMm3, beside)
    const effect = deviationOf({ low: lackMm3, high: 0 }) / keptMm3
    if (effect > 0) errors.push({ id: errorId('bead', printerId), name: 'Ends of lines', effect })
  }
  return errors
}

/**
 * What walls lose if their lines have round ends, mm³: half of what a line lacks is bare along the
 * outline, and the rest of them reach less deep, which leaves more room, of whose place the share
 * `beside` is not laid.
 */
function roundEndsLack(
  { walls, lineMm, layerMm }: Recipe,
  wallMm3: number,
  beside: number,
): number {
  if (walls === 0) return 0
  const lackMm = Math.min(lineMm, ROUND_LACK * layerMm)
  return (wallMm3 / (walls * lineMm)) * lackMm * (0.5 + (walls - 0.5) * beside)
}

/** How far the range lies below and above the habit, as shares of it. */
function shareOfRange(habit: HabitNumber, habits: Habits): Change {
  const { low, high } = HABIT_RANGES[habit]
  const value = habits[habit]
  if (!(value > 0)) return { less: 0, more: 0 }
  return { less: Math.max(0, 1 - low / value), more: Math.max(0, high / value - 1) }
}

/**
 * How far a hold anywhere in its range reaches below and above hold and band as they are, as shares
 * of those.
 */
function holdBeyondBand({ slopeBandMm, holdMm }: Habits): Change {
  const { low, high } = HABIT_RANGES.holdMm
  const reachMm = Math.max(slopeBandMm, holdMm)
  if (!(reachMm > 0)) return { less: 0, more: 0 }
  return {
    less: 1 - Math.max(slopeBandMm, low) / reachMm,
    more: Math.max(slopeBandMm, high) / reachMm - 1,
  }
}
