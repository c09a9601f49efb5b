import { expect, test } from 'vitest'
import type { Lesson } from '../../../src/core/doubt/lessons.ts'
import { carriedLessons } from '../../../src/core/frame/lessonsOf.ts'

const lesson = (id: string, ratio: number): Lesson => ({
  id,
  of: 'mass',
  materialIds: ['petg'],
  printerId: 'own',
  shared: [],
  ratio,
  noise: 0.01,
})
const ids = (lessons: readonly Lesson[]): readonly string[] => lessons.map(({ id }) => id)

test('a frame hears the lessons of others, not its own', () => {
  const all = [lesson('a/1', 1.02), lesson('b/1', 1.03)]
  expect(ids(carriedLessons(all, 'a'))).toEqual(['b/1'])
  expect(ids(carriedLessons(all, 'c'))).toEqual(['a/1', 'b/1'])
})

test('what was read once teaches once, however often its frame was opened', () => {
  const all = [lesson('a/1', 1.02), lesson('copy/7', 1.02), lesson('b/1', 1.03)]
  expect(ids(carriedLessons(all, 'a'))).toEqual(['b/1'])
  expect(ids(carriedLessons(all, 'copy'))).toEqual(['b/1'])
  expect(ids(carriedLessons(all, 'c'))).toEqual(['a/1', 'b/1'])
})
