import { describe, expect, test } from 'vitest'
import { elasticOf, isotropic } from '../../../../src/core/stiffness/moduli/elastic.ts'
import { applyLevel } from '../../../../src/core/stiffness/solid/applyLevel.ts'
import { buildLevel } from '../../../../src/core/stiffness/solid/buildLevel.ts'
import { coarsen } from '../../../../src/core/stiffness/solid/coarsen.ts'
import { diagonalOf } from '../../../../src/core/stiffness/solid/diagonal.ts'
import { blockOf, evenLines, placesOf, pushBlock } from '../../../support/solids.ts'
import { denseStiffness } from '../../../support/denseElement.ts'
import { seededRandom } from '../../../support/random.ts'

const uneven = (...steps: number[]): Float64Array =>
  Float64Array.from([0, ...steps.map((_, i) => steps.slice(0, i + 1).reduce((a, b) => a + b))])

const LINES = [
  uneven(1, 0.4, 1.3, 0.8),
  uneven(0.5, 1.1, 0.7),
  uneven(0.25, 0.9, 0.6, 1.2),
] as const
/** Printed plastic, exaggerated: all nine moduli differ. */
const CROOKED = elasticOf({
  e1: 3000,
  e2: 1200,
  e3: 700,
  nu12: 0.3,
  nu13: 0.25,
  nu23: 0.4,
  g12: 500,
  g13: 260,
  g23: 330,
})

describe('one cell', () => {
  test('its matrix is that of 2 × 2 × 2 Gauss points with nine condensed modes', () => {
    // The slow way: shape functions, strain matrices, integration, static condensation.
    const grid = blockOf([uneven(1.3), uneven(0.7), uneven(0.4)], CROOKED)
    const level = buildLevel(grid)
    const slow = denseStiffness([1.3, 0.7, 0.4], CROOKED)
    const largest = Math.max(...slow.flat().map(Math.abs))
    const diagonal = diagonalOf(level)
    for (let j = 0; j < 24; j++) {
      const unit = new Float64Array(24)
      unit[j] = 1
      const forces = new Float64Array(24)
      applyLevel(level, unit, forces)
      for (let i = 0; i < 24; i++) {
        expect(Math.abs(forces[i]! - slow[i]![j]!)).toBeLessThan(1e-12 * largest)
      }
      expect(diagonal[j]).toBeCloseTo(forces[j]!, 9)
    }
  })
})

describe('patch test', () => {
  test('uneven cells of crooked plastic are strained alike when their surface is', () => {
    const random = seededRandom(11)
    for (let turn = 0; turn < 4; turn++) {
      const slope = Array.from({ length: 9 }, () => random() - 0.5)
      const level = buildLevel(blockOf(LINES, CROOKED))
      const exact = placesOf(level).flatMap(([x, y, z]) =>
        [0, 1, 2].map((k) => slope[3 * k]! * x + slope[3 * k + 1]! * y + slope[3 * k + 2]! * z),
      )
      const forces = new Float64Array(exact.length)
      applyLevel(level, Float64Array.from(exact), forces)
      const largest = Math.max(...forces.map(Math.abs))
      placesOf(level).forEach((place, node) => {
        const inner = place.every((at, k) => at > 0 && at < LINES[k]!.at(-1)!)
        if (!inner) return
        for (let k = 0; k < 3; k++) {
          expect(Math.abs(forces[3 * node + k]!)).toBeLessThan(1e-9 * largest)
        }
      })
    }
  })

  test('pulled evenly and held without restraint, every node goes where Hooke says', () => {
    // σ = 2 N/mm² along x: u = σ x / E1, v = −ν12 σ y / E1, w = −ν13 σ z / E1 (closed form).
    const [xs, ys, zs] = LINES
    const end = xs.at(-1)!
    const width = (lines: Float64Array, at: number): number => {
      const i = lines.indexOf(at)
      return ((lines[i + 1] ?? at) - (lines[i - 1] ?? at)) / 2
    }
    const { places, moves } = pushBlock(
      blockOf(LINES, CROOKED),
      ([x, y, z]) => [x === 0, y === 0, z === 0],
      ([x, y, z]) => (x === end ? [2 * width(ys, y) * width(zs, z), 0, 0] : null),
      1e-13,
    )
    const pull = 2 / 3000
    places.forEach(([x, y, z], node) => {
      expect(Math.abs(moves[3 * node]! - pull * x)).toBeLessThan(1e-9 * pull * end)
      expect(Math.abs(moves[3 * node + 1]! + 0.3 * pull * y)).toBeLessThan(1e-9 * pull * end)
      expect(Math.abs(moves[3 * node + 2]! + 0.25 * pull * z)).toBeLessThan(1e-9 * pull * end)
    })
  })

  test('moved and turned as one it feels nothing', () => {
    const level = buildLevel(blockOf(LINES, CROOKED))
    const turned = placesOf(level).flatMap(([x, y, z]) => [1 - 0.2 * y + z, 0.2 * x, 3 - x])
    const forces = new Float64Array(turned.length)
    applyLevel(level, Float64Array.from(turned), forces)
    expect(Math.max(...forces.map(Math.abs))).toBeLessThan(1e-9)
  })
})

describe('coarser levels', () => {
  test('tend to cubes, keep the ends, and hold the same material', () => {
    const lines = [evenLines(12, 12), evenLines(12, 12), evenLines(1, 5)] as const
    const level = buildLevel(blockOf(lines, isotropic(2000, 0.3)))
    const flat = coarsen(level)!
    expect(flat.size).toEqual([12, 12, 3])
    expect([...flat.linesMm[2]]).toEqual([0, 0.4, 0.8, 1])
    expect(flat.table[0]).toBeCloseTo(isotropic(2000, 0.3).c11, 9)
    let last = flat
    for (let next = coarsen(last); next !== null; next = coarsen(last)) last = next
    expect(last.size).toEqual([1, 1, 1])
  })

  test('a cell half empty is half as stiff', () => {
    const lines = [evenLines(2, 2), evenLines(2, 2), evenLines(2, 2)] as const
    const level = buildLevel(blockOf(lines, CROOKED, (x) => x < 1))
    const coarse = coarsen(level)!
    expect(coarse.size).toEqual([1, 1, 1])
    expect(coarse.table[0]).toBeCloseTo(CROOKED.c11 / 2, 9)
    expect(coarse.table[8]).toBeCloseTo(CROOKED.g23 / 2, 9)
  })
})
