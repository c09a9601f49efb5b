import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import type { Lesson } from '../core/doubt/lessons.ts'
import type { Outcome, ProblemCode } from '../core/model/problem.ts'
import { isProject } from '../jobs/archive.ts'
import { readLessonFile } from '../state/storage/lessonSchema.ts'
import { loadFrame } from './loadFrame.ts'
import { lessonsOfFrame } from './priceFrame.ts'
import { whyUnread } from './whyUnread.ts'

/**
 * What a file of lessons says, or what the readings of a saved frame teach. `path` counts from
 * `base`; `locale` as in `loadFrame`. Never rejects for what is wrong with the file.
 */
export async function loadLessons(
  path: string,
  base: string,
  locale: string,
): Promise<Outcome<readonly Lesson[]>> {
  const at = resolve(base, path)
  let bytes: Uint8Array<ArrayBuffer>
  try {
    bytes = Uint8Array.from(await readFile(at))
  } catch (error) {
    const why = whyUnread(error, at)
    return refused('unreadable-file', `The lessons “${path}” could not be read: ${why}.`)
  }
  if (isProject(bytes)) {
    const loaded = await loadFrame(path, base, locale)
    return loaded.ok ? { ok: true, value: lessonsOfFrame(loaded.value) } : loaded
  }
  const lessons = readLessonFile(new TextDecoder().decode(bytes))
  if (lessons === null) return refused('bad-project', `“${path}” holds no list of lessons.`)
  return { ok: true, value: lessons }
}

function refused(code: ProblemCode, message: string): Outcome<readonly Lesson[]> {
  const advice =
    'Name a file saved by “Save all that was learned as a file”, or a project file of the page.'
  return { ok: false, problem: { code, message, advice } }
}
