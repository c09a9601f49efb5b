import type { Lesson } from '../../core/doubt/lessons.ts'
import { parseLessons } from './lessonSchema.ts'

/**
 * What readings taught of the builder's spools and printers, for frames to come. One small list in
 * the browser's localStorage, which belongs to no project; a browser that keeps nothing leaves it
 * empty.
 */
const KEY = 'preweigh.lessons'
/** The latest are kept. */
const MOST = 500

/** Every lesson that can be read; entries that do not fit are skipped. */
export function keptLessons(): readonly Lesson[] {
  const kept = safely(() => localStorage.getItem(KEY))
  if (kept === null) return []
  return parseLessons(safely(() => JSON.parse(kept) as unknown)) ?? []
}

/** Writes the list anew; a browser that refuses keeps it for this visit only. */
export function keepLessons(lessons: readonly Lesson[]): void {
  safely(() => {
    localStorage.setItem(KEY, JSON.stringify(lessons.slice(-MOST)))
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
