import type { Habits } from '../../../core/model/habits.ts'
import { HABIT_DRAWINGS } from './habitDrawings.tsx'

/** What a habit looks like, small. */
export function HabitPicture({ habit }: { readonly habit: keyof Habits }) {
  const { words, drawing } = HABIT_DRAWINGS[habit]
  return (
    <svg className="habit-picture" viewBox="0 0 72 48" role="img" aria-label={words}>
      {drawing}
    </svg>
  )
}
