import { describe, expect, test } from 'vitest'
import { couponFor } from '../../../src/core/drill/coupon.ts'
import { drillList } from '../../../src/core/drill/drillList.ts'
import { findHoles } from '../../../src/core/mesh/holes/findHoles.ts'
import { drillPart, holeAt } from '../../support/drillParts.ts'
import { signedVolume } from '../../support/signedVolume.ts'

const rowsOf = (...holes: ReturnType<typeof holeAt>[]) =>
  drillList([drillPart('deck', holes)], [], 'p', [])

describe('a coupon of the frame’s own holes', () => {
  const rows = rowsOf(
    holeAt(),
    holeAt({ centreMm: [9, 0, 2] }),
    holeAt({ diameterMm: 4, centreMm: [20, 0, 2] }),
    holeAt({ diameterMm: 2.4, axis: [1, 0, 0], centreMm: [40, 0, 2] }),
    holeAt({ diameterMm: 20, centreMm: [60, 0, 2] }),
  )
  const coupon = couponFor(rows)!

  test('has every size that is drilled, from its own number on by tenths', () => {
    const sizes = (lies: string) =>
      coupon.holes.filter((hole) => hole.lies === lies).map(({ diameterMm }) => diameterMm)
    expect(sizes('upright')).toEqual([3.2, 3.3, 3.4, 3.5, 3.6, 4, 4.1, 4.2, 4.3, 4.4])
    expect(sizes('level')).toEqual([2.4, 2.5, 2.6, 2.7, 2.8])
  })

  test('its mesh has just these bores, upright and lying, and is sound', () => {
    const found = findHoles(coupon.mesh)
    expect(found).toHaveLength(coupon.holes.length)
    const by = (a: number, b: number) => a - b
    expect(found.map(({ diameter }) => Math.round(100 * diameter) / 100).sort(by)).toEqual(
      coupon.holes.map(({ diameterMm }) => diameterMm).sort(by),
    )
    const upright = found.filter(({ axis }) => Math.abs(axis[2]) > 0.99)
    expect(upright).toHaveLength(10)
    expect(found.every(({ through }) => through)).toBe(true)
    for (const { diameter, clear } of found) {
      expect(clear / diameter).toBeCloseTo(Math.cos(Math.PI / 64), 6)
    }
    const { indices } = coupon.mesh
    const sides = new Set<string>()
    for (let i = 0; i < indices.length; i++) {
      const next = i % 3 === 2 ? i - 2 : i + 1
      sides.add(`${indices[i]} ${indices[next]}`)
    }
    // Every side is gone along once each way.
    expect(sides.size).toBe(indices.length)
    expect([...sides].every((side) => sides.has(side.split(' ').toReversed().join(' ')))).toBe(true)
    // By hand: plates of 6 columns less polygons of 64 sides, ½ · n · r² · sin(2π ÷ n) each.
    const polygon = (d: number) => 32 * (d / 2) ** 2 * Math.sin((2 * Math.PI) / 64)
    const plate = (cell: number, sizes: number[][], thick: number) =>
      thick * (sizes.length * 6 * cell ** 2 - sizes.flat().reduce((sum, d) => sum + polygon(d), 0))
    const up = coupon.holes.filter(({ lies }) => lies === 'upright').map((one) => one.diameterMm)
    const level = coupon.holes.filter(({ lies }) => lies === 'level').map((one) => one.diameterMm)
    const volume = plate(8.4, [up.slice(0, 5), up.slice(5)], 4) + plate(6.8, [level], 6)
    expect(signedVolume(coupon.mesh)).toBeCloseTo(volume, 3)
  })

  test('nothing to drill, no coupon', () => {
    expect(couponFor(rowsOf(holeAt({ diameterMm: 20 })))).toBeNull()
  })
})
