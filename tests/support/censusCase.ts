import type { Census } from '../../src/core/model/census.ts'
import { placeMesh } from '../../src/core/mesh/pose.ts'
import { countAllLayers } from '../../src/core/census/countAllLayers.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import type { GeometrySettings } from '../../src/core/model/settings.ts'
import { PLAIN_HABITS } from './plainHabits.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'

/**
 * A census of a mesh in mm, laid on the bed as drawn, with the usual recipe and plain habits but
 * for `changes`.
 */
export function censusOf(mesh: Mesh, changes: Partial<GeometrySettings> = {}): Census {
  return countAllLayers(placeMesh(mesh, 1, POSE_AS_DRAWN), {
    ...RECIPE_DEFAULTS,
    habits: PLAIN_HABITS,
    ...changes,
  })
}

/** How far `value` is from `expected`, as a share of it. */
export const relative = (value: number, expected: number): number => Math.abs(value / expected - 1)
