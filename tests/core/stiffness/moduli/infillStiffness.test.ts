import { describe, expect, it } from 'vitest'
import { PATTERN_NAMES } from '../../../../src/core/data/limits.ts'
import type { Pattern } from '../../../../src/core/model/settings.ts'
import {
  infillStiffnessAlong,
  infillStiffnessUp,
  planeBound,
} from '../../../../src/core/stiffness/moduli/infillStiffness.ts'
import { relative } from '../../../support/censusCase.ts'

/* Thin-wall limits: Gibson and Ashby, Cellular Solids, 2nd ed. 1997. */
describe('infill stiffness', () => {
  it('up through the layers is the filled share exactly', () => {
    for (const pattern of ['grid', 'triangles', 'honeycomb'] as const) {
      for (const share of [0, 0.1, 0.37, 1]) expect(infillStiffnessUp(pattern, share)).toBe(share)
    }
  })

  it.each([
    ['grid', 0.5 * 0.1],
    ['triangles', 0.1 / 3],
    ['honeycomb', 1.5 * 0.1 ** 3],
    ['gyroid', 0.1 ** 2],
  ] as const)('along %s at 10 % meets its limit within 2 %%', (pattern, limit) => {
    expect(relative(infillStiffnessAlong(pattern, 0.1), limit)).toBeLessThan(0.02)
  })

  /* Z. Hashin, S. Shtrikman 1963: plane and space bounds, from the K and G bounds at a Poisson's ratio of 0.35. */
  it.each([
    [0.4, 0.182, 0.25],
    [0.6, 0.333, 0.429],
    [0.75, 0.5, 0.6],
    [0.8, 0.571, 0.667],
    [0.9, 0.75, 0.818],
  ])('at %f honeycomb and triangles stay below %f, gyroid below %f', (share, plane, space) => {
    expect(planeBound(share)).toBeCloseTo(plane, 3)
    expect(infillStiffnessAlong('honeycomb', share)).toBeLessThan(plane)
    expect(infillStiffnessAlong('triangles', share)).toBeLessThan(plane)
    expect(infillStiffnessAlong('gyroid', share)).toBeLessThan(space)
    expect(infillStiffnessAlong('grid', share, 45)).toBeLessThan(plane)
  })

  it('stays below the bounds at every share', () => {
    for (let percent = 1; percent < 100; percent++) {
      const f = percent / 100
      const plane = f / (3 - 2 * f)
      expect(infillStiffnessAlong('honeycomb', f)).toBeLessThan(plane)
      expect(infillStiffnessAlong('triangles', f)).toBeLessThan(plane)
      expect(infillStiffnessAlong('lines', f, 45)).toBeLessThan(plane)
      expect(infillStiffnessAlong('gyroid', f)).toBeLessThan(f / (2 - f))
    }
  })

  it('of triangles reaches the bound where walls are thin', () => {
    const over = (f: number) => infillStiffnessAlong('triangles', f) / planeBound(f)
    expect(Math.abs(1 - over(0.01))).toBeLessThan(0.01)
    expect(Math.abs(1 - over(0.001))).toBeLessThan(0.001)
  })

  it('of a grid follows its lines: f/2 along them, f³/4 at 45°, the same at every quarter turn', () => {
    expect(relative(infillStiffnessAlong('grid', 0.05, 45), 0.05 ** 3 / 4)).toBeLessThan(0.01)
    expect(relative(infillStiffnessAlong('grid', 0.1, 0), 0.05)).toBeLessThan(0.01)
    expect(infillStiffnessAlong('grid', 0.2, 90)).toBeCloseTo(
      infillStiffnessAlong('grid', 0.2, 0),
      12,
    )
    // A square sheet of two directions: 1/E goes with sin² of twice the angle (transformed
    // compliance, any text).
    const at = (deg: number) => 1 / infillStiffnessAlong('grid', 0.3, deg)
    expect(at(22.5)).toBeCloseTo((at(0) + at(45)) / 2, 9)
    // It may pass what is alike in all directions.
    expect(infillStiffnessAlong('grid', 0.4, 0)).toBeGreaterThan(planeBound(0.4))
  })

  it('at 20 % orders grid > triangles > gyroid > honeycomb', () => {
    const at = (pattern: Pattern) => infillStiffnessAlong(pattern, 0.2)
    expect(at('grid')).toBeGreaterThan(at('triangles'))
    expect(at('triangles')).toBeGreaterThan(at('gyroid'))
    expect(at('gyroid')).toBeGreaterThan(at('honeycomb'))
  })

  it.each(Object.keys(PATTERN_NAMES) as Pattern[])(
    'of %s grows from nothing to solid and never passes the filled share',
    (pattern) => {
      let before = 0
      for (let percent = 0; percent <= 100; percent++) {
        const stiffness = infillStiffnessAlong(pattern, percent / 100)
        expect(stiffness).toBeGreaterThanOrEqual(before)
        expect(stiffness).toBeLessThanOrEqual(percent / 100)
        before = stiffness
      }
      expect(infillStiffnessAlong(pattern, 0)).toBe(0)
      expect(infillStiffnessAlong(pattern, 1)).toBe(1)
    },
  )
})
