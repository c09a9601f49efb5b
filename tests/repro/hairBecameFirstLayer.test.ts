import { describe, expect, test } from 'vitest'
import { priceMesh } from '../../src/cli/priceMesh.ts'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../src/core/data/printers.ts'
import { findHairs } from '../../src/core/mesh/findHairs.ts'
import { takeApart } from '../../src/core/mesh/takeApart.ts'
import type { LengthUnit, Mesh } from '../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { createInProcessRunner } from '../../src/jobs/inProcess.ts'
import { box, merge, scale, translate } from '../support/meshes.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

/*
 * A closed hair of 0.4 mm³ 0.9 mm below a wing became the wing's first layer, and the wing began 0.9 mm up in the air.
 */
const WING = box(120, 40, 6)
/** 20 × 0.2 × 0.1 mm = 0.4 mm³, its top 0.9 mm below the wing. */
const HAIR = translate(box(20, 0.2, 0.1), [40, 20, -1])
const WITH_HAIR = merge([WING, HAIR])

function price(mesh: Mesh, keepsHairs: boolean, unit: LengthUnit = 'millimetre') {
  const settings = {
    unitOf: () => unit,
    pose: POSE_AS_DRAWN,
    recipe: RECIPE_DEFAULTS,
    material: MATERIALS[0]!,
    printer: PRINTER_DEFAULT,
    prices: PRICES_DEFAULTS,
    zones: [],
    keepsHairs,
  }
  const file = { name: 'wing.stl', bytes: writeStlBinary(mesh) }
  return priceMesh(file, 'wing.stl', settings, () => {}).report
}

test('the command leaves it out, says so, and counts the wing alone', () => {
  const alone = price(WING, false)
  const found = price(WITH_HAIR, false)
  // 6 mm in layers of 0.2 mm.
  expect(found.layers).toBe(30)
  expect({ ...found, findings: [], triangles: alone.triangles }).toEqual({ ...alone, findings: [] })
  expect(found.findings).toMatchObject([
    { code: 'hair', grade: 'worth knowing', short: 'a hair left out', count: 1 },
  ])
  expect(found.findings[0]!.message).toMatch(/0\.4\smm³.*up to 0\.9\smm off/)
  expect(found.findings[0]!.place!.min[2]).toBeCloseTo(-1, 6)
})

test('kept, it is the first layer, and that is told to be no print', () => {
  const kept = price(WITH_HAIR, true)
  expect(kept.layers).toBe(35)
  expect(kept.boundsMm.min[2]).toBeCloseTo(-1, 6)
  expect(kept.findings[0]).toMatchObject({ code: 'hair', grade: 'cannot print' })
})

test('the worker does as the command, for figures, picture and balance', async () => {
  const runner = createInProcessRunner()
  const { supports, ...geometry } = RECIPE_DEFAULTS
  const blob = new Blob([Uint8Array.from(writeStlBinary(WITH_HAIR))])
  for (const keepsHairs of [false, true]) {
    const source = { hash: 'wing', name: 'wing.stl', blob, keepsHairs }
    const at = { source, unit: 'millimetre', pose: POSE_AS_DRAWN } as const
    const counted = await runner.run({
      kind: 'analyse',
      ...at,
      zones: [],
      geometry: { ...geometry, supports },
      wantRead: true,
      wantCoarse: false,
    })
    expect(counted.ok && counted.value.census.layers.count).toBe(keepsHairs ? 35 : 30)
    const shown = await runner.run({ kind: 'mesh', ...at })
    // The wing's own corners stand on the bed, or 1 mm above it.
    if (!shown.ok) throw new Error(shown.problem.message)
    // A picture is fitted round every vertex, used or not.
    const heights = shown.value.positions.filter((_, i) => i % 3 === 2)
    expect(Math.max(...heights)).toBeCloseTo(keepsHairs ? 7 : 6, 6)
    expect(Math.min(...heights)).toBeCloseTo(0, 6)
    const own = shown.value.indices.slice(0, WING.indices.length)
    const first = own.reduce((low, v) => Math.min(low, shown.value.positions[3 * v + 2]!), Infinity)
    expect(first).toBeCloseTo(keepsHairs ? 1 : 0, 6)
    const split = await runner.run({ kind: 'split', source, unit: 'millimetre', how: 'parts' })
    expect(split.ok && split.value.pieces).toHaveLength(keepsHairs ? 2 : 1)
  }
})

describe('what is a hair', () => {
  const hairs = (mesh: Mesh, mm = 1) => findHairs(mesh, takeApart(mesh), mm).size
  const beside = (body: Mesh) => merge([WING, translate(body, [0, 60, 0])])

  test.each([
    ['a hair', box(20, 0.2, 0.1), 1],
    ['a flake', box(1.5, 1.5, 0.3), 1],
    ['a crumb of 0.3 mm', box(0.3, 0.3, 0.3), 1],
    ['a pin of a line and a bit', box(0.45, 0.45, 3), 0],
    ['a cube of 0.9 mm', box(0.9, 0.9, 0.9), 0],
    ['a thin washer that weighs something', box(6, 6, 0.3), 0],
  ])('%s', (_, body, count) => {
    expect(hairs(beside(body))).toBe(count)
  })

  test('goes by millimetres, whatever the file counts in', () => {
    expect(hairs(scale(beside(box(20, 0.2, 0.1)), 1 / 25.4), 25.4)).toBe(1)
    expect(hairs(scale(beside(box(0.45, 0.45, 3)), 1 / 25.4), 25.4)).toBe(0)
  })

  test('what touches another body belongs to it', () => {
    expect(hairs(merge([WING, translate(box(2, 0.2, 0.2), [10, 10, 5.9])]))).toBe(0)
    expect(hairs(merge([WING, translate(box(2, 0.2, 0.2), [10, 10, 6.5])]))).toBe(1)
  })
})
