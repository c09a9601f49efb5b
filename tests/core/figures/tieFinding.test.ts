import { expect, test } from 'vitest'
import { tieFinding } from '../../../src/core/figures/tieFinding.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { censusOf } from '../../support/censusCase.ts'
import { box } from '../../support/meshes.ts'

const told = (heightMm: number) =>
  tieFinding(censusOf(box(30, 20, heightMm)), RECIPE_DEFAULTS, 'en-GB')

test('1.5 mm at 0.2 mm is told as 7 or 8 layers, with the heights that divide it', () => {
  const finding = told(1.5)
  expect(finding).toMatchObject({ code: 'layer-tie', short: '7 or 8 layers' })
  // 1.3 mm above the first layer: 6 layers of 0.2167 mm, 7 of 0.1857 mm.
  expect(finding?.message).toMatch(/Layers of 0\.217 mm or 0\.186 mm would divide it/)
})

test.each([[1.6], [1.62], [1.45]])('nothing is told of %s mm', (heightMm) => {
  expect(told(heightMm)).toBeNull()
})

test('nothing is told of a tall part, where a layer hardly counts', () => {
  expect(told(60.1)).toBeNull()
})
