import { COVERAGE } from '../doubt/bell.ts'
import { habitErrorId } from '../figures/habitErrors.ts'
import { HABIT_FIELDS } from '../data/habits.ts'
import type { Habits } from '../model/habits.ts'
import type { DoubtedPart, FrameDoubt } from './frameDoubt.ts'
import { frameDoubt, partIdOf } from './frameDoubt.ts'

const HABITS = Object.keys(HABIT_FIELDS) as (keyof Habits)[]

/**
 * What not knowing a habit of the printer adds to the range of all that flies, grams either way in
 * 95 % of cases: the frame is summed again as if it were known, with what that leaves each part,
 * and scale and lessons are heard as before. Left out where a habit is known or adds nothing. Hold
 * goes with the slope band and one line below with thin walls, as long as those are not known.
 */
export function habitGrams(
  doubt: FrameDoubt,
  printerId: string,
): Readonly<Partial<Record<keyof Habits, number>>> {
  const { parts, items, lessons, allUp, allUpBell } = doubt
  const errors = new Set(allUp.ids)
  // Those of single parts are made of the parts.
  const readings = doubt.readings.filter(({ id }) => partIdOf(id) === id)
  return Object.fromEntries(
    HABITS.flatMap((habit) => {
      const id = habitErrorId(habit, printerId)
      if (!errors.has(id)) return []
      const told = parts.map((part) => withKnown(part, id))
      const { sigma } = frameDoubt(told, items, readings, lessons).allUpBell
      const squares = allUpBell.sigma ** 2 - sigma ** 2
      return squares > 0 ? [[habit, COVERAGE * Math.sqrt(squares)]] : []
    }),
  )
}

/** A part whose mass no longer has an error of the printer, but what that leaves it of its own. */
function withKnown(part: DoubtedPart, errorId: string): DoubtedPart {
  const { mass } = part.figures.doubt
  const error = mass.shared.find(({ id }) => id === errorId)
  if (error === undefined) return part
  const own = Math.hypot(mass.own, error.left ?? 0)
  const told = { ...mass, shared: mass.shared.filter((one) => one !== error), own }
  return { ...part, figures: { ...part.figures, doubt: { ...part.figures.doubt, mass: told } } }
}
