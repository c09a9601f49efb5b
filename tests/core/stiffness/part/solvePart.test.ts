import { describe, expect, test } from 'vitest'
import { RECIPE_DEFAULTS, type GeometrySettings } from '../../../../src/core/model/settings.ts'
import type { Mesh } from '../../../../src/core/model/mesh.ts'
import { fillCells } from '../../../../src/core/stiffness/part/fillCells.ts'
import { solvePart, type PartSolved } from '../../../../src/core/stiffness/part/solvePart.ts'
import type { LoadCase } from '../../../../src/core/stiffness/part/types.ts'
import { box, merge, rotate, translate } from '../../../support/meshes.ts'
import { PreweighError } from '../../../../src/core/model/problem.ts'

const END: LoadCase = {
  hold: { kind: 'end', outward: [-1, 0, 0], depthMm: 0 },
  push: { kind: 'end', outward: [1, 0, 0], depthMm: 0 },
  direction: [0, 0, 1],
  loadN: 10,
  tipG: 35,
}

interface Turn {
  readonly infill?: number
  readonly cellMm?: number
  readonly settings?: Partial<GeometrySettings>
  readonly load?: Partial<LoadCase>
  readonly acrossShare?: number
  readonly wantTones?: boolean
}

function solve(mesh: Mesh, turn: Turn = {}): PartSolved {
  const { infill = 0, cellMm = 2, settings = {}, load = {}, acrossShare = 1 } = turn
  const cells = fillCells(mesh, [], { ...RECIPE_DEFAULTS, ...settings }, cellMm)
  return solvePart({
    cells,
    laid: { plastic: { youngsMPa: 2000, acrossShare }, pattern: 'grid', infill: [infill] },
    massG: 20,
    load: { ...END, ...load },
    wantTones: turn.wantTones ?? false,
  })
}

const L = 140
const arm = box(L, 16, 12)
const inertia = (w: number, h: number): number => (w * h ** 3) / 12
/** 2 walls of 0.4 and 4 skins of 0.2 mm all round. */
const HOLLOW = inertia(16, 12) - inertia(16 - 1.6, 12 - 1.6)
const bent = (i: number): number => (10 * L ** 3) / (3 * 2000 * i)

describe('a part from its layers', () => {
  test('empty rooms make the hollow box: F L³ / 3 E I with its webs’ shear', () => {
    const shear = (10 * L) / ((2000 / 2.72) * 2 * 0.8 * 12)
    const exact = bent(HOLLOW) + shear
    expect(Math.abs(solve(arm).deflectionMm / exact - 1)).toBeLessThan(0.03)
  })

  test('full rooms make the solid bar, and the root is bent by F L c / I', () => {
    const full = solve(arm, { infill: 1, cellMm: 1.5 })
    const exact = bent(inertia(16, 12)) + (10 * L) / ((2000 / 2.72) * (5 / 6) * 16 * 12)
    expect(Math.abs(full.deflectionMm / exact - 1)).toBeLessThan(0.02)
    const root = (10 * L * 6) / inertia(16, 12)
    expect(full.stresses.along.mpa).toBeGreaterThan(0.9 * root)
    expect(full.stresses.along.mpa).toBeLessThan(1.15 * root)
    // End slope F L² / 2 E I.
    const slope = ((10 * L ** 2) / (2 * 2000 * inertia(16, 12))) * (180 / Math.PI)
    expect(Math.abs(full.slopeDeg / slope - 1)).toBeLessThan(0.03)
  })

  test('the draft at 2 mm tells what 1 mm tells', () => {
    const [draft, final] = [2, 1].map((cellMm) => solve(arm, { infill: 0.2, cellMm }).deflectionMm)
    expect(Math.abs(draft! / final! - 1)).toBeLessThan(0.02)
  })

  test('it rings at √(k / (M + 33/140 m)) / 2π', () => {
    const { hz, deflectionMm } = solve(arm, { infill: 1, wantTones: true })
    const stiffness = (10 / deflectionMm) * 1000
    const exact = Math.sqrt(stiffness / (0.035 + (33 / 140) * 0.02)) / (2 * Math.PI)
    expect(Math.abs(hz[0]! / exact - 1)).toBeLessThan(0.01)
    // The other way it is as much stiffer as it is wider.
    expect(Math.abs(hz[1]! / hz[0]! / (16 / 12) - 1)).toBeLessThan(0.02)
  })

  test('turned on the bed it is the same part', () => {
    const gripAt = (x: number, deg: number): LoadCase['hold'] => {
      const [cos, sin] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
      const centreMm = [x * cos, x * sin, 6] as const
      return { kind: 'bores', bores: [{ centreMm, axis: [0, 0, 1], diameterMm: 8, depthMm: 12 }] }
    }
    const middle = translate(arm, [-L / 2, -8, 0])
    const [straight, turned] = [0, 30].map((deg) =>
      solve(rotate(middle, [0, 0, deg]), {
        infill: 1,
        load: { hold: gripAt(-60, deg), push: gripAt(60, deg) },
      }),
    )
    expect(Math.abs(turned!.deflectionMm / straight!.deflectionMm - 1)).toBeLessThan(1e-3)
  })

  test('standing, its layers are pulled apart and it is softer by what bonds are', () => {
    const standing = box(12, 16, L)
    const load: Partial<LoadCase> = {
      hold: { kind: 'end', outward: [0, 0, -1], depthMm: 0 },
      push: { kind: 'end', outward: [0, 0, 1], depthMm: 0 },
      direction: [1, 0, 0],
    }
    const soft = solve(standing, { infill: 1, load, acrossShare: 0.7 })
    const firm = solve(arm, { infill: 1, acrossShare: 0.7 })
    expect(soft.deflectionMm / firm.deflectionMm).toBeGreaterThan(1.35)
    expect(soft.deflectionMm / firm.deflectionMm).toBeLessThan(1.5)
    const root = (10 * L * 6) / inertia(16, 12)
    expect(soft.stresses.across.mpa).toBeGreaterThan(0.85 * root)
    expect(firm.stresses.across.mpa).toBeLessThan(0.25 * root)
    // Most at the foot, less further up.
    const lens = soft.stresses.acrossByHeight
    expect(lens[2]!.mpa).toBeGreaterThan(3 * lens[Math.floor(lens.length * 0.8)]!.mpa)
  })

  test('a part in two pieces that touch along an edge is refused, told what to do', () => {
    const twins = merge([box(20, 20, 4), translate(box(20, 20, 4), [20, 20, 0])])
    expect(() => solve(twins, { load: { hold: END.hold, push: END.push } })).toThrow(PreweighError)
  })

  test('a slit narrower than a cell is told of', () => {
    const slit = (gap: number): Mesh =>
      merge([box(40, 20, 6), translate(box(40, 20, 6), [40 + gap, 0, 0])])
    const fill = (mesh: Mesh) => fillCells(mesh, [], RECIPE_DEFAULTS, 2)
    expect(fill(box(40, 20, 6)).gaps).toBe(0)
    // Wide enough for lines of its own, it stays open.
    expect(fill(slit(0.5)).gaps).toBe(0)
    expect(fill(slit(0.2)).gaps).toBeGreaterThan(0)
  })
})
