import { describe, expect, test } from 'vitest'
import type { Lesson } from '../../../src/core/doubt/lessons.ts'
import {
  lessonFile,
  parseLessons,
  readLessonFile,
} from '../../../src/state/storage/lessonSchema.ts'

const LESSON: Lesson = {
  id: 'frame/deck',
  of: 'mass',
  materialIds: ['pla', 'petg'],
  printerId: 'ordinary',
  shared: [{ id: 'density:pla', name: 'Density of PLA', effect: 0.03 }],
  ratio: 1.05,
  noise: 0.01,
}

describe('lessons in a file', () => {
  test('come back as they were', async () => {
    const hours: Lesson = { ...LESSON, id: 'frame/clock', of: 'time', materialIds: [] }
    expect(readLessonFile(await lessonFile([LESSON, hours]).text())).toEqual([LESSON, hours])
  })

  test('kept before whole frames and hours taught are of the grams of their one spool', () => {
    const { of: _of, materialIds: _ids, ...rest } = LESSON
    expect(parseLessons([{ ...rest, materialId: 'petg' }])).toEqual([
      { ...LESSON, materialIds: ['petg'] },
    ])
  })

  test('that do not fit are skipped, and what is no list is refused', () => {
    expect(parseLessons([LESSON, { ...LESSON, ratio: -1 }, 7])).toEqual([LESSON])
    for (const text of ['', '{}', '{"lessons":7}', '3', 'solid arm']) {
      expect(readLessonFile(text)).toBeNull()
    }
  })
})
