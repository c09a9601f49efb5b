import { expect, test } from 'vitest'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { HABIT_FIELDS } from '../../../src/core/data/habits.ts'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { frameDoubt } from '../../../src/core/frame/frameDoubt.ts'
import { habitGrams } from '../../../src/core/frame/habitGrams.ts'
import type { SharedError } from '../../../src/core/model/doubt.ts'
import { HABIT_DEFAULTS, type Habits, type KnownHabits } from '../../../src/core/model/habits.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { doubtedPart } from '../../support/doubtedParts.ts'
import { box, merge, translate } from '../../support/meshes.ts'

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

/** A step inside its outline and an underside in the air; and a rib of three lines and a half. */
const meshes = [
  merge([box(60, 40, 10), translate(box(30, 40, 20), [15, 0, 0])]),
  merge([box(20, 20, 10), translate(box(40, 40, 6), [-10, -10, 10])]),
  box(60, 1.4, 20),
]

/** All of them as printed by a printer whose habits are known so far. */
function frameOf(habits: KnownHabits) {
  const recipe = { ...RECIPE_DEFAULTS, infillPct: 15, topSkins: 6, habits }
  return frameDoubt(
    meshes.map((mesh, i) => {
      const figures = partFigures(
        countAllLayers(mesh, recipe),
        recipe,
        MATERIALS[0]!,
        PRINTER_DEFAULT,
        PRICES_DEFAULTS,
      )
      return { ...doubtedPart(`part ${i}`, figures.massG.mid, 2), figures }
    }),
    [],
  )
}

test('every habit is told by what the range loses once it is known', () => {
  const unknown = frameOf({})
  const grams = habitGrams(unknown, PRINTER_DEFAULT.id)
  const told = (Object.keys(HABIT_FIELDS) as (keyof Habits)[]).filter((key) => key in grams)
  expect(told).toEqual(
    expect.arrayContaining([
      'bead',
      'thinWalls',
      'undersides',
      'gapLines',
      'outerWidthShare',
      'overlapShare',
      'slopeBandMm',
      'strandShare',
      'joinedShare',
    ]),
  )
  const withIt: Partial<Record<keyof Habits, keyof Habits>> = {
    slopeBandMm: 'holdMm',
    thinWalls: 'oneLineBelow',
  }
  for (const habit of told) {
    const keys = [habit, withIt[habit] ?? habit]
    const known = frameOf(Object.fromEntries(keys.map((key) => [key, HABIT_DEFAULTS[key]])))
    const lostG = 2 * Math.sqrt(unknown.allUpBell.sigma ** 2 - known.allUpBell.sigma ** 2)
    expect(known.allUpBell.mean, habit).toBeCloseTo(unknown.allUpBell.mean, 9)
    expect(grams[habit], habit).toBeCloseTo(lostG, 6)
  }
})

test('a scale that said it all leaves habits little to add', () => {
  const part = doubtedPart('arm', 20, 4)
  const doubt = { ...part.figures.doubt, mass: { shared: [error('strandShare:p', 0.05)], own: 0 } }
  const weighed = { eachG: 20.5, pieces: 4, noiseG: 0.01, trusted: true }
  const arms = { ...part, figures: { ...part.figures, doubt } }
  expect(habitGrams(frameDoubt([arms], []), 'p').strandShare).toBeCloseTo(8, 9)
  expect(habitGrams(frameDoubt([{ ...arms, weighed }], []), 'p').strandShare ?? 0).toBeLessThan(0.2)
})
