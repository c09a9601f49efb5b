import { expect, test } from 'vitest'
import { quickMeasure } from '../../../src/core/formats/quick.ts'
import { box, cubeWithHole, flip, sphere, translate } from '../../support/meshes.ts'
import { writeObj, writeStlAscii, writeStlBinary } from '../../support/writeMesh.ts'

test('a 2 × 3 × 4 box measures 24 mm³, 52 mm² and its own bounds, by hand', () => {
  expect(quickMeasure(writeStlBinary(box(2, 3, 4)))).toEqual({
    volumeMm3: 24,
    areaMm2: 2 * (6 + 8 + 12),
    boundsMm: { min: [0, 0, 0], max: [2, 3, 4] },
    triangles: 12,
  })
})

test('a box 100 m from the origin keeps its volume', () => {
  // 10^5 and 10^5 + 4 are whole numbers, so 32-bit floats hold every corner exactly.
  const far = quickMeasure(writeStlBinary(translate(box(2, 3, 4), [1e5, -1e5, 1e5])))
  expect(far?.volumeMm3).toBeCloseTo(24, 9)
  expect(far?.areaMm2).toBeCloseTo(52, 9)
  expect(far?.boundsMm).toEqual({ min: [1e5, -1e5, 1e5], max: [1e5 + 2, 3 - 1e5, 1e5 + 4] })
})

test('a body inside out still has a positive volume', () => {
  expect(quickMeasure(writeStlBinary(flip(box(2, 3, 4))))?.volumeMm3).toBe(24)
})

test('a fine sphere comes within its facets of 4/3·π·r³ and 4·π·r²', () => {
  const measured = quickMeasure(writeStlBinary(sphere(10, 96)))
  // Inscribed facets lose about (π/n)² of it; 96 round the equator: 0.3 % at most.
  expect(measured!.volumeMm3 / ((4 / 3) * Math.PI * 1000)).toBeGreaterThan(0.997)
  expect(measured!.volumeMm3 / ((4 / 3) * Math.PI * 1000)).toBeLessThan(1)
  expect(measured!.areaMm2 / (4 * Math.PI * 100)).toBeGreaterThan(0.997)
  expect(measured!.areaMm2 / (4 * Math.PI * 100)).toBeLessThan(1)
})

test('a hole is subtracted', () => {
  const measured = quickMeasure(writeStlBinary(cubeWithHole(20, 5, 64)))
  const holeArea = 32 * 25 * Math.sin((2 * Math.PI) / 64)
  expect(measured?.volumeMm3).toBeCloseTo(20 * (400 - holeArea), 2)
})

test('bytes that start anywhere in their buffer are read', () => {
  const file = writeStlBinary(box(2, 3, 4))
  const shifted = new Uint8Array(file.length + 3).subarray(3)
  shifted.set(file)
  expect(quickMeasure(shifted)?.volumeMm3).toBe(24)
})

test('text formats and numbers that are not finite have no quick measure', () => {
  expect(quickMeasure(writeStlAscii(box(1, 1, 1)))).toBeNull()
  expect(quickMeasure(writeObj(box(1, 1, 1)))).toBeNull()
  expect(quickMeasure(new Uint8Array(0))).toBeNull()
  const broken = writeStlBinary(box(1, 1, 1))
  new DataView(broken.buffer).setFloat32(84 + 12, NaN, true)
  expect(quickMeasure(broken)).toBeNull()
})
