import { HABIT_FIELDS, HABIT_RANGES } from '../data/habits.ts'
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
 * What the error of a habit on a printer is called. Hold and slope band are one, as are thin walls
 * and one line below; the ends' is made in doubt/factors.ts.
 */
export function habitErrorId(habit: keyof Habits, printerId: string): string {
  return errorId(habit === 'joinedShare' ? 'ends' : habit, printerId)
}

/**
 * What a habit that is known leaves of its error: it was read off some parts, and others of the
 * same maker are laid a little differently by it. One deviation among parts with the same settings
 * ÷ a quarter of the habit's range, in ../shared/toolpaths: of the half that shaped this 0.29
 * (overlap), 0.27 and 0.37 (outer and inner walls), 0.07 (strands), 0.15 (small rooms); of the half
 * that checks it 0.50, 0.18 and 0.14, 0.15.
 */
const LEFT = 0.3
/**
 * The same of hold and slope band: 0.86 and 0.65 as they are read. Of the plastic less is left:
 * parts with much of it, reckoned by the band of their maker's others, missed by 0.54 and 1.25
 * deviations of the error (half that shaped this) and by 0.67, 0.24 and 0.23 (half that checks it),
 * with all else that they miss by.
 */
const LEFT_BAND = 0.5

/**
 * One printer in fifteen leaves gaps open (common practice, no source; all makers of
 * ../shared/toolpaths lay them): of what is there or not the deviation is √(p·(1 − p)) = 0.25, half
 * that of a reach of all of it.
 */
const GAPS_OPEN = 0.5

/** What is unsure of a part's plastic for how it is laid, as shares of it. */
export interface HabitDoubt {
  readonly shared: readonly SharedError[]
  /** One deviation of what known habits leave, the part's own. */
  readonly own: number
  /** Share that its walls may hold less of themselves for their habits, 95 % of cases. */
  readonly wallsLess: number
}

/**
 * What each habit that is not known may change of a part's plastic, one error a habit, shared by
 * all parts of the printer. The ends of a habit's range are taken to hold 95 % of printers. A habit
 * that is known has no error on the printer, and leaves the part a share of its own. Joined ends,
 * the first layer's thickness and packing have theirs in doubt/factors.ts; widths of skins and
 * infill change no grams.
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
): HabitDoubt {
  const keptMm3 = deposit.wallMm3 + deposit.skinMm3 + deposit.infillMm3
  if (!(keptMm3 > 0)) return { shared: [], own: 0, wallsLess: 0 }
  const known = recipe.habits ?? {}
  const shared: SharedError[] = []
  let ownSquares = 0
  let wallSquares = 0
  let bandLeft = 0
  const add = (habit: keyof Habits, { less, more }: Change): void => {
    const effect = deviationOf({ low: less, high: more }) / keptMm3
    if (!(effect > 0)) return
    if (habit === 'slopeBandMm') bandLeft = LEFT_BAND * effect
    const isBand = habit === 'slopeBandMm' || habit === 'holdMm'
    const left = isBand ? bandLeft : leavesSome(habit) ? LEFT * effect : 0
    if (known[habit] === undefined) {
      const { name } = HABIT_FIELDS[habit]
      shared.push({ id: habitErrorId(habit, printerId), name, effect, left })
    } else if (habit !== 'slopeBandMm' || known.holdMm !== undefined) {
      ownSquares += left ** 2
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
  if (known.slopeBandMm !== undefined && known.holdMm === undefined) {
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
  const wallMm3 = deposit.wallMm3 - deposit.gapMm3
  const outer = recipe.walls > 0 ? 1 / recipe.walls : 0
  addWidth('outerWidthShare', deposit.wallMm3 * outer, beside)
  // Where there is nothing else to take it from, gap lines make up for what inner walls lack.
  addWidth('innerWidthShare', wallMm3 * (1 - outer), inside > 0 ? beside : 0)
  addWidth('firstWidthShare', firstWallMm3(census), firstBeside(census) * sparse)
  addThin(census.byHabit.thinMm3)
  // Where they are left open the census does not hold them.
  const openMm3 = GAPS_OPEN * deposit.gapMm3
  add('gapLines', { less: openMm3, more: 0 })
  lessen('gapLines', openMm3)
  // Undersides that bear no more skins than the bottom would.
  const fewer = Math.max(0, recipe.topSkins - recipe.bottomSkins)
  add('undersides', { less: census.byHabit.airMm3 * fewer * sparse, more: 0 })
  if (known.bead === undefined) {
    const lackMm3 = roundEndsLack(recipe, deposit.wallMm3, beside)
    lessen('bead', roundEndsLack(recipe, deposit.wallMm3, 1))
    const effect = deviationOf({ low: lackMm3, high: 0 }) / keptMm3
    if (effect > 0) shared.push({ id: errorId('bead', printerId), name: 'Ends of lines', effect })
  }
  const wallsLess = deposit.wallMm3 > 0 ? Math.sqrt(wallSquares) / deposit.wallMm3 : 0
  return { shared, own: Math.sqrt(ownSquares), wallsLess }

  /** Of so many mm³ a share is laid beside room. */
  function addWidth(habit: HabitNumber, mm3: number, share: number): void {
    const { less, more } = shareOfRange(habit, habits)
    add(habit, { less: share * mm3 * less, more: share * mm3 * more })
    lessen(habit, mm3 * less)
  }

  function lessen(habit: keyof Habits, mm3: number): void {
    if (known[habit] === undefined) wallSquares += mm3 ** 2
  }

  /** Whether thin walls get whole lines, and from where on two, may change them as much. */
  function addThin(mm3: number): void {
    lessen('thinWalls', mm3)
    if (known.thinWalls === undefined) add('thinWalls', { less: mm3, more: mm3 })
    else if (known.thinWalls === 'whole') add('oneLineBelow', { less: mm3, more: mm3 })
  }
}

/**
 * Whether a habit that is known leaves a part some of its error: a number does, and whole lines in
 * thin walls, which one of them there is from some thickness on.
 */
function leavesSome(habit: keyof Habits): boolean {
  return habit in HABIT_RANGES || habit === 'thinWalls'
}

/** Walls of the first layer. */
function firstWallMm3({ layers }: Census): number {
  return (layers.wallMm2[0] ?? 0) * (layers.heightMm[0] ?? 0)
}

/** How much of what the first layer's walls enclose is room. */
function firstBeside({ layers }: Census): number {
  const roomMm2 = layers.roomMm2[0] ?? 0
  return roomMm2 > 0 ? roomMm2 / (roomMm2 + (layers.skinMm2[0] ?? 0)) : 0
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
