import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { writeCoupon } from '../../src/cli/writeCoupon.ts'
import { drillList } from '../../src/core/drill/drillList.ts'
import { findPartHoles } from '../../src/core/drill/findPartHoles.ts'
import { readMesh } from '../../src/core/formats/read.ts'
import { findHoles } from '../../src/core/mesh/holes/findHoles.ts'
import { boredPlate, straight } from '../support/boredPlate.ts'
import { printedPart } from '../support/ledgerParts.ts'
import { signedVolume } from '../support/signedVolume.ts'
import { parseWithThreeStlLoader } from '../support/threeStlLoader.ts'

const folder = mkdtempSync(path.join(tmpdir(), 'coupon-'))
afterAll(() => {
  rmSync(folder, { recursive: true })
})

const EDGE = [
  [0, 0],
  [50, 0],
  [50, 20],
  [0, 20],
] as const

/** A plate of 4 mm with two bores of 3.2 mm and one of 2.4 mm, as its file is read. */
function rowsOfPlate() {
  const bores = [straight(10, 10, 1.6, 4, 48), straight(30, 10, 1.6, 4, 48)]
  const mesh = boredPlate(EDGE, 4, [...bores, straight(40, 10, 1.2, 4, 48)])
  const { part, material } = printedPart('plate', 10, 1)
  return drillList([{ part, material, found: findPartHoles('plate', mesh) }], [], 'p', [])
}

test('the coupon that is written has the frame’s own holes by tenths, whoever reads it', () => {
  const rows = rowsOfPlate()
  expect(rows.map(({ diameterMm }) => Math.round(100 * diameterMm) / 100)).toHaveLength(3)
  const file = path.join(folder, 'coupon.stl')
  expect(writeCoupon(file, 'coupon.stl', rows)).toEqual({ ok: true, value: null })
  const bytes = Uint8Array.from(readFileSync(file))

  // Our own reader, which welds what the file has corner by corner.
  const { mesh } = readMesh(bytes, 'coupon.stl')
  const sizes = findHoles(mesh)
    .map(({ diameter, through }) => [Math.round(100 * diameter) / 100, through] as const)
    .toSorted((a, b) => a[0] - b[0])
  const wanted = [2.4, 2.5, 2.6, 2.7, 2.8, 3.2, 3.3, 3.4, 3.5, 3.6]
  expect(sizes).toEqual(wanted.map((diameter) => [diameter, true]))
  expect(openSides([...mesh.indices])).toBe(0)

  // An outside one: the same triangles, every side met by one other, the same solid.
  const positions = parseWithThreeStlLoader(bytes)
  expect(positions.length / 9).toBe(mesh.indices.length / 3)
  const corners = new Map<string, number>()
  const indices = Array.from({ length: positions.length / 3 }, (_, i) => {
    const key = positions.subarray(3 * i, 3 * i + 3).join(' ')
    const known = corners.get(key) ?? corners.size
    corners.set(key, known)
    return known
  })
  expect(corners.size).toBe(mesh.positions.length / 3)
  expect(openSides(indices)).toBe(0)
  const soup = { positions, indices: Uint32Array.from(indices.keys()) }
  expect(signedVolume(soup)).toBeCloseTo(signedVolume(mesh), 2)
  expect(signedVolume(soup)).toBeGreaterThan(0)
})

test('no hole to drill and no folder to write into are told, and nothing is thrown', () => {
  const none = writeCoupon(path.join(folder, 'none.stl'), 'none.stl', [])
  expect(none).toMatchObject({ ok: false, problem: { code: 'bad-settings' } })
  const nowhere = writeCoupon(path.join(folder, 'no', 'c.stl'), 'no/c.stl', rowsOfPlate())
  expect(nowhere).toMatchObject({ ok: false, problem: { code: 'unreadable-file' } })
  expect(!nowhere.ok && nowhere.problem.message).toContain('“no/c.stl”')
})

/** Sides of triangles that no other one goes along the other way. */
function openSides(indices: readonly number[]): number {
  const sides = new Set<string>()
  indices.forEach((from, i) => {
    const to = indices[i % 3 === 2 ? i - 2 : i + 1]!
    sides.add(`${from} ${to}`)
  })
  const back = [...sides].filter((side) => !sides.has(side.split(' ').toReversed().join(' ')))
  return back.length + indices.length - sides.size
}
