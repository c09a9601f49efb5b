import { describe, expect, test } from 'vitest'
import { isotropic } from '../../../../src/core/stiffness/moduli/elastic.ts'
import { buildLevel } from '../../../../src/core/stiffness/solid/buildLevel.ts'
import { lowestTones } from '../../../../src/core/stiffness/solid/frequencies.ts'
import { holdPart } from '../../../../src/core/stiffness/solid/multigrid.ts'
import { blockOf, evenLines, placesOf, shareOf } from '../../../support/solids.ts'

/**
 * First bending tones in the plane xz of a slender cantilever with a mass at its end, as (β L)².
 */
function roots(massRatio: number): number[] {
  const [L, B, H, E, density] = [160, 2, 2, 2000, 1.2e-9]
  const lines = [evenLines(L, 80), evenLines(B, 1), evenLines(H, 1)] as const
  const level = buildLevel(blockOf(lines, isotropic(E, 0)))
  const places = placesOf(level)
  const held = new Uint8Array(3 * level.nodes)
  const mass = new Float64Array(3 * level.nodes)
  places.forEach(([x, y, z], node) => {
    held.set([x === 0 ? 1 : 0, 1, x === 0 ? 1 : 0], 3 * node)
    const volume = shareOf(lines[0], x) * shareOf(lines[1], y) * shareOf(lines[2], z)
    const tip = x === L ? (massRatio * density * L * B * H) / 4 : 0
    mass.fill(density * volume + tip, 3 * node, 3 * node + 3)
  })
  const { hz } = lowestTones(holdPart(level, held), mass, {
    count: 3,
    tolerance: 1e-5,
    mostSteps: 200,
  })
  const scale = Math.sqrt((E * ((B * H ** 3) / 12)) / (density * B * H * L ** 4)) / (2 * Math.PI)
  return hz.map((value) => value / scale)
}

describe('frequencies', () => {
  // Mathematical Problems in Engineering 2017, 1568019, table 1 (tip as heavy as the beam).
  test('tip as heavy as the beam: 1.5573, 16.250, 50.896', () => {
    const exact = [1.557298, 16.25009, 50.89584]
    roots(1).forEach((root, i) => expect(Math.abs(root / exact[i]! - 1)).toBeLessThan(0.01))
  })

  // Roots 1.8751, 4.6941, 7.8548 of any textbook; tip masses by 1 + cos x cosh x − μ x (sin x cosh
  // x − cos x sinh x) = 0.
  test.each([
    [0, 3.51602],
    [0.1, 2.96784],
    [5, 0.75694],
  ])('tip %f times the beam: %f', (ratio, root) => {
    expect(Math.abs(roots(ratio)[0]! / root - 1)).toBeLessThan(0.01)
  })

  test('bare: all three', () => {
    const exact = [1.8751, 4.6941, 7.8548].map((root) => root ** 2)
    roots(0).forEach((root, i) => expect(Math.abs(root / exact[i]! - 1)).toBeLessThan(0.01))
  })
})
