import { describe, expect, it } from 'vitest'
import { weldSoup } from '../../../src/core/model/weld.ts'
import { box, merge, single, soupOf, sphere } from '../../support/meshes.ts'
import { seededRandom } from '../../support/random.ts'

describe('weldSoup', () => {
  it('gives a box its eight vertices, in order of first appearance', () => {
    const soup = soupOf(box(3, 4, 5))
    const mesh = weldSoup(soup)
    expect(mesh.positions).toHaveLength(24)
    expect(Array.from(mesh.indices.subarray(0, 3))).toEqual([0, 1, 2])
    expect(soupOf(mesh)).toEqual(soup)
  })

  it('keeps single precision single and double precision double', () => {
    const soup = soupOf(sphere(7, 24))
    expect(weldSoup(soup).positions).toBeInstanceOf(Float64Array)
    expect(weldSoup(Float32Array.from(soup)).positions).toBeInstanceOf(Float32Array)
  })

  it('takes −0 for 0, and stores 0', () => {
    const mesh = weldSoup(
      new Float32Array([0, 0, 0, 1, 0, 0, 0, 1, 0, -0, 0, -0, 0, 1, 0, 0, -0, 1]),
    )
    expect(mesh.positions).toHaveLength(12)
    expect([...mesh.positions].some((value) => Object.is(value, -0))).toBe(false)
  })

  it('does not weld what differs in the last bit', () => {
    const mesh = weldSoup(new Float64Array([0, 0, 0, 1, 0, 0, 1 + 2 ** -52, 0, 0]))
    expect([...mesh.indices]).toEqual([0, 1, 2])
  })

  it('leaves corners that are not numbers alone', () => {
    const mesh = weldSoup(new Float64Array([NaN, 0, 0, NaN, 0, 0, 0, 0, 0]))
    expect([...mesh.indices]).toEqual([0, 1, 2])
  })

  it('takes an empty soup', () => {
    expect(weldSoup(new Float32Array(0))).toEqual({
      positions: new Float32Array(0),
      indices: new Uint32Array(0),
    })
  })

  it('welds like a plain map on random soups of many loose and many shared corners (seed 11)', () => {
    const random = seededRandom(11)
    for (const grid of [2, 5, 40, 1e6]) {
      const soup = Float32Array.from({ length: 9 * 500 }, () => Math.round((random() - 0.5) * grid))
      const numbers = new Map<string, number>()
      const expected = Array.from({ length: soup.length / 3 }, (_, corner) => {
        const key = soup
          .slice(3 * corner, 3 * corner + 3)
          .map((v) => v + 0)
          .join()
        if (!numbers.has(key)) numbers.set(key, numbers.size)
        return numbers.get(key)!
      })
      const mesh = weldSoup(soup)
      expect([...mesh.indices]).toEqual(expected)
      expect(mesh.positions).toHaveLength(3 * numbers.size)
    }
  })

  it('welds two bodies that share a corner, and only there', () => {
    const cube = single(box(1, 1, 1))
    const apart = { positions: cube.positions.map((value) => value + 1), indices: cube.indices }
    expect(weldSoup(soupOf(merge([cube, apart]))).positions).toHaveLength(3 * 15)
  })
})
