import { afterAll, expect, it } from 'vitest'
import { openWorkshop } from '../../src/demo/workshop.ts'

const shop = await openWorkshop()
afterAll(() => shop.close())

/**
 * Area of a regular 64-gon in a circle of diameter 1, over the circle's square: 16·sin(2π/64)/2.
 */
const POLYGON_64 = (64 / 8) * Math.sin((2 * Math.PI) / 64)

it('drills a hole whose volume is that of its 64-sided prism', () => {
  const plate = shop.cut(shop.block([20, 20, 4], [-10, -10, 0]), shop.rod(8, 10, [0, 0, -3]))
  expect(plate.volume()).toBeCloseTo(20 * 20 * 4 - POLYGON_64 * 64 * 4, 2)
})

it('softens corners and leaves straight sides where they are', () => {
  const soft = shop.soften(shop.rectangle(30, 20), 4)
  const { min, max } = soft.bounds()
  expect([min[0], min[1], max[0], max[1]].map((v) => Math.round(v * 1000) / 1000)).toEqual([
    -15, -10, 15, 10,
  ])
  // A square corner loses r²·(1 − π/4).
  expect(soft.area()).toBeCloseTo(600 - 4 * 16 * (1 - Math.PI / 4), 0)
})

it('tapers about the z axis', () => {
  // Frustum: h/3 · (A + B + √(AB)).
  const frustum = shop.raise(shop.rectangle(10, 10), 6, 0, 0.5)
  expect(frustum.volume()).toBeCloseTo((6 / 3) * (100 + 25 + 50), 4)
})

it('hands out a mesh in which no position comes twice', () => {
  const { positions } = shop.mesh(shop.join(shop.rod(8, 10, [0, 0, 0]), shop.rod(3, 20, [1, 0, 5])))
  const keys = new Set<string>()
  for (let i = 0; i < positions.length; i += 3) keys.add(positions.subarray(i, i + 3).join())
  expect(keys.size).toBe(positions.length / 3)
})
