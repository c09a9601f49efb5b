import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { depositOf } from '../../../src/core/figures/deposit.ts'
import { PATTERN_MODELS, infillOn } from '../../../src/core/figures/infill.ts'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import type { Pattern, Recipe } from '../../../src/core/model/settings.ts'
import { gyroidRows, honeycombRows } from '../../support/layCurves.ts'
import { blockCensus } from '../../support/blockCensus.ts'
import { PLAIN_HABITS } from '../../support/plainHabits.ts'
import { box } from '../../support/meshes.ts'

const PATTERNS = Object.keys(PATTERN_MODELS) as readonly Pattern[]

/**
 * Recipe of the sparse blocks of P. Ravi, 3D Printing in Medicine 2020, 6, doi
 * 10.1186/s41205-020-00063-8.
 */
const BARE: Recipe = {
  ...RECIPE_DEFAULTS,
  layerMm: 0.2,
  lineMm: 0.4,
  walls: 0,
  topSkins: 0,
  bottomSkins: 0,
  pattern: 'lines',
  habits: PLAIN_HABITS,
}

describe('turns of a sparse 20 × 20 × 5 mm block', () => {
  // Ravi 2020: 86.5–95.9 % of the plastic lies in lines, so 13.5 % down to 4.1 % in turns; ±3
  // points allowed.
  it.each([
    [9.58, 13.5],
    [32.33, 4.1],
  ])('at %s percent infill hold about %s percent of the plastic', (infillPct, published) => {
    const recipe = { ...BARE, infillPct }
    for (const census of [blockCensus(20, 20, 5, recipe), countAllLayers(box(20, 20, 5), recipe)]) {
      const { turnMm3, infillMm3 } = depositOf(census, recipe)
      expect(Math.abs((100 * turnMm3) / infillMm3 - published)).toBeLessThan(3)
    }
  })

  it.each([[9.58], [20.36], [32.33]])('at %s percent hold 4–14 %, ±3 points', (infillPct) => {
    const recipe = { ...BARE, infillPct }
    for (const census of [blockCensus(20, 20, 5, recipe), countAllLayers(box(20, 20, 5), recipe)]) {
      const { turnMm3, infillMm3 } = depositOf(census, recipe)
      expect((100 * turnMm3) / infillMm3).toBeGreaterThan(4 - 3)
      expect((100 * turnMm3) / infillMm3).toBeLessThan(14 + 3)
    }
  })

  it('by hand: lines of 20 mm every 4 mm at 10 %, each turn 4 mm less the line’s own width', () => {
    const recipe = { ...BARE, infillPct: 10 }
    const { pathMm, turnMm, lines } = infillOn(blockCensus(20, 20, 5, recipe), recipe, 0, 1)
    expect(lines).toBeCloseTo(5, 10)
    expect(turnMm).toBeCloseTo(4 * 3.6, 10)
    expect(pathMm - turnMm).toBeCloseTo(100, 10)
  })
})

describe.each(PATTERNS.map((pattern) => [pattern]))('%s infill', (pattern) => {
  it('lays nothing at 0 % and fills the room without turns at 100 %', () => {
    const none = { ...BARE, pattern, infillPct: 0 }
    const full = { ...BARE, pattern, infillPct: 100 }
    expect(depositOf(blockCensus(20, 20, 5, none), none).infillMm3).toBe(0)
    const { infillMm3, turnMm3 } = depositOf(blockCensus(20, 20, 5, full), full)
    expect(infillMm3).toBeCloseTo(2000, 8)
    expect(turnMm3).toBe(0)
  })

  it('lays its share of the room and a little more, never more than the room holds', () => {
    const size = fc.integer({ min: 1, max: 120 })
    const share = fc.double({ min: 0, max: 100, noNaN: true })
    fc.assert(
      fc.property(size, size, share, (w, d, infillPct) => {
        const recipe = { ...BARE, pattern, infillPct }
        const { infillMm3, turnMm3 } = depositOf(blockCensus(w, d, 1, recipe), recipe)
        const room = w * d
        expect(infillMm3 - turnMm3).toBeCloseTo((room * infillPct) / 100, 6)
        expect(turnMm3).toBeGreaterThanOrEqual(0)
        expect(infillMm3).toBeLessThanOrEqual(room + 1e-9)
      }),
      { seed: 250, numRuns: 200 },
    )
  })
})

describe('gyroid path factor', () => {
  // sin x cos y + sin y cos z + sin z cos x = 0, cut at many heights; straight lines of the same
  // count are 2/a long per area.
  it('is the length of the cut surface over that of straight lines', () => {
    const steps = 120
    const heights = 24
    const pitch = (2 * Math.PI) / steps
    let length = 0
    for (let k = 0; k < heights; k++) {
      const z = (2 * Math.PI * (k + 0.5)) / heights
      const f = (i: number, j: number) => {
        const x = i * pitch
        const y = j * pitch
        return Math.sin(x) * Math.cos(y) + Math.sin(y) * Math.cos(z) + Math.sin(z) * Math.cos(x)
      }
      for (let i = 0; i < steps; i++) {
        for (let j = 0; j < steps; j++) {
          const corners = [f(i, j), f(i + 1, j), f(i + 1, j + 1), f(i, j + 1)] as const
          length += crossing(corners[0], corners[1], corners[2]) * pitch
          length += crossing(corners[2], corners[3], corners[0]) * pitch
        }
      }
    }
    const perArea = length / heights / (2 * Math.PI) ** 2
    const straight = 2 / (2 * Math.PI)
    expect(perArea / straight).toBeCloseTo(PATTERN_MODELS.gyroid.pathFactor, 2)
  })
})

describe('ends of lines that wind', () => {
  // The paths of the move-by-move oracle; a path crosses an edge as often as it is long across it.
  const reach = { low: [0, 0], high: [60, 60] } as const
  const paths = {
    honeycomb: honeycombRows(reach, 1, 5),
    gyroid: Array.from({ length: 24 }, (_, k) =>
      gyroidRows(reach, 5, (10 * (k + 0.5)) / 24),
    ).flatMap(({ rows }) => rows),
  }
  it.each([
    ['honeycomb', 0.015],
    ['gyroid', 0.02],
  ] as const)('of %s are told by how askew an edge lies, within %s', (pattern, within) => {
    const moves = paths[pattern].flatMap((path) =>
      path.slice(1).map((q, i) => [q[0] - path[i]![0], q[1] - path[i]![1]] as const),
    )
    const longMm = moves.reduce((sum, [u, v]) => sum + Math.hypot(u, v), 0)
    for (const deg of [0, 15, 30, 45, 60, 75]) {
      const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
      // Along x and along y by turns.
      const ends = moves.reduce(
        (sum, [u, v]) => sum + (Math.abs(u * s - v * c) + Math.abs(v * s - u * c)) / 2,
        0,
      )
      const seen = (c + s) / 2
      const told = 1 + PATTERN_MODELS[pattern].askewEnds * ((Math.PI / 2) * seen - 1)
      expect(Math.abs(ends / longMm - (2 / Math.PI) * told)).toBeLessThan(within)
    }
  })
})

/** Length of the zero line in a right triangle with unit legs that meet at the middle corner. */
function crossing(a: number, b: number, c: number): number {
  const at = (p: number, q: number) => p / (p - q)
  const points: [number, number][] = []
  if (a > 0 !== b > 0) points.push([1 - at(a, b), 0])
  if (b > 0 !== c > 0) points.push([0, at(b, c)])
  if (c > 0 !== a > 0) points.push([at(c, a), 1 - at(c, a)])
  const [p, q] = points
  return p && q ? Math.hypot(p[0] - q[0], p[1] - q[1]) : 0
}
