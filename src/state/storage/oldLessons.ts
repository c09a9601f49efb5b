import type { Lesson } from '../../core/doubt/lessons.ts'
import { parseLessons } from './lessonSchema.ts'

/** Where lessons were kept before the workshop was, in the browser's localStorage. */
const KEY = 'preweigh.lessons'

/** What is still kept there; entries that do not fit are skipped. */
export function oldLessons(): readonly Lesson[] {
  const kept = safely(() => localStorage.getItem(KEY))
  if (kept === null) return []
  return parseLessons(safely(() => JSON.parse(kept) as unknown)) ?? []
}

/** Called once the workshop has them. */
export function dropOldLessons(): void {
  safely(() => {
    localStorage.removeItem(KEY)
  })
}

// Browsers that block storage throw on touching it.
function safely<T>(run: () => T): T | null {
  try {
    return run()
  } catch {
    return null
  }
}
