import { describe, expect, test } from 'vitest'
import { RECIPE_DEFAULTS } from '../../../../src/core/model/settings.ts'
import type { Mesh } from '../../../../src/core/model/mesh.ts'
import { fillCells } from '../../../../src/core/stiffness/part/fillCells.ts'
import { beamOf } from '../../../../src/core/stiffness/part/beam.ts'
import type { PartSections } from '../../../../src/core/stiffness/part/sections.ts'
import { solvePart, type PartSolved } from '../../../../src/core/stiffness/part/solvePart.ts'
import { box, prism } from '../../../support/meshes.ts'

function solve(mesh: Mesh, infill: number, depthMm = 0, wantTones = false): PartSolved {
  return solvePart({
    cells: fillCells(mesh, [], RECIPE_DEFAULTS, 2),
    laid: { plastic: { youngsMPa: 2000, acrossShare: 0.9 }, pattern: 'grid', infill: [infill] },
    massG: 10,
    load: {
      hold: { kind: 'end', outward: [-1, 0, 0], depthMm },
      push: { kind: 'end', outward: [1, 0, 0], depthMm },
      direction: [0, 0, 1],
      loadN: 10,
      tipG: 30,
    },
    wantTones,
  })
}

function deflectionOf({ beam }: PartSolved): number {
  if (beam.kind === 'no') throw new Error(beam.why)
  return beam.deflectionMm
}

describe('a part as a beam', () => {
  test('a full bar: F L³ / 3 E I + F L / k G A', () => {
    const [L, B, H] = [120, 12, 8]
    const G = 2000 / (2 * 1.36)
    const across = G * Math.sqrt(0.9)
    const exact =
      (10 * L ** 3) / (3 * 2000 * ((B * H ** 3) / 12)) + (10 * L) / ((5 / 6) * across * B * H)
    expect(deflectionOf(solve(box(L, B, H), 1)) / exact).toBeCloseTo(1, 3)
  })

  test.each([0, 0.2, 1])('bars with %f of infill: the solid model within a twentieth', (infill) => {
    const solved = solve(box(140, 14, 10), infill)
    expect(Math.abs(deflectionOf(solved) / solved.deflectionMm - 1)).toBeLessThan(0.05)
  })

  test('bars ring as the solid model does, within 3 %', () => {
    for (const infill of [0, 0.2, 1]) {
      const { beam, hz } = solve(box(140, 14, 10), infill, 0, true)
      if (beam.kind === 'no') throw new Error(beam.why)
      expect(Math.abs(beam.firstHz! / hz[0]! - 1)).toBeLessThan(0.03)
    }
  })

  test('a tapered arm: the solid model within 10 %', () => {
    const arm = prism(
      [
        [0, 0],
        [140, 6],
        [140, 14],
        [0, 20],
      ],
      10,
    )
    // Its grid lies along one of its sides, so that its ends are aslant.
    const solved = solve(arm, 0.3, 4)
    expect(Math.abs(deflectionOf(solved) / solved.deflectionMm - 1)).toBeLessThan(0.1)
  })

  // Math. Problems in Engineering 2017, 1568019, table 1, and the characteristic equation it solves
  // (hardware.md 6.2).
  test.each([
    [0, 3.51602],
    [0.1, 2.96784],
    [1, 1.5573],
    [5, 0.75694],
  ])('a tip of %f beams rings at (βL)² = %f', (ratio, root) => {
    const [E, L, side, massG] = [2000, 400, 4, 8]
    const beam = beamOf(evenSections(L, side, 50), laidSolid(E), {
      loadN: 1,
      massG,
      tipG: ratio * massG,
    })
    const scale = Math.sqrt((E * (side ** 4 / 12)) / (massG * 1e-6 * L ** 3)) / (2 * Math.PI)
    expect(beam.kind === 'beam' && Math.abs(beam.firstHz! / (root * scale) - 1)).toBeLessThan(0.01)
  })

  test('a shorter free length is stiffer by its cube, held where it was said', () => {
    const long = beamOf(evenSections(400, 4, 50), laidSolid(2000), { loadN: 1, massG: 0, tipG: 9 })
    const short = beamOf(evenSections(400, 4, 50), laidSolid(2000), {
      loadN: 1,
      massG: 0,
      tipG: 9,
      freeMm: 201,
    })
    if (long.kind === 'no' || short.kind === 'no') throw new Error('no beam')
    expect(long.deflectionMm / short.deflectionMm).toBeCloseTo((400 / 201) ** 3, 2)
    expect(short.firstHz! / long.firstHz!).toBeCloseTo((400 / 201) ** 1.5, 2)
  })

  test('a block is told to be none', () => {
    expect(solve(box(30, 20, 20), 0.3).beam).toMatchObject({ kind: 'no' })
  })
})

const laidSolid = (youngsMPa: number) => ({
  plastic: { youngsMPa, acrossShare: 1 },
  pattern: 'grid' as const,
  infill: [0],
})

/** A square bar along x, lying at zero. */
function evenSections(L: number, side: number, count: number): PartSections {
  const parts = [[side ** 2, side ** 3 / 2, side ** 4 / 3] as const, [0, 0, 0] as const]
  const slices = Array.from({ length: count }, (_, i) => ({
    fromMm: (L * i) / count,
    toMm: (L * (i + 1)) / count,
    depthMm: side,
    parts,
  }))
  return { kind: 'sections', along: 0, across: 2, turnDeg: 0, spanMm: L, slices }
}
