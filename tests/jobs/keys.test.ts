import { expect, test } from 'vitest'
import {
  POSE_AS_DRAWN,
  RECIPE_DEFAULTS,
  type GeometrySettings,
} from '../../src/core/model/settings.ts'
import { countAllLayers } from '../../src/core/census/countAllLayers.ts'
import { box, merge, translate } from '../support/meshes.ts'
import { censusKey, geometryOf } from '../../src/jobs/keys.ts'

const geometry = geometryOf(RECIPE_DEFAULTS)
const key = (change: Partial<GeometrySettings>) =>
  censusKey('abc', 'millimetre', POSE_AS_DRAWN, { ...geometry, ...change })

test('every geometry setting gives a key of its own', () => {
  const keys = [
    key({}),
    key({ layerMm: 0.1 }),
    key({ firstLayerMm: 0.3 }),
    key({ lineMm: 0.5 }),
    key({ walls: 3 }),
    key({ topSkins: 5 }),
    key({ bottomSkins: 5 }),
    key({ supports: true }),
    key({ supports: true, supportAngleDeg: 40 }),
    key({ brimMm: 3 }),
    key({ habits: { holdMm: 2 } }),
    key({ habits: { holdMm: 3 } }),
    censusKey('abd', 'millimetre', POSE_AS_DRAWN, geometry),
    censusKey('abc', 'inch', POSE_AS_DRAWN, geometry),
    censusKey('abc', 'millimetre', POSE_AS_DRAWN, geometry, ['z1']),
    censusKey('abc', 'millimetre', POSE_AS_DRAWN, geometry, ['z1', 'z2']),
    // Where they overlap the later one holds, so their order counts.
    censusKey('abc', 'millimetre', POSE_AS_DRAWN, geometry, ['z2', 'z1']),
    censusKey('abc', 'millimetre', { rotateDeg: [90, 0, 0] }, geometry),
  ]
  expect(new Set(keys).size).toBe(keys.length)
})

test('the key says nothing of infill, nor of the overhang angle while there are no supports', () => {
  const other = {
    ...RECIPE_DEFAULTS,
    infillPct: 77,
    pattern: 'gyroid',
    supportAngleDeg: 30,
  } as const
  expect(censusKey('abc', 'millimetre', POSE_AS_DRAWN, other)).toBe(key({}))
})

test('habits name a census whatever the order they are told in', () => {
  const one = key({ habits: { holdMm: 2, bead: 'round' } })
  expect(key({ habits: { bead: 'round', holdMm: 2 } })).toBe(one)
})

test('nor of habits that leave the layers as they are', () => {
  // A ledge, so that strands and bands are there.
  const stepped = merge([box(30, 20, 6), translate(box(15, 20, 12), [7, 0, 0])])
  const told = { ...geometry, habits: { joinedShare: 0, strandShare: 1.5 } }
  expect(countAllLayers(stepped, told)).toEqual(countAllLayers(stepped, geometry))
  expect(key({ habits: told.habits })).toBe(key({}))
  expect(key({ habits: { ...told.habits, holdMm: 2 } })).toBe(key({ habits: { holdMm: 2 } }))
})
