import type { Spot } from '../../../src/core/model/runs.ts'
import { describe, expect, test } from 'vitest'
import { placeMesh } from '../../../src/core/mesh/pose.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN } from '../../../src/core/model/settings.ts'
import { goesOn, nest } from '../../../src/core/runs/nest.ts'
import { outlineOf } from '../../../src/core/runs/outline.ts'
import type { Bed, LaidPart, PieceOutline } from '../../../src/core/runs/types.ts'
import { prism, tube } from '../../support/meshes.ts'
import { seededRandom } from '../../support/random.ts'

const BED: Bed = { widthMm: 120, depthMm: 100, heightMm: 100, marginMm: 3 }

interface Kind {
  readonly mesh: Mesh
  readonly part: LaidPart
}

function kindOf(id: string, drawn: Mesh, count: number, brimMm = 0): Kind {
  const mesh = placeMesh(drawn, 1, POSE_AS_DRAWN)
  return { mesh, part: { id, count, outline: outlined(mesh), brimMm } }
}

function outlined(mesh: Mesh): PieceOutline {
  const outline = outlineOf(mesh)
  if (outline === null) throw new Error('A test mesh without a size.')
  return outline
}

type Point = readonly [number, number]
type Triangle = readonly [Point, Point, Point]

/** The triangles of a piece on the bed, seen from above; the slow and obvious way. */
function shadow(
  { positions, indices }: Mesh,
  { xMm, yMm, turnDeg, mirrored }: Spot,
): readonly Triangle[] {
  const radians = (turnDeg * Math.PI) / 180
  const at = (v: number): Point => {
    const x = (mirrored === true ? -1 : 1) * positions[3 * v]!
    const y = positions[3 * v + 1]!
    return [
      xMm + Math.cos(radians) * x - Math.sin(radians) * y,
      yMm + Math.sin(radians) * x + Math.cos(radians) * y,
    ]
  }
  return Array.from({ length: indices.length / 3 }, (_, i): Triangle => [
    at(indices[3 * i]!),
    at(indices[3 * i + 1]!),
    at(indices[3 * i + 2]!),
  ])
}

/**
 * Distance of two triangles, 0 where they overlap: of every corner to every side, and by crossing
 * sides.
 */
function apart(a: Triangle, b: Triangle): number {
  if (a.some((p) => isInside(p, b)) || b.some((p) => isInside(p, a))) return 0
  let least = Infinity
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) {
      const [p, q, r, s] = [a[i]!, a[(i + 1) % 3]!, b[j]!, b[(j + 1) % 3]!]
      if (side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0) return 0
      least = Math.min(least, toSegment(p, r, s), toSegment(r, p, q))
    }
  }
  return least
}

const side = (a: Point, b: Point, p: Point): number =>
  (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])

function isInside(p: Point, [a, b, c]: Triangle): boolean {
  const [u, v, w] = [side(a, b, p), side(b, c, p), side(c, a, p)]
  return (u > 1e-9 && v > 1e-9 && w > 1e-9) || (u < -1e-9 && v < -1e-9 && w < -1e-9)
}

function toSegment(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const long = dx * dx + dy * dy
  const t = long === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / long
  const k = Math.max(0, Math.min(1, t))
  return Math.hypot(p[0] - a[0] - k * dx, p[1] - a[1] - k * dy)
}

function leastApart(a: readonly Triangle[], b: readonly Triangle[]): number {
  let least = Infinity
  for (const one of a) for (const other of b) least = Math.min(least, apart(one, other))
  return least
}

/** Everything the beds must hold to, by exact geometry. */
function expectSound(
  kinds: readonly Kind[],
  beds: readonly (readonly Spot[])[],
  bed: Bed,
  gap: number,
) {
  const byId = new Map(kinds.map((kind) => [kind.part.id, kind]))
  for (const { part } of kinds) {
    const laid = beds.flat().filter(({ partId }) => partId === part.id)
    expect(laid).toHaveLength(part.count)
    expect(laid.filter(({ mirrored }) => mirrored === true)).toHaveLength(part.mirrored ?? 0)
  }
  for (const spots of beds) {
    const laid = spots.map((spot) => {
      const { mesh, part } = byId.get(spot.partId)!
      return { triangles: shadow(mesh, spot), brimMm: part.brimMm }
    })
    for (const [i, { triangles, brimMm }] of laid.entries()) {
      const xs = triangles.flat().map(([x]) => x)
      const ys = triangles.flat().map(([, y]) => y)
      const rim = bed.marginMm + brimMm - 1e-6
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(rim)
      expect(Math.max(...xs)).toBeLessThanOrEqual(bed.widthMm - rim)
      expect(Math.min(...ys)).toBeGreaterThanOrEqual(rim)
      expect(Math.max(...ys)).toBeLessThanOrEqual(bed.depthMm - rim)
      for (const other of laid.slice(i + 1)) {
        const least = gap + brimMm + other.brimMm
        expect(leastApart(triangles, other.triangles)).toBeGreaterThanOrEqual(least - 1e-6)
      }
    }
  }
}

describe('pieces on beds', () => {
  test.each(Array.from({ length: 12 }, (_, i) => i + 1))(
    'set %i: spacing, margin and brim kept, every piece laid once',
    (seed) => {
      const random = seededRandom(seed)
      const between = (a: number, b: number) => a + (b - a) * random()
      const kinds = Array.from({ length: 4 }, (_, i): Kind => {
        const [long, wide] = [between(15, 80), between(8, 40)]
        const thick = between(3, 7)
        const mirrored = random() < 0.5 ? 1 : 0
        const brim = random() < 0.3 ? between(1, 4) : 0
        const count = 1 + Math.floor(4 * random())
        const meshes = [
          prism(
            [
              [0, 0],
              [long, 0],
              [long, thick],
              [thick, thick],
              [thick, wide],
              [0, wide],
            ],
            4,
          ),
          prism(
            [
              [0, 0],
              [long, wide / 3],
              [long, wide / 2],
              [0, wide],
            ],
            4,
          ),
          tube(wide / 2, wide / 2 - 2, 4, 24),
          prism(
            [
              [0, 0],
              [long, 0],
              [long / 3, wide],
            ],
            4,
          ),
        ]
        const kind = kindOf(`${i}`, meshes[i]!, count, brim)
        return { ...kind, part: { ...kind.part, mirrored } }
      })
      const gapMm = between(0.5, 6)
      const bed = { ...BED, marginMm: between(0, 8) }
      const beds = nest(
        kinds.map(({ part }) => part),
        bed,
        { gapMm, passes: 2 },
      )
      expectSound(kinds, beds, bed, gapMm)
      // No fewer beds than the plastic's own shadow needs.
      const area = kinds.reduce((sum, { mesh, part }) => sum + part.count * shadowArea(mesh), 0)
      expect(beds.length).toBeGreaterThanOrEqual(Math.ceil(area / (bed.widthMm * bed.depthMm)))
    },
  )

  test('the same pieces lie the same way twice', () => {
    const kinds = [
      kindOf('a', tube(20, 10, 5, 32), 5),
      kindOf(
        'b',
        prism(
          [
            [0, 0],
            [70, 0],
            [0, 40],
          ],
          5,
        ),
        4,
      ),
    ]
    const parts = kinds.map(({ part }) => part)
    expect(nest(parts, BED, { gapMm: 2 })).toEqual(nest(parts, BED, { gapMm: 2 }))
  })

  test('a small piece goes inside a ring', () => {
    const kinds = [kindOf('ring', tube(46, 40, 5, 96), 1), kindOf('disc', tube(30, 5, 5, 48), 1)]
    const beds = nest(
      kinds.map(({ part }) => part),
      { ...BED, widthMm: 100, marginMm: 1 },
      { gapMm: 2 },
    )
    expect(beds).toHaveLength(1)
  })

  test('a piece longer than the bed is wide goes on its diagonal', () => {
    const bed = { ...BED, widthMm: 100, depthMm: 100, marginMm: 0 }
    const arm = kindOf(
      'arm',
      prism(
        [
          [0, 0],
          [110, 0],
          [110, 10],
          [0, 10],
        ],
        5,
      ),
      2,
    )
    const beds = nest([arm.part], bed, { gapMm: 2 })
    // Side by side at 45° they take (110 + 22)/√2 = 93.3 mm.
    expect(beds).toHaveLength(1)
    expectSound([arm], beds, bed, 2)
  })

  test('a piece as large as the usable bed lies alone on it', () => {
    const full = kindOf(
      'full',
      prism(
        [
          [0, 0],
          [113.7, 0],
          [113.7, 93.7],
          [0, 93.7],
        ],
        5,
      ),
      1,
    )
    const small = kindOf('small', tube(4, 2, 4, 16), 1)
    const beds = nest([full.part, small.part], { ...BED, marginMm: 3.15 }, { gapMm: 1 })
    expect(beds).toHaveLength(2)
    expectSound([full, small], beds, { ...BED, marginMm: 3.15 }, 1)
  })

  test('height and length decide whether it goes on the bed at all', () => {
    const bed = { ...BED, widthMm: 100, depthMm: 100, marginMm: 0 }
    const at = (long: number, high: number) =>
      outlined(
        placeMesh(
          prism(
            [
              [0, 0],
              [long, 0],
              [long, 10],
              [0, 10],
            ],
            high,
          ),
          1,
          POSE_AS_DRAWN,
        ),
      )
    expect(goesOn(at(50, 100), 0, bed)).toBe(true)
    expect(goesOn(at(50, 101), 0, bed)).toBe(false)
    // On the diagonal l + w = a·√2: 131.42 for 10 mm of width.
    expect(goesOn(at(131.4, 5), 0, bed)).toBe(true)
    expect(goesOn(at(131.5, 5), 0, bed)).toBe(false)
  })
})

function shadowArea({ positions, indices }: Mesh): number {
  // Prisms: half of what faces up and down.
  let twice = 0
  for (let i = 0; i < indices.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k): Point => {
      const v = indices[i + k]!
      return [positions[3 * v]!, positions[3 * v + 1]!]
    })
    twice += Math.abs(side(a!, b!, c!)) / 2
  }
  return twice / 2
}

describe('against every way there is', () => {
  /**
   * Whether these rectangles go on one bed, each tried in every place on a grid of 10 mm and both
   * ways.
   */
  function fitsOne(rectangles: readonly Point[], wide: number, deep: number): boolean {
    const taken = new Set<number>()
    const put = (k: number): boolean => {
      const rectangle = rectangles[k]
      if (rectangle === undefined) return true
      const ways: readonly Point[] = [rectangle, [rectangle[1], rectangle[0]]]
      for (const [w, d] of ways) {
        for (let x = 0; x + w <= wide; x++) {
          for (let y = 0; y + d <= deep; y++) {
            const cells: number[] = []
            for (let i = x; i < x + w; i++) for (let j = y; j < y + d; j++) cells.push(i * deep + j)
            if (cells.some((cell) => taken.has(cell))) continue
            for (const cell of cells) taken.add(cell)
            if (put(k + 1)) return true
            for (const cell of cells) taken.delete(cell)
          }
        }
      }
      return false
    }
    return put(0)
  }

  function fewest(rectangles: readonly Point[], wide: number, deep: number): number {
    let best = rectangles.length
    const beds: Point[][] = []
    const put = (k: number): void => {
      if (beds.length >= best) return
      const rectangle = rectangles[k]
      if (rectangle === undefined) {
        best = beds.length
        return
      }
      for (const bed of beds) {
        bed.push(rectangle)
        if (fitsOne(bed, wide, deep)) put(k + 1)
        bed.pop()
      }
      beds.push([rectangle])
      put(k + 1)
      beds.pop()
    }
    put(0)
    return best
  }

  test('five rectangles that fill beds to the edge: one bed too many at most, none in nine sets of ten', () => {
    const random = seededRandom(7)
    let asFew = 0
    for (let set = 0; set < 40; set++) {
      const sizes = Array.from({ length: 5 }, (): Point => [
        1 + Math.floor(4 * random()),
        1 + Math.floor(3 * random()),
      ])
      const kinds = sizes.map(([w, d], i) =>
        kindOf(
          `${i}`,
          prism(
            [
              [0, 0],
              [10 * w, 0],
              [10 * w, 10 * d],
              [0, 10 * d],
            ],
            4,
          ),
          1,
        ),
      )
      const bed = { widthMm: 50, depthMm: 40, heightMm: 50, marginMm: 0 }
      const beds = nest(
        kinds.map(({ part }) => part),
        bed,
        { gapMm: 0 },
      )
      expectSound(kinds, beds, bed, 0)
      const least = fewest(sizes, 5, 4)
      expect(beds.length).toBeLessThanOrEqual(least + 1)
      if (beds.length <= least) asFew++
    }
    expect(asFew).toBeGreaterThanOrEqual(36)
  })
})
