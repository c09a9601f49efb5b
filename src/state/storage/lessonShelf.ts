import * as v from 'valibot'
import type { Lesson } from '../../core/doubt/lessons.ts'

/**
 * What weighings taught of the builder's spools and printers, for frames to come. One small list in
 * the browser's localStorage, which belongs to no project; a browser that keeps nothing leaves it
 * empty.
 */
const KEY = 'preweigh.lessons'
/** The latest are kept. */
const MOST = 500

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(400))
const finite = v.pipe(v.number(), v.finite())
const positive = v.pipe(finite, v.gtValue(0))
const LessonSchema = v.object({
  id,
  materialId: id,
  printerId: id,
  shared: v.pipe(v.array(v.object({ id, name: v.string(), effect: finite })), v.maxLength(100)),
  ratio: positive,
  noise: positive,
}) satisfies v.GenericSchema<unknown, Lesson>

/** Every lesson that can be read; entries that do not fit are skipped. */
export function keptLessons(): readonly Lesson[] {
  const kept = safely(() => localStorage.getItem(KEY))
  if (kept === null) return []
  const list: unknown = safely(() => JSON.parse(kept) as unknown)
  if (!Array.isArray(list)) return []
  return list.flatMap((each: unknown): Lesson[] => {
    const parsed = v.safeParse(LessonSchema, each)
    return parsed.success ? [parsed.output] : []
  })
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
