import { expect, test } from 'vitest'
import { frameDoubt } from '../../../src/core/frame/frameDoubt.ts'
import { habitGrams } from '../../../src/core/frame/habitGrams.ts'
import type { SharedError } from '../../../src/core/model/doubt.ts'
import { doubtedPart } from '../../support/doubtedParts.ts'

const row = (id: string, eachG: number, pieces: number, shared: readonly SharedError[]) => {
  const part = doubtedPart(id, eachG, pieces)
  const doubt = { ...part.figures.doubt, mass: { shared, own: 0.01 } }
  return { ...part, figures: { ...part.figures, doubt } }
}
const error = (id: string, effect: number): SharedError => ({ id, name: id, effect })

test('a habit that all parts share adds up over the frame, either way (worked by hand)', () => {
  const doubt = frameDoubt(
    [
      row('arm', 20, 4, [error('strandShare:p', 0.01), error('ends:p', 0.02)]),
      row('deck', 30, 1, [error('strandShare:p', 0.03), error('density:pla', 0.03)]),
    ],
    [],
  )
  // Two deviations: 2·(4·20·0.01 + 30·0.03) and 2·4·20·0.02.
  expect(habitGrams(doubt, 'p')).toEqual({
    strandShare: expect.closeTo(3.4, 9) as number,
    joinedShare: expect.closeTo(3.2, 9) as number,
  })
  expect(habitGrams(doubt, 'other printer')).toEqual({})
})

test('nothing is said of habits where nothing is in doubt', () => {
  expect(habitGrams(frameDoubt([], []), 'p')).toEqual({})
})
