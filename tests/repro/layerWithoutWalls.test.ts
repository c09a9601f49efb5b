import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { endingsOf } from '../support/endsWell.ts'

// Found by fuzzing (mutant 2828 of seed 605595780): the tip of this pyramid has an outline too
// narrow to hold wall, so that its runs were counted no times, and the mean of nothing made every
// hour NaN.

test('a layer whose outline holds no wall leaves the hours a number', () => {
  const bytes = readFileSync(new URL('layerWithoutWalls.obj', import.meta.url))
  expect(endingsOf(bytes, 'a.obj')).toMatchObject([{ kind: 'figures' }])
})
