import * as v from 'valibot'
import { LESSON_LIMITS, TEXT_LIMITS } from '../../core/data/limits.ts'
import type { Lesson } from '../../core/doubt/lessons.ts'

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(TEXT_LIMITS.lessonId))
const finite = v.pipe(v.number(), v.finite())
const positive = v.pipe(finite, v.gtValue(0))
const common = {
  id,
  printerId: id,
  shared: v.pipe(
    v.array(v.object({ id, name: v.string(), effect: finite })),
    v.maxLength(LESSON_LIMITS.errors),
  ),
  ratio: positive,
  noise: positive,
}
/** Lessons were of one spool's grams before hours and whole frames taught too. */
const OfOneSpool = v.pipe(
  v.object({ ...common, materialId: id }),
  v.transform(({ materialId, ...rest }) => {
    return { ...rest, of: 'mass' as const, materialIds: [materialId] }
  }),
)
const LessonSchema = v.union([
  v.object({
    ...common,
    of: v.picklist(['mass', 'time']),
    materialIds: v.pipe(v.array(id), v.maxLength(LESSON_LIMITS.spools)),
  }),
  OfOneSpool,
]) satisfies v.GenericSchema<unknown, Lesson>

/** What the file of a builder's lessons ends in. */
export const LESSONS_ENDING = '.lessons.json'

/** The lessons as a file to keep, or to hand to the command. */
export function lessonFile(lessons: readonly Lesson[]): Blob {
  return new Blob([JSON.stringify({ lessons }, null, 1)], { type: 'application/json' })
}

/** The lessons in such a file, or in a bare list; null where the text is neither. */
export function readLessonFile(text: string): readonly Lesson[] | null {
  try {
    const read: unknown = JSON.parse(text)
    return parseLessons(v.is(LESSON_FILE, read) ? read.lessons : read)
  } catch {
    return null
  }
}

const LESSON_FILE = v.object({ lessons: v.array(v.unknown()) })

/**
 * Every lesson of a list that can be read; entries that do not fit are skipped. Null for no list.
 */
export function parseLessons(list: unknown): readonly Lesson[] | null {
  if (!Array.isArray(list)) return null
  return list.flatMap((each: unknown): Lesson[] => {
    const parsed = v.safeParse(LessonSchema, each)
    return parsed.success ? [parsed.output] : []
  })
}
