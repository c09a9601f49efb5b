import { describe, expect, it } from 'vitest'
import { findMouths } from '../../../src/core/joints/findMouths.ts'
import { bodyHoleMm, holesFitBody, itemMesh } from '../../../src/core/joints/itemMesh.ts'
import { findHoles } from '../../../src/core/mesh/holes/findHoles.ts'
import { findPatterns } from '../../../src/core/mesh/holes/patterns.ts'
import { measureMesh } from '../../../src/core/mesh/measure.ts'
import type { BodyHoles, ItemBody } from '../../../src/core/model/aircraft.ts'
import { signedVolume } from '../../support/signedVolume.ts'

const holes = (more: Partial<BodyHoles> = {}): BodyHoles => ({
  layout: 'rectangle',
  aMm: 16,
  bMm: 16,
  thread: 'M3',
  depthMm: 4,
  ...more,
})
const MOTOR: ItemBody = { kind: 'motor', sizeMm: [28, 28, 18], holes: holes(), shaftMm: 5 }
const BOARD: ItemBody = {
  kind: 'board',
  sizeMm: [36, 36, 8],
  holes: holes({ aMm: 30.5, bMm: 30.5, depthMm: null }),
  shaftMm: 0,
}
const CAMERA: ItemBody = {
  kind: 'camera',
  sizeMm: [20, 19, 19],
  holes: holes({ layout: 'sides', thread: 'M2', depthMm: 3 }),
  shaftMm: 0,
}
const PACK: ItemBody = { kind: 'pack', sizeMm: [105, 34, 24], holes: null, shaftMm: 0 }
const PROP: ItemBody = { kind: 'prop', sizeMm: [152.4, 152.4, 8], holes: null, shaftMm: 5 }

/** A regular polygon of 48 corners on a circle: n/2 · r² · sin(2π/n). */
const roundMm2 = (diameter: number): number => 24 * (diameter / 2) ** 2 * Math.sin(Math.PI / 24)

describe('itemMesh', () => {
  it.each([
    // Closed sums: prism less the holes, and the shaft of 2.4 diameters.
    ['motor', MOTOR, roundMm2(28) * 18 - 4 * roundMm2(2.5) * 4 + roundMm2(5) * 12],
    ['board', BOARD, 36 * 36 * 8 - 4 * roundMm2(3.2) * 8],
    ['camera', CAMERA, 20 * 19 * 19 - 2 * roundMm2(1.6) * 3],
    ['pack', PACK, 105 * 34 * 24],
    ['propeller', PROP, (roundMm2(152.4) - roundMm2(5)) * 8],
  ])('is closed, faced outwards and as large as the sum says: %s', (_, body, volumeMm3) => {
    const mesh = itemMesh(body)
    const measure = measureMesh(mesh, 1)
    expect(measure.watertight).toBe(true)
    expect(signedVolume(mesh)).toBeCloseTo(volumeMm3, 6)
  })

  it.each([
    ['motor', MOTOR, 4, [false, true]],
    ['board', BOARD, 4, [true, true]],
    ['camera', CAMERA, 2, [false, true]],
  ])('has the holes that were typed: %s', (_, body, count, open) => {
    const found = findHoles(itemMesh(body)).filter(({ diameter }) => diameter < 4)
    expect(found).toHaveLength(count)
    for (const each of found) {
      expect(each.diameter).toBeCloseTo(bodyHoleMm(body.holes!), 2)
      expect(each.depth).toBeCloseTo(body.holes!.depthMm ?? body.sizeMm[2], 6)
      expect([each.openLow, each.openHigh].filter(Boolean)).toEqual(open.filter(Boolean))
    }
  })

  it('is read as its pattern by who looks for patterns, a rectangle not as a square', () => {
    const named = (body: ItemBody) =>
      findPatterns(findHoles(itemMesh(body)), 1).map(({ name, layout }) => `${layout} ${name}`)
    expect(named(MOTOR)).toContain('rectangle 16 × 16')
    expect(named(BOARD)).toContain('rectangle 30.5 × 30.5')
    expect(named({ ...MOTOR, holes: holes({ bMm: 19 }) })).toEqual(['rectangle 16 × 19'])
    expect(named({ ...MOTOR, holes: holes({ layout: 'cross', bMm: 19 }) })).toEqual([
      'cross 16 × 19',
    ])
  })

  it('has a shaft that a propeller goes on', () => {
    const pegs = findMouths(itemMesh(MOTOR)).filter(({ bore }) => bore.kind === 'peg')
    expect(pegs.map(({ atMm, out }) => [...atMm, ...out])).toContainEqual(
      [0, 0, 18, 0, 0, 1].map((value) => expect.closeTo(value, 6) as number),
    )
  })

  it('leaves out holes that lie outside of it', () => {
    const wide = { ...MOTOR, holes: holes({ aMm: 25, bMm: 25 }) }
    expect(holesFitBody(wide)).toBe(false)
    expect(findHoles(itemMesh(wide)).filter(({ diameter }) => diameter < 4)).toEqual([])
    expect(holesFitBody({ ...BOARD, holes: holes({ aMm: 2, bMm: 30 }) })).toBe(false)
    expect(holesFitBody({ ...MOTOR, holes: holes({ depthMm: 20 }) })).toBe(false)
  })
})
