import { describe, expect, test } from 'vitest'
import { factorise, forwards, backwards } from '../../../../src/core/doubt/cholesky.ts'
import { elasticOf, type Elastic } from '../../../../src/core/stiffness/moduli/elastic.ts'
import { buildLevel } from '../../../../src/core/stiffness/solid/buildLevel.ts'
import { cellBodies, keepBodies } from '../../../../src/core/stiffness/solid/bodies.ts'
import {
  byDiagonal,
  conjugateGradients,
} from '../../../../src/core/stiffness/solid/conjugateGradients.ts'
import { holdPart } from '../../../../src/core/stiffness/solid/multigrid.ts'
import type { SolidGrid } from '../../../../src/core/stiffness/solid/types.ts'
import { denseStiffness } from '../../../support/denseElement.ts'
import { seededRandom } from '../../../support/random.ts'
import { blockOf, evenLines } from '../../../support/solids.ts'

function someElastic(random: () => number): Elastic {
  const e1 = 500 + 3000 * random()
  return elasticOf({
    e1,
    e2: e1 * (0.4 + random()),
    e3: e1 * (0.3 + random()),
    nu12: 0.1 + 0.2 * random(),
    nu13: 0.1 + 0.2 * random(),
    nu23: 0.1 + 0.2 * random(),
    g12: e1 * (0.1 + 0.3 * random()),
    g13: e1 * (0.1 + 0.3 * random()),
    g23: e1 * (0.1 + 0.3 * random()),
  })
}

/** Uneven lines, cells of eight crooked plastics, some empty, all of one body. */
function someGrid(random: () => number, size: readonly [number, number, number]): SolidGrid {
  const lines = size.map((count) => {
    const all = new Float64Array(count + 1)
    for (let i = 1; i <= count; i++) all[i] = all[i - 1]! + 0.4 + random()
    return all
  }) as unknown as SolidGrid['linesMm']
  const cells = new Uint16Array(size[0] * size[1] * size[2]).map((_, cell) =>
    cell % size[0] === 0 || random() < 0.8 ? 1 + Math.floor(8 * random()) : 0,
  )
  const grid = {
    linesMm: lines,
    cells,
    moduli: Array.from({ length: 8 }, () => someElastic(random)),
  }
  const bodies = cellBodies(grid)
  return keepBodies(grid, bodies, new Set([bodies.bodyOf[0]!]))
}

/** Every cell's matrix in one dense one, factorised. */
function solveDensely(grid: SolidGrid, held: Uint8Array, load: Float64Array): Float64Array {
  const level = buildLevel(grid)
  const [nx, ny, nz] = level.size
  const at = (x: number, y: number, z: number): number =>
    level.nodeAt[x + (nx + 1) * (y + (ny + 1) * z)]!
  const rows = Array.from({ length: 3 * level.nodes }, () => new Float64Array(3 * level.nodes))
  for (let cell = 0; cell < grid.cells.length; cell++) {
    const elastic = grid.moduli[grid.cells[cell]! - 1]
    if (elastic === undefined) continue
    const place = [cell % nx, Math.floor(cell / nx) % ny, Math.floor(cell / (nx * ny))] as const
    const sides = place.map((i, k) => grid.linesMm[k]![i + 1]! - grid.linesMm[k]![i]!)
    const own = denseStiffness(sides, elastic)
    const nodes = Array.from({ length: 8 }, (_, n) =>
      at(place[0] + (n & 1), place[1] + ((n >> 1) & 1), place[2] + (n >> 2)),
    )
    for (let i = 0; i < 24; i++) {
      for (let j = 0; j < 24; j++) {
        const [r, s] = [3 * nodes[(i / 3) | 0]! + (i % 3), 3 * nodes[(j / 3) | 0]! + (j % 3)]
        rows[r]![s]! += own[i]![j]!
      }
    }
  }
  expect(nz).toBeGreaterThan(0)
  const free = [...held.keys()].filter((i) => held[i] === 0)
  const lower = factorise(free.length, (i, j) => rows[free[i]!]![free[j]!]!)
  const solved = backwards(
    lower,
    forwards(
      lower,
      free.map((i) => load[i]!),
    ),
  )
  const moves = new Float64Array(load.length)
  free.forEach((i, k) => (moves[i] = solved[k]!))
  return moves
}

function holdLeft(grid: SolidGrid, random: () => number) {
  const level = buildLevel(grid)
  const held = new Uint8Array(3 * level.nodes)
  const load = new Float64Array(3 * level.nodes)
  for (let node = 0; node < level.nodes; node++) {
    if (level.lineOf[3 * node] === 0) held.fill(1, 3 * node, 3 * node + 3)
    else for (let k = 0; k < 3; k++) load[3 * node + k] = random() - 0.5
  }
  return { level, held, load }
}

describe('solving', () => {
  test('uneven grids of crooked plastics give what a dense factorisation gives', () => {
    const random = seededRandom(5)
    for (const size of [
      [3, 3, 2],
      [4, 3, 2],
    ] as const) {
      const grid = someGrid(random, size)
      const { level, held, load } = holdLeft(grid, random)
      const { apply, precondition } = holdPart(level, held)
      const { moves, rest } = conjugateGradients(apply, precondition, load, {
        tolerance: 1e-11,
        mostSteps: 500,
      })
      const slow = solveDensely(grid, held, load)
      const largest = Math.max(...slow.map(Math.abs))
      expect(rest).toBeLessThan(1e-11)
      slow.forEach((value, i) => expect(Math.abs(moves[i]! - value)).toBeLessThan(1e-8 * largest))
    }
  })

  test('levels cut the steps to a tenth of what the diagonal needs', () => {
    const lines = [evenLines(84, 42), evenLines(10, 5), evenLines(8, 4)] as const
    const grid = blockOf(lines, someElastic(seededRandom(1)))
    const { level, held, load } = holdLeft(grid, seededRandom(2))
    const { apply, precondition, inverseDiagonal } = holdPart(level, held)
    const options = { tolerance: 1e-3, mostSteps: 2000 }
    const levels = conjugateGradients(apply, precondition, load, options).steps
    const plain = conjugateGradients(apply, byDiagonal(inverseDiagonal), load, options).steps
    expect(levels).toBeLessThan(20)
    expect(levels).toBeLessThan(plain / 8)
  })

  test('the preconditioner is symmetric and positive', () => {
    const random = seededRandom(9)
    const grid = someGrid(random, [10, 8, 5])
    const { level, held } = holdLeft(grid, random)
    const { precondition } = holdPart(level, held)
    const field = (): Float64Array =>
      held.length > 0
        ? Float64Array.from(held, (is) => (is ? 0 : random() - 0.5))
        : new Float64Array()
    const dot = (a: Float64Array, b: Float64Array): number =>
      a.reduce((s, v, i) => s + v * b[i]!, 0)
    const [a, b] = [field(), field()]
    const [pa, pb] = [a.slice(), b.slice()]
    precondition(a, pa)
    precondition(b, pb)
    expect(dot(a, pa)).toBeGreaterThan(0)
    expect(Math.abs(dot(a, pb) / dot(b, pa) - 1)).toBeLessThan(1e-8)
  })
})

describe('bodies', () => {
  test('cells that meet at an edge only are two', () => {
    const lines = [evenLines(2, 2), evenLines(2, 2), evenLines(1, 1)] as const
    const grid = blockOf(lines, someElastic(seededRandom(3)), (x, y) => x < 1 === y < 1)
    expect(cellBodies(grid).cells).toEqual([0, 1, 1])
  })
})
