import { describe, expect, it } from 'vitest'
import { PATTERN_NAMES } from '../../../../src/core/data/limits.ts'
import type { Pattern } from '../../../../src/core/model/settings.ts'
import {
  infillStiffnessAlong,
  infillStiffnessUp,
} from '../../../../src/core/aircraft/twin/infillStiffness.ts'
import { relative } from '../../../support/censusCase.ts'

/* Thin-wall limits: Gibson and Ashby, Cellular Solids, 2nd ed. 1997. */
describe('infill stiffness', () => {
  it('up through the layers is the filled share exactly', () => {
    for (const share of [0, 0.1, 0.37, 1]) expect(infillStiffnessUp(share)).toBe(share)
  })

  it.each([
    ['grid', 0.5 * 0.1],
    ['triangles', 0.1 / 3],
    ['honeycomb', 1.5 * 0.1 ** 3],
    ['gyroid', 0.1 ** 2],
  ] as const)('along %s at 10 % meets its limit within 2 %%', (pattern, limit) => {
    expect(relative(infillStiffnessAlong(pattern, 0.1), limit)).toBeLessThan(0.02)
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
