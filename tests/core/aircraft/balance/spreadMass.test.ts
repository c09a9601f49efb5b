import { describe, expect, it } from 'vitest'
import type { Lump } from '../../../../src/core/aircraft/balance/lump.ts'
import { partMoments } from '../../../../src/core/aircraft/balance/partMoments.ts'
import { shellShare, spreadMass } from '../../../../src/core/aircraft/balance/spreadMass.ts'
import type { Mesh, Vec3 } from '../../../../src/core/model/mesh.ts'
import { relative } from '../../../support/censusCase.ts'
import { box, prism, rotate, translate } from '../../../support/meshes.ts'

/** A solid box of relative density `density` (below zero takes away), for sums by hand. */
interface Brick {
  readonly density: number
  readonly size: Vec3
  readonly centre: Vec3
}

/**
 * Centre and inertia (xx, yy, zz, per unit mass) of bricks, by m (b² + c²)/12 and parallel axes:
 * shares no code with the core.
 */
function bricks(list: readonly Brick[]) {
  const mass = (brick: Brick) => brick.density * brick.size[0] * brick.size[1] * brick.size[2]
  const total = list.reduce((sum, brick) => sum + mass(brick), 0)
  const centre = [0, 1, 2].map(
    (k) => list.reduce((sum, brick) => sum + mass(brick) * brick.centre[k]!, 0) / total,
  )
  const inertia = [0, 1, 2].map((k) => {
    const others = [0, 1, 2].filter((axis) => axis !== k)
    const each = (brick: Brick) =>
      others.reduce(
        (sum, axis) =>
          sum + brick.size[axis]! ** 2 / 12 + (brick.centre[axis]! - centre[axis]!) ** 2,
        0,
      )
    return list.reduce((sum, brick) => sum + mass(brick) * each(brick), 0) / total
  })
  return { centre, inertia }
}

const FILL = 0.2
const SKIN = 0.8

/** What a printer leaves out of a closed room: 1 − infill. */
const room = (size: Vec3, centre: Vec3): Brick => ({ density: FILL - 1, size, centre })

const BAR = {
  mesh: box(120, 20, 14),
  bricks: [
    { density: 1, size: [120, 20, 14], centre: [60, 10, 7] },
    room([120 - 2 * SKIN, 20 - 2 * SKIN, 14 - 2 * SKIN], [60, 10, 7]),
  ] satisfies Brick[],
}

/**
 * An 80 × 20 × 1.6 mm tongue, solid because it is two skins thick, under a hollow 20 mm block at
 * one end.
 */
const TONGUE = {
  mesh: translate(
    rotate(
      prism(
        [
          [0, 0],
          [80, 0],
          [80, 1.6],
          [20, 1.6],
          [20, 20],
          [0, 20],
        ],
        20,
      ),
      [90, 0, 0],
    ),
    [0, 20, 0],
  ),
  bricks: [
    { density: 1, size: [20, 20, 20], centre: [10, 10, 10] },
    { density: 1, size: [60, 20, 1.6], centre: [50, 10, 0.8] },
    room([20 - 2 * SKIN, 20 - 2 * SKIN, 20 - 2 * SKIN], [10, 10, 10]),
  ] satisfies Brick[],
}

function shareOf(list: readonly Brick[]): number {
  const size = (brick: Brick) => brick.size[0] * brick.size[1] * brick.size[2]
  const outside = list.filter(({ density }) => density > 0).reduce((sum, b) => sum + size(b), 0)
  const inside = list.filter(({ density }) => density < 0).reduce((sum, b) => sum + size(b), 0)
  const figures = { wallMm3: outside - inside, skinMm3: 0, infillMm3: FILL * inside }
  return shellShare(figures, { roomMm3: inside })
}

function errors(part: { readonly mesh: Mesh; readonly bricks: readonly Brick[] }, share: number) {
  const lump: Lump = spreadMass(partMoments(part.mesh, 1), 100, share)
  const truth = bricks(part.bricks)
  const [xx, yy, zz] = lump.second
  const inertia = [yy + zz, zz + xx, xx + yy].map((value) => value / lump.amount)
  return {
    centreMm: Math.hypot(...lump.centreMm.map((value, k) => value - truth.centre[k]!)),
    inertia: inertia.map((value, k) => value / truth.inertia[k]! - 1),
  }
}

describe('mass spread over a hollow part, against bricks worked out exactly', () => {
  const bar = { shell: errors(BAR, shareOf(BAR.bricks)), even: errors(BAR, 0) }
  const tongue = { shell: errors(TONGUE, shareOf(TONGUE.bricks)), even: errors(TONGUE, 0) }

  it('puts the centre of a bar where it is and its inertia within 6 %', () => {
    expect(bar.shell.centreMm).toBeLessThan(1e-9)
    expect(bar.shell.inertia[0]).toBeGreaterThan(0)
    for (const error of bar.shell.inertia) expect(Math.abs(error)).toBeLessThan(0.06)
  })

  it('puts the centre of a lopsided part within 0.25 mm and its inertia within 5 %', () => {
    expect(tongue.shell.centreMm).toBeLessThan(0.25)
    for (const error of tongue.shell.inertia) expect(Math.abs(error)).toBeLessThan(0.05)
  })

  it('is what even spreading misses: 24 % of a bar’s roll inertia, 8 mm and 34 % of a lopsided part', () => {
    expect(bar.even.inertia[0]).toBeCloseTo(-0.24, 2)
    expect(tongue.even.centreMm).toBeCloseTo(8.02, 2)
    expect(Math.min(...tongue.even.inertia)).toBeCloseTo(-0.34, 2)
  })

  it('is exact for a solid part', () => {
    const solid = errors({ mesh: TONGUE.mesh, bricks: TONGUE.bricks.slice(0, 2) }, 0)
    expect(solid.centreMm).toBeLessThan(1e-9)
    for (const error of solid.inertia) expect(Math.abs(error)).toBeLessThan(1e-9)
  })
})

describe('mass spread', () => {
  it('keeps the mass, whatever the share', () => {
    const moments = partMoments(box(30, 20, 10), 1)
    for (const share of [-1, 0, 0.3, 1, 4]) {
      expect(spreadMass(moments, 12, share).amount).toBeCloseTo(12, 12)
    }
  })

  it('puts all on the surface of a mesh without volume', () => {
    const sheet: Mesh = {
      positions: Float64Array.of(0, 0, 0, 10, 0, 0, 0, 10, 0),
      indices: Uint32Array.of(0, 1, 2),
    }
    const lump = spreadMass(partMoments(sheet, 1), 5, 0)
    expect(lump.amount).toBeCloseTo(5, 12)
    expect(lump.centreMm[0]).toBeCloseTo(10 / 3, 12)
  })

  it('needs no shell for a solid part and nothing else for an empty one', () => {
    const kept = { wallMm3: 300, skinMm3: 100 }
    expect(shellShare({ ...kept, infillMm3: 600 }, { roomMm3: 600 })).toBe(0)
    expect(shellShare({ ...kept, infillMm3: 0 }, { roomMm3: 600 })).toBe(1)
    expect(shellShare({ ...kept, infillMm3: 0 }, { roomMm3: 0 })).toBe(0)
    expect(shellShare({ wallMm3: 0, skinMm3: 0, infillMm3: 0 }, { roomMm3: 0 })).toBe(0)
    // 20 % infill: 400 of shell hold 400 · 0.8 beyond it, of 520 in all.
    expect(
      relative(shellShare({ ...kept, infillMm3: 120 }, { roomMm3: 600 }), 320 / 520),
    ).toBeLessThan(1e-12)
  })
})
