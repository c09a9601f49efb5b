import { describe, expect, it } from 'vitest'
import { searchNest } from '../../../src/core/mesh/bodiesNest.ts'
import { nestByLines } from '../../../src/core/mesh/nestByLines.ts'
import { takeApart } from '../../../src/core/mesh/takeApart.ts'
import type { Mesh, Vec3 } from '../../../src/core/model/mesh.ts'
import { box, flip, merge, rotate, sphere, translate } from '../../support/meshes.ts'
import { seededRandom } from '../../support/random.ts'

const ALL = 1e15

/** By lines, by all pairs (the slow and obvious way), and the looks the first took. */
function bothWays(meshes: readonly Mesh[], most = ALL) {
  const mesh = merge(meshes)
  const { bodies, sums } = takeApart(mesh)
  const senses = Int8Array.from(sums.volume, (volume) => (volume > 0 ? 1 : -1))
  const solid = new Uint8Array(bodies.count).fill(1)
  const effort = { left: most }
  const quick = nestByLines(mesh, bodies, sums, senses, solid, effort)
  const slow = new Int32Array(bodies.count)
  searchNest(mesh, bodies, sums, solid).eachHeld({ left: ALL }, (held, holder) => {
    slow[held]! += senses[holder]!
  })
  return { quick, slow, looks: most - effort.left }
}

/**
 * Balls and blocks in a cell of a given size, some facing inwards, in each of them more of the
 * like.
 */
function fill(size: number, middle: Vec3, depth: number, random: () => number): readonly Mesh[] {
  const half = size * (0.3 + 0.18 * random())
  const shape =
    random() < 0.5
      ? translate(box(half, half, 2 * half), [-half / 2, -half / 2, -half])
      : rotate(sphere(half, 12), [40 * random(), 50 * random(), 0])
  const turned = random() < 0.4 ? flip(shape) : shape
  const own = translate(turned, middle)
  // A cube of this half side lies within a faceted ball of radius `half`, and within the block.
  const room = half * 0.45
  if (depth === 0 || random() < 0.2) return [own]
  const places = random() < 0.4 ? [[0, 0, 0]] : cornersOf(room / 2)
  const inner = places.flatMap((at) => {
    const place = at.map((value, k) => middle[k]! + value) as unknown as Vec3
    return fill(places.length === 1 ? 2 * room : room, place, depth - 1, random)
  })
  return [own, ...inner]
}

function cornersOf(half: number): readonly (readonly number[])[] {
  return [-half, half].flatMap((x) =>
    [-half, half].flatMap((y) => [-half, half].map((z) => [x, y, z])),
  )
}

const nested = (count: number): readonly Mesh[] =>
  Array.from({ length: count }, (_, i) => {
    const side = 1 + i * 0.05
    const cube = translate(box(side, side, side), [-side / 2, -side / 2, -side / 2])
    return i % 3 === 0 ? flip(cube) : cube
  })

describe('nestByLines', () => {
  it.each([1, 2, 3, 4, 5, 6])('adds up the same senses as all pairs do (seed %i)', (seed) => {
    const random = seededRandom(seed)
    const meshes = [0, 1, 2].flatMap((i) => fill(40, [50 * i, 3 * i, 7 * i], 3, random))
    const { quick, slow } = bothWays(meshes)
    expect(meshes.length).toBeGreaterThan(20)
    expect([...(quick ?? [])]).toEqual([...slow])
    expect(new Set(slow).size).toBeGreaterThan(1)
  })

  it('adds up the same in 300 cubes each inside the next', () => {
    const { quick, slow } = bothWays(nested(300))
    expect([...(quick ?? [])]).toEqual([...slow])
  })

  it('takes some four times as many looks for four times as many cubes in one another', () => {
    const [few, many] = [bothWays(nested(250)), bothWays(nested(1000))]
    expect(many.looks / few.looks).toBeLessThan(6)
  })

  it('does not answer for bodies that cut one another', () => {
    const crossed = [box(10, 6, 6), translate(box(10, 6, 6), [4, 0.5, 0.5])]
    const inBoth = translate(box(1, 1, 1), [6, 2, 2])
    expect([...bothWays([...crossed, inBoth]).slow]).toEqual([0, 0, 2])
    expect(bothWays([...crossed, inBoth]).quick).toBeNull()
  })

  it('ends within the looks it may take', () => {
    const { quick, looks } = bothWays(nested(300), 1000)
    expect(quick).toBeNull()
    expect(looks).toBeLessThan(2000)
  })
})
