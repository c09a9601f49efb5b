import { expect, test } from 'vitest'
import { RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { countedSteps } from '../../src/ui/part/steps.ts'

const wallsOf = (walls: number, skins: number) =>
  countedSteps({ ...RECIPE_DEFAULTS, walls, topSkins: skins, bottomSkins: skins })
    .filter(({ key }) => key === 'walls')
    .map(({ recipe }) => recipe.walls)

test('a part of a single wall is offered none less, unless its skins are left', () => {
  expect(wallsOf(1, 0)).toEqual([2])
  expect(wallsOf(1, 4)).toEqual([0, 2])
  expect(wallsOf(3, 0)).toEqual([2, 4])
})
