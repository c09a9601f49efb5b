import { describe, expect, test } from 'vitest'
import { PATTERN_NAMES } from '../../../../src/core/data/limits.ts'
import type { Pattern } from '../../../../src/core/model/settings.ts'
import type { Elastic } from '../../../../src/core/stiffness/moduli/elastic.ts'
import {
  infillElastic,
  POISSON,
  solidElastic,
} from '../../../../src/core/stiffness/moduli/printedModuli.ts'

const PLASTIC = { youngsMPa: 2000, acrossShare: 0.9 }
const PATTERNS = Object.keys(PATTERN_NAMES) as Pattern[]

/** Young's moduli along x and z, from the stiffness (compliance by Cramer's rule). */
function youngs({ c11, c22, c33, c12, c13, c23 }: Elastic): { x: number; z: number } {
  const whole =
    c11 * (c22 * c33 - c23 * c23) - c12 * (c12 * c33 - c23 * c13) + c13 * (c12 * c23 - c22 * c13)
  return { x: whole / (c22 * c33 - c23 * c23), z: whole / (c11 * c22 - c12 * c12) }
}

/** All of its principal minors are above 0: it takes work to strain it, any way. */
function expectStable(made: Elastic): void {
  const { c11, c22, c33, c12, c13, c23, g12, g13, g23 } = made
  expect(Math.min(c11, c22, c33, g12, g13, g23)).toBeGreaterThan(0)
  expect(c11 * c22 - c12 * c12).toBeGreaterThan(0)
  expect(c11 * c33 - c13 * c13).toBeGreaterThan(0)
  expect(youngs(made).z).toBeGreaterThan(0)
  expect(c22 * c33 - c23 * c23).toBeGreaterThan(0)
}

describe('moduli of printed plastic', () => {
  test('solid: the bars it was told by', () => {
    const { x, z } = youngs(solidElastic(PLASTIC))
    expect(x).toBeCloseTo(2000, 6)
    expect(z).toBeCloseTo(1800, 6)
  })

  test.each(PATTERNS)('%s: stable at every share and turn, and solid when full', (pattern) => {
    for (let pct = 1; pct <= 100; pct++) {
      for (const turn of [0, 17, 45])
        expectStable(infillElastic(pattern, pct / 100, PLASTIC, turn)!)
    }
    expect(infillElastic(pattern, 1, PLASTIC)).toEqual(solidElastic(PLASTIC))
    expect(infillElastic(pattern, 0, PLASTIC)).toBeNull()
    const nearly = infillElastic(pattern, 0.9999, PLASTIC)!
    expect(Math.abs(nearly.c11 / solidElastic(PLASTIC).c11 - 1)).toBeLessThan(0.01)
  })

  // Z. Hashin, S. Shtrikman 1963: cells in a plane f / (3 − 2 f); alike in space f / (2 − f) at ν
  // 0.35 (prints.md T5.9).
  test('in plane none alike in all directions passes its bound, in any turn', () => {
    for (let pct = 2; pct < 100; pct += 2) {
      const f = pct / 100
      for (const turn of [0, 20, 45]) {
        const at = (pattern: Pattern): number =>
          youngs(infillElastic(pattern, f, PLASTIC, turn)!).x / 2000
        expect(at('triangles')).toBeLessThan((f / (3 - 2 * f)) * 1.001)
        expect(at('honeycomb')).toBeLessThan((f / (3 - 2 * f)) * 1.001)
        expect(at('gyroid')).toBeLessThan(f / (2 - f))
        expect(at('grid')).toBeLessThan(f)
      }
    }
  })

  // Gibson and Ashby, thin walls: f/2 along a square grid's lines, f³/4 between, f/3 triangles, f
  // up.
  test('thin walls: their limits', () => {
    const at = (pattern: Pattern, turn: number) =>
      youngs(infillElastic(pattern, 0.1, PLASTIC, turn)!)
    expect(at('grid', 45).x / 2000).toBeCloseTo(0.05, 3)
    expect(at('grid', 0).x / 2000).toBeCloseTo(0.1 ** 3 / 4, 4)
    expect(at('triangles', 10).x / 2000).toBeCloseTo(0.1 / 3, 3)
    expect(at('grid', 0).z / 1800).toBeCloseTo(0.1, 9)
    expect(at('triangles', 0).z / 1800).toBeCloseTo(0.1, 9)
  })

  test('a grid shears as easily along its lines as it bends between them', () => {
    // Half-way between, pulling is shearing: 1 / E45 = (2 / E + 1 / G − 2 ν / E) / 4.
    const along = infillElastic('grid', 0.2, PLASTIC, 45)!
    const between = infillElastic('grid', 0.2, PLASTIC, 0)!
    expect(along.g12).toBeLessThan(between.g12 / 20)
    expect(between.c12).toBeGreaterThan(along.c12)
    expect(POISSON).toBeGreaterThan(0.3)
  })
})
