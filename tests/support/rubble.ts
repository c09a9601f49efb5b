import type { Manifold, ManifoldToplevel } from 'manifold-3d'
import { seededRandom } from './random.ts'

/** Twelve boxes of any size, turned anyhow and grown into one heap; the same for the same seed. */
export function rubble({ Manifold: Solid }: ManifoldToplevel, seed: number): Manifold {
  const random = seededRandom(seed)
  return Solid.union(
    Array.from({ length: 12 }, () =>
      Solid.cube([6 + 20 * random(), 6 + 20 * random(), 4 + 12 * random()], true)
        .rotate([360 * random(), 360 * random(), 360 * random()])
        .translate([30 * random(), 30 * random(), 15 * random()]),
    ),
  )
}
