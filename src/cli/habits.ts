import { refuseHabits } from '../core/data/habits.ts'
import { habitsOf } from '../core/model/habits.ts'
import type { Habits, KnownHabits } from '../core/model/habits.ts'
import { isJson, parseJson, textOf } from './settings.ts'
import { UsageError } from './usage.ts'

/**
 * How the toolpath was taken to lay what geometry leaves open: every habit, and which of them were
 * told.
 */
export interface HabitsReport extends Habits {
  readonly known: readonly string[]
}

export function reportHabits(habits: KnownHabits = {}): HabitsReport {
  return { ...habitsOf({ habits }), known: Object.keys(habits) }
}

/**
 * Habits from JSON text or the path of a file that holds it. Throws UsageError with the key and its
 * range.
 */
export function habitsFrom(given: string, readText: (path: string) => string): KnownHabits {
  const text = isJson(given) ? given : textOf('--habits', 'JSON', given, readText)
  const told = parseJson('--habits', text)
  if (typeof told !== 'object' || told === null || Array.isArray(told)) {
    throw new UsageError('--habits: it must be a JSON object such as {"strandShare": 1.1}.')
  }
  const wrong = refuseHabits(told as Readonly<Record<string, unknown>>)
  if (wrong !== null) throw new UsageError(`--habits: ${wrong}`)
  return told
}
