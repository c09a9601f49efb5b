import { describe, expect, it } from 'vitest'
import { measureMesh } from '../../../src/core/mesh/measure.ts'
import {
  box,
  loopArea,
  prism,
  rotate,
  shoulderLength,
  single,
  specimenOutline,
  type SpecimenName,
} from '../../support/meshes.ts'

/*
 * Standard test bars: nominal dimensions of ASTM D638 (types I–V), ISO 527-2 (1A, 1B) and ISO 178.
 * Areas and volumes were worked out from those dimensions apart from this program (arcs tangent to the
 * narrow edge; type IV two tangent arcs), so they check both the outlines and the measuring.
 */
const BARS: readonly (readonly [
  SpecimenName,
  areaMm2: number,
  thickness: number,
  volume: number,
])[] = [
  ['I', 2623.18, 3.2, 8394.2],
  ['I', 2623.18, 4, 10492.7],
  ['I', 2623.18, 5, 13115.9],
  ['II', 2198.21, 3.2, 7034.3],
  ['III', 6200.07, 7, 43400.5],
  ['IV', 1503.99, 3.2, 4812.8],
  ['IV', 1503.99, 4, 6015.9],
  ['V', 471.53, 3.2, 1508.9],
  ['1A', 2400.02, 4, 9600.1],
  ['1A-150', 2000.02, 4, 8000.1],
  ['1B', 2077.52, 4, 8310.1],
]

describe('standard test bars', () => {
  it.each(BARS)(
    'type %s: %d mm² by %d mm is %d mm³ to 1 in 2000',
    (name, area, thickness, volume) => {
      const outline = specimenOutline(name, 64)
      expect(Math.abs(loopArea(outline) / area - 1)).toBeLessThan(5e-4)
      for (const mesh of [
        prism(outline, thickness),
        single(prism(outline, thickness)),
        rotate(prism(outline, thickness), [31, 62, 13]),
      ]) {
        const measured = measureMesh(mesh, 1)
        expect(Math.abs(measured.volumeMm3 / volume - 1)).toBeLessThan(5e-4)
        expect(measured.watertight).toBe(true)
        expect(measured.findings).toEqual([])
      }
    },
  )

  it('facets cost a bar less than 0.02 %, and less the finer they are', () => {
    const area = (segments: number) => loopArea(specimenOutline('I', segments))
    const limit = area(4096)
    expect(Math.abs(area(64) / limit - 1)).toBeLessThan(2e-4)
    expect(Math.abs(area(64) - limit)).toBeLessThan(Math.abs(area(16) - limit))
  })

  it.each([
    ['I', 21.142],
    ['IV', 21.558],
    ['1A', 14.663],
    ['1B', 23.979],
  ] as const)('the shoulder of type %s is %d mm long', (name, length) => {
    expect(shoulderLength(name)).toBeCloseTo(length, 3)
  })

  it('the ISO 178 bar (80 × 10 × 4 mm) and a 20 mm cube are exact to 1e-9', () => {
    const bar = measureMesh(prism(specimenOutline('178'), 4), 1)
    expect(Math.abs(bar.volumeMm3 - 3200)).toBeLessThan(1e-9)
    expect(bar.boundsMm).toEqual({ min: [-40, -5, 0], max: [40, 5, 4] })
    const cube = measureMesh(box(20, 20, 20), 1)
    expect(Math.abs(cube.volumeMm3 - 8000)).toBeLessThan(1e-9)
    expect(Math.abs(cube.areaMm2 - 2400)).toBeLessThan(1e-9)
  })
})
