import { describe, expect, test } from 'vitest'
import { boresFit } from '../../../src/core/joints/boresFit.ts'
import { findMouths } from '../../../src/core/joints/findMouths.ts'
import { groupMouths, matchBores } from '../../../src/core/joints/matchBores.ts'
import type { BoreMatch, Mouth } from '../../../src/core/joints/types.ts'
import { mapPoint } from '../../../src/core/mesh/rigidMaps.ts'
import type { Mesh, Vec3 } from '../../../src/core/model/mesh.ts'
import { boredPlate } from '../../support/boredPlate.ts'
import {
  blind,
  holed,
  lay,
  layPoint,
  outlineOf,
  randomLay,
  scattered,
  type Lay,
} from '../../support/jointShapes.ts'
import { mirror } from '../../support/meshes.ts'
import type { Point } from '../../support/polygon.ts'
import { seededRandom } from '../../support/random.ts'

const match = (a: readonly Mouth[], b: readonly Mouth[]) =>
  matchBores(groupMouths(a), groupMouths(b), Infinity).filter(({ isNearMiss }) => !isNearMiss)

const KINDS = ['plate', 'arm', 'ring'] as const
const FACETS = [8, 13, 32, 128]
const SIZE = [80, 60] as const

/**
 * Part b drawn as it sits below a (its top on a's bottom), then laid anywhere: the way back is
 * known.
 */
function drawnPair(seed: number, kind: (typeof KINDS)[number], facets: number, count: number) {
  const random = seededRandom(seed)
  const holes = scattered(random, count, SIZE, 20, 6)
  const ways: readonly [Lay, Lay] = [randomLay(random), randomLay(random)]
  const a = holed(outlineOf('plate', facets), 4, holes, 1.7, facets)
  const below: Lay = { degrees: [0, 0, 0], by: [0, 0, -5] }
  const under = (points: readonly Point[]): Mesh =>
    lay(
      boredPlate(
        outlineOf(kind, facets),
        5,
        points.map(([x, y]) => blind(x, y, 2, 4, facets)),
      ),
      below,
    )
  return { random, holes, a, under, ways }
}

/** How far a motion misses what it should do to points of the drawing. mm */
function miss({ motion }: BoreMatch, [wayA, wayB]: readonly [Lay, Lay]): number {
  const corners: Vec3[] = [
    [0, 0, 0],
    [80, 0, 0],
    [0, 60, 0],
    [40, 30, -5],
  ]
  return Math.max(
    ...corners.map((at) => {
      const moved = mapPoint(motion, layPoint(at, wayB))
      const goal = layPoint(at, wayA)
      return Math.hypot(...moved.map((v, k) => v - goal[k]!))
    }),
  )
}

describe.each(KINDS)('a plate on a random %s', (kind) => {
  test.each(FACETS)(
    '%i facets: the motion comes back to 1e-5 mm, whatever way both lie',
    (facets) => {
      for (let round = 0; round < 6; round++) {
        const count = 2 + round
        const { holes, a, under, ways } = drawnPair(100 * facets + round, kind, facets, count)
        expect(holes).toHaveLength(count)
        const best = match(
          findMouths(lay(a, ways[0])),
          findMouths(lay(under(holes), ways[1])),
        ).find((each) => each.pairs.length === count && miss(each, ways) < 1)
        expect(best).toBeDefined()
        expect(miss(best!, ways)).toBeLessThan(1e-5)
      }
    },
  )

  test.each(FACETS)('%i facets: a mirror image and holes 0.4 mm off are not taken', (facets) => {
    for (let round = 0; round < 4; round++) {
      const count = 4 + (round % 2)
      const { random, holes, a, under, ways } = drawnPair(7 * facets + round, kind, facets, count)
      const mouthsA = findMouths(lay(a, ways[0])).filter(({ atMm }) => isBelow(atMm, ways[0]))
      const most = (b: Mesh) =>
        Math.max(0, ...match(mouthsA, findMouths(lay(b, ways[1]))).map((m) => m.pairs.length))
      expect(most(under(holes))).toBe(count)
      // Four scattered points and their mirror image have at most a pair or a chance triangle in
      // common.
      expect(most(mirror(under(holes)))).toBeLessThan(count)
      const spread = holes.map(([x, y]): Point => [40 + (x - 40) * 1.03, 30 + (y - 30) * 1.03])
      expect(most(under(spread))).toBeLessThan(count)
      const angle = 2 * Math.PI * random()
      const shifted = holes.map(([x, y], i): Point => {
        const by = i === 0 ? 0.4 : 0
        return [x + by * Math.cos(angle), y + by * Math.sin(angle)]
      })
      const near = match(mouthsA, findMouths(lay(under(shifted), ways[1])))
      expect(near.filter((each) => each.pairs.length >= 3 && miss(each, ways) < 1)).toEqual([])
    }
  })
})

/** Of a plate as `drawnPair` lays it: the mouth opens downwards. */
function isBelow(at: Vec3, way: Lay): boolean {
  const [base, up] = [layPoint([0, 0, 2], way), layPoint([0, 0, 3], way)]
  return at.reduce((sum, v, k) => sum + (v - base[k]!) * (up[k]! - base[k]!), 0) < 0
}

/**
 * The obvious way: every two holes of a on every two of b, and then who else meets; slow, with no
 * order, no index and no memory of what was seen. Sets of pairs, each as text.
 */
function everyMatch(a: readonly Mouth[], b: readonly Mouth[]): Set<string> {
  const found = new Set<string>()
  const minus = (p: Vec3, q: Vec3): Vec3 => [p[0] - q[0], p[1] - q[1], p[2] - q[2]]
  const dot = (p: Vec3, q: Vec3) => p[0] * q[0] + p[1] * q[1] + p[2] * q[2]
  const cross = (p: Vec3, q: Vec3): Vec3 => [
    p[1] * q[2] - p[2] * q[1],
    p[2] * q[0] - p[0] * q[2],
    p[0] * q[1] - p[1] * q[0],
  ]
  /** A mouth from a first one towards a second, all in numbers that no rigid motion changes. */
  const seen = (from: Mouth, to: Mouth, out: Vec3, third: Mouth): readonly number[] => {
    const along = minus(to.atMm, from.atMm)
    const length = Math.sqrt(dot(along, along))
    const at = minus(third.atMm, from.atMm)
    return [dot(at, along) / length, dot(at, cross(out, along)) / length, dot(at, out)]
  }
  const fits = (p: Mouth, q: Mouth) => boresFit(p.bore, q.bore)
  const same = (p: readonly number[], q: readonly number[]) =>
    p.every((value, k) => Math.abs(value - q[k]!) < 0.15)
  for (const p of a) {
    for (const q of a) {
      for (const r of b) {
        for (const s of b) {
          if (p === q || r === s || dot(p.out, q.out) < 0.999 || dot(r.out, s.out) < 0.999) continue
          const into: Vec3 = [-r.out[0], -r.out[1], -r.out[2]]
          if (!same(seen(p, q, p.out, q), seen(r, s, into, s))) continue
          const pairs: string[] = []
          a.forEach((one, i) => {
            b.forEach((other, j) => {
              const isParallel = dot(one.out, p.out) > 0.999 && dot(other.out, r.out) > 0.999
              if (!isParallel || !fits(one, other)) return
              if (same(seen(p, q, p.out, one), seen(r, s, into, other))) pairs.push(`${i}:${j}`)
            })
          })
          if (pairs.length >= 2) found.add(pairs.toSorted().join(' '))
        }
      }
    }
  }
  return found
}

describe('against every pair of holes tried on every other', () => {
  test.each(Array.from({ length: 12 }, (_, i) => i))('drawing %i', (seed) => {
    const random = seededRandom(seed)
    // On a grid, so that many spacings are equal and many ways fit.
    const grid = (count: number): Point[] => {
      const all = Array.from({ length: 20 }, (_, i): Point => [
        16 + 12 * (i % 5),
        12 + 12 * Math.floor(i / 5),
      ])
      return all.toSorted(() => random() - 0.5).slice(0, count)
    }
    const a = holed(outlineOf('plate', 16), 4, grid(5), 1.7, 16)
    const b = holed(outlineOf('plate', 16), 3, grid(4), 1.6, 12)
    const [one, other] = [
      findMouths(lay(a, randomLay(random))),
      findMouths(lay(b, randomLay(random))),
    ]
    const ours = match(one, other).map(({ pairs }) =>
      pairs
        .map(([i, j]) => `${i}:${j}`)
        .toSorted()
        .join(' '),
    )
    expect(ours.length).toBeGreaterThan(0)
    expect(new Set(ours)).toEqual(everyMatch(one, other))
  })
})

describe('what fits by diameter', () => {
  const bore = (diameterMm: number, kind: 'bore' | 'peg' = 'bore') => ({
    kind,
    centreMm: [0, 0, 0] as Vec3,
    axis: [0, 0, 1] as Vec3,
    diameterMm,
    depthMm: 4,
    openLow: true,
    openHigh: true,
  })
  // ISO 273 M3: 3.2, 3.4, 3.6; tapping drill 2.5 (ISO 2306); insert 4.0 (Accu). M4: 4.3, 4.5, 4.8,
  // tapping 3.3.
  test.each([
    [3.2, 3.6, true],
    [3.4, 2.5, true],
    [3.4, 4, true],
    [3.4, 5.3, false],
    [2.5, 2.5, true],
    [2.5, 4, false],
    [3.4, 4.5, true],
    [3.4, 1.5, false],
    [3.4, 8, false],
    // A tube through both.
    [8.2, 8, true],
    [8, 8.5, false],
  ])('a bore of %f on one of %f: %s', (a, b, fits) => {
    expect(boresFit(bore(a), bore(b))).toBe(fits)
    expect(boresFit(bore(b), bore(a))).toBe(fits)
  })

  test('a shaft goes in with play or pressed in by a quarter of a millimetre', () => {
    expect(boresFit(bore(12, 'peg'), bore(12.2))).toBe(true)
    expect(boresFit(bore(8), bore(8.2, 'peg'))).toBe(true)
    expect(boresFit(bore(8), bore(8.4, 'peg'))).toBe(false)
    expect(boresFit(bore(12, 'peg'), bore(13))).toBe(false)
    expect(boresFit(bore(12, 'peg'), bore(12, 'peg'))).toBe(false)
  })
})
