import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { placeMesh } from '../../../../src/core/mesh/pose.ts'
import type { Mesh } from '../../../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN } from '../../../../src/core/model/settings.ts'
import { plateOutline } from '../../../../src/core/aircraft/twin/outline.ts'
import { outlineSvg } from '../../../../src/core/aircraft/twin/outlineSvg.ts'
import { relative } from '../../../support/censusCase.ts'
import {
  box,
  circle,
  flip,
  loopArea,
  merge,
  prism,
  rectangle,
  rotate,
  specimenOutline,
  translate,
  type Loop,
} from '../../../support/meshes.ts'

function outlineOf(mesh: Mesh) {
  const outline = plateOutline(placeMesh(mesh, 1, POSE_AS_DRAWN))
  if (!outline) throw new Error('no outline')
  return outline
}

/** Closed loops of an SVG path of straight lines, read back from its text. */
function loopsOf(svg: string): Loop[] {
  const path = / d="([^"]*)"/.exec(svg)?.[1] ?? ''
  return path
    .split('Z')
    .filter((text) => text !== '')
    .map((text) =>
      text
        .slice(1)
        .split('L')
        .map((pair) => pair.split(' ').map(Number) as unknown as readonly [number, number]),
    )
}

describe('plate outline', () => {
  it('of a plate with two holes has its area, its cut length and its holes', () => {
    const holes = [circle(5, 60, 20, 15), circle(3, 40, 60, 25)]
    const outline = outlineOf(prism(rectangle(80, 40), 4, holes))
    const area = 3200 - holes.reduce((sum, hole) => sum + loopArea(hole), 0)
    expect(relative(outline.areaMm2, area)).toBeLessThan(1e-9)
    const rim = (radius: number, n: number) => 2 * n * radius * Math.sin(Math.PI / n)
    expect(outline.cutLengthMm).toBeCloseTo(240 + rim(5, 60) + rim(3, 40), 6)
    expect(outline.contours).toHaveLength(3)
    expect(outline.contours.filter(({ hole }) => hole)).toHaveLength(2)
    expect(outline.sheetMm).toEqual([80, 40])
    expect(outline.crossing).toBe(false)
    // Cuts lie a ten-thousandth of a millimetre below the middle, so that rounding decides nothing.
    expect(outline.cutHeightMm).toBeCloseTo(2, 3)
  })

  it.each([
    ['I', 2623.18],
    ['IV', 1503.99],
    ['1A', 2400.02],
    ['1B', 2077.52],
    ['178', 800],
  ] as const)(
    'of test bar %s (ASTM D638, ISO 527-2, ISO 178) encloses %f mm² within 0.05 %%',
    (name, area) => {
      expect(relative(outlineOf(prism(specimenOutline(name), 4)).areaMm2, area)).toBeLessThan(5e-4)
    },
  )

  it('is the same of a mesh turned inside out', () => {
    const plate = prism(rectangle(50, 30), 3, [circle(4, 24, 25, 15)])
    const [right, wrong] = [outlineOf(plate), outlineOf(flip(plate))]
    expect(wrong.areaMm2).toBeCloseTo(right.areaMm2, 9)
    const holes = wrong.contours.filter(({ hole }) => hole)
    expect(holes).toHaveLength(1)
    expect(holes[0]?.areaMm2).toBeLessThan(60)
    expect(wrong.contours).toEqual(
      expect.arrayContaining([expect.objectContaining({ hole: false })]),
    )
  })

  it('counts bodies that overlap once and says that its lines cross', () => {
    const cross = merge([box(60, 10, 4), translate(box(10, 60, 4), [25, -25, 0])])
    const outline = outlineOf(cross)
    expect(outline.crossing).toBe(true)
    expect(relative(outline.areaMm2, 1100)).toBeLessThan(0.005)
  })

  it('finds the smallest rectangle of a plate drawn askew', () => {
    const { sheetMm, longDeg, areaMm2 } = outlineOf(rotate(box(100, 20, 4), [0, 0, 33]))
    expect(longDeg).toBeCloseTo(33, 6)
    expect(sheetMm[0]).toBeCloseTo(100, 6)
    expect(sheetMm[1]).toBeCloseTo(20, 6)
    expect(areaMm2).toBeCloseTo(2000, 6)
  })

  it('is taken where the part is largest when its middle is smaller', () => {
    // A motor pad 4 mm high at the end of a bar 14 mm high: half-way up the pad is gone.
    const arm = merge([box(100, 12, 14), translate(box(30, 30, 4), [99, -9, 0])])
    const outline = outlineOf(arm)
    expect(outline.maxMm[0] - outline.minMm[0]).toBeCloseTo(129, 9)
    expect(outline.cutHeightMm).toBeLessThan(4)
    const steady = outlineOf(merge([box(100, 12, 14), translate(box(5, 1, 4), [40, 11.5, 0])]))
    expect(steady.cutHeightMm).toBeCloseTo(7, 3)
  })

  it('is found on bodies apart, and missing where there is none', () => {
    const apart = merge([box(10, 10, 2), translate(box(10, 10, 2), [0, 0, 8])])
    expect(outlineOf(apart).areaMm2).toBeCloseTo(100, 9)
    expect(plateOutline({ positions: new Float64Array(0), indices: new Uint32Array(0) })).toBeNull()
  })
})

describe('outline as SVG', () => {
  it('is in true millimetres, with a title, a note on kerf and names made safe', () => {
    const svg = outlineSvg(outlineOf(box(80, 40, 4)), 'Arm <left> & "right"', 2.5)
    expect(svg).toContain('width="80mm" height="40mm" viewBox="0 0 80 40"')
    expect(svg).toContain('<title>Arm &lt;left&gt; &amp; "right"</title>')
    expect(svg).toContain('kerf')
    expect(svg).toContain('Plate: 2.5 mm')
  })

  it('is turned over for the screen, not mirrored', () => {
    // An L whose foot points right at the bottom: on the screen, y down, the foot must still be at
    // the bottom right.
    const foot: Loop = [
      [0, 0],
      [30, 0],
      [30, 5],
      [5, 5],
      [5, 50],
      [0, 50],
    ]
    const [loop] = loopsOf(outlineSvg(outlineOf(prism(foot, 3)), 'L'))
    expect(loop?.some(([x, y]) => x === 30 && y === 50)).toBe(true)
    expect(loop?.some(([x, y]) => x === 30 && y === 0)).toBe(false)
    expect(loop?.some(([x, y]) => x === 5 && y === 0)).toBe(true)
  })

  it('encloses the area of the outline, whatever the plate', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 10, max: 60, noNaN: true }), { minLength: 5, maxLength: 40 }),
        fc.double({ min: 0.1, max: 0.95, noNaN: true }),
        fc.integer({ min: 3, max: 60 }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        (radii, holeShare, corners, turn) => {
          const star = radii.map((radius, i): readonly [number, number] => {
            const angle = (2 * Math.PI * i) / radii.length
            return [radius * Math.cos(angle), radius * Math.sin(angle)]
          })
          // The hole stays inside the star: within the nearest of its sides.
          const nearest = Math.min(
            ...star.map(([x, y], i) => {
              const [nextX, nextY] = star[(i + 1) % star.length]!
              return Math.abs(x * nextY - nextX * y) / Math.hypot(nextX - x, nextY - y)
            }),
          )
          const plate = prism(star, 3, [circle(holeShare * nearest, corners)])
          const outline = outlineOf(rotate(plate, [0, 0, turn]))
          const drawn = loopsOf(outlineSvg(outline, 'plate')).reduce(
            (sum, loop) => sum + loopArea(loop),
            0,
          )
          expect(outline.contours).toHaveLength(2)
          // The screen's y points down, which turns the sense round.
          expect(Math.abs(-drawn - outline.areaMm2)).toBeLessThan(1e-4 * outline.cutLengthMm + 1e-6)
        },
      ),
      { seed: 5, numRuns: 60 },
    )
  })
})
