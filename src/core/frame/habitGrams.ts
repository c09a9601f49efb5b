import { COVERAGE } from '../doubt/bell.ts'
import { blameFor } from '../doubt/blame.ts'
import { habitErrorId } from '../figures/habitErrors.ts'
import { HABIT_RANGES } from '../data/habits.ts'
import type { HabitNumber } from '../model/habits.ts'
import type { FrameDoubt } from './frameDoubt.ts'

/**
 * What each habit of the printer that nobody told may change of all that flies, grams either way in
 * 95 % of cases, once scale and lessons were heard. Left out where a habit is known or enters
 * nothing.
 */
export function habitGrams(
  { allUp, known }: FrameDoubt,
  printerId: string,
): Readonly<Partial<Record<HabitNumber, number>>> {
  const sigmas = new Map(blameFor(allUp, known.belief).map(({ id, sigma }) => [id, sigma]))
  return Object.fromEntries(
    (Object.keys(HABIT_RANGES) as HabitNumber[]).flatMap((habit) => {
      const sigma = sigmas.get(habitErrorId(habit, printerId)) ?? 0
      return sigma > 0 ? [[habit, COVERAGE * sigma]] : []
    }),
  )
}
