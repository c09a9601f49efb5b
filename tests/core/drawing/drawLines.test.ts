import { describe, expect, test } from 'vitest'
import { drawLines } from '../../../src/core/drawing/drawLines.ts'
import { paint } from '../../../src/core/drawing/paint.ts'
import { project } from '../../../src/core/drawing/project.ts'
import type { DrawnPiece, Motion } from '../../../src/core/drawing/types.ts'
import { VIEWS, viewAxes } from '../../../src/core/drawing/viewAxes.ts'
import { turnMatrix } from '../../../src/core/mesh/pose.ts'
import type { Vec3 } from '../../../src/core/model/mesh.ts'
import { box, sphere } from '../../support/meshes.ts'
import { seededRandom } from '../../support/random.ts'

const SHEET = { widthPx: 400, heightPx: 300, marginPx: 30 }

const moved = (x: number, y: number, z: number, turn: Vec3 = [0, 0, 0]): Motion => {
  const m = turnMatrix({ rotateDeg: turn })
  return [m[0], m[1], m[2], x, m[3], m[4], m[5], y, m[6], m[7], m[8], z]
}

const piece = (item: string, size: Vec3, motion = moved(0, 0, 0)): DrawnPiece => ({
  item,
  mesh: box(...size),
  motion,
})

/** Points of path data, one list a line. */
function linesOf(path: string): readonly (readonly (readonly [number, number])[])[] {
  return path
    .split('M')
    .slice(1)
    .map((line) =>
      line
        .replace('Z', '')
        .split('L')
        .map((point) => point.trim().split(' ').map(Number) as [number, number]),
    )
}

function lengthOf(path: string): number {
  let sum = 0
  for (const line of linesOf(path)) {
    for (let i = 1; i < line.length; i++) {
      sum += Math.hypot(line[i]![0] - line[i - 1]![0], line[i]![1] - line[i - 1]![1])
    }
  }
  return sum
}

/**
 * Even-odd area of closed path data, by the shoelace rule; loops of one region wind against its
 * holes.
 */
function areaOf(path: string): number {
  let sum = 0
  for (const line of linesOf(path)) {
    for (const [i, [x, y]] of line.entries()) {
      const [nx, ny] = line[(i + 1) % line.length]!
      sum += (x * ny - nx * y) / 2
    }
  }
  return Math.abs(sum)
}

describe('a drawing in lines', () => {
  test('a box from above fills the room it is given, and its tone is its face', () => {
    const drawing = drawLines([piece('deck', [80, 40, 10])], VIEWS.top, SHEET)!
    // 340 px for 80 mm, 240 px for 40 mm: the width binds.
    expect(drawing.scale).toBeCloseTo(340 / 80, 6)
    const [deck] = drawing.items
    const face = 80 * 40 * drawing.scale ** 2
    expect(deck!.tones.reduce((sum, tone) => sum + areaOf(tone), 0) / face).toBeCloseTo(1, 2)
    expect(deck!.areaPx2 / face).toBeCloseTo(1, 2)
    expect(lengthOf(deck!.outline) / (240 * drawing.scale)).toBeCloseTo(1, 2)
    expect(deck!.edges).toBe('')
  })

  test('of a cube seen from a corner nine edges are drawn, three of them inside', () => {
    const view = { azimuthDeg: 150, elevationDeg: 30 }
    const drawing = drawLines([piece('cube', [20, 20, 20])], view, SHEET)!
    const { right, up } = viewAxes(view)
    const lengths = [0, 1, 2].map((k) => 20 * drawing.scale * Math.hypot(right[k]!, up[k]!))
    const all = lengths.reduce((sum, length) => sum + length, 0)
    const [cube] = drawing.items
    expect(lengthOf(cube!.outline) / (2 * all)).toBeCloseTo(1, 2)
    expect(lengthOf(cube!.edges) / all).toBeCloseTo(1, 1)
    // Three faces, three tones.
    expect(cube!.tones.filter((tone) => tone !== '')).toHaveLength(3)
  })

  test('the outline of a ball is a circle and nothing inside it is a line', () => {
    const drawing = drawLines(
      [{ item: 'ball', mesh: sphere(10, 24), motion: moved(0, 0, 0) }],
      VIEWS.slant,
      SHEET,
    )!
    const [ball] = drawing.items
    expect(lengthOf(ball!.outline) / (2 * Math.PI * 10 * drawing.scale)).toBeCloseTo(1, 1)
    expect(lengthOf(ball!.edges)).toBeLessThan(0.02 * lengthOf(ball!.outline))
  })

  test('what lies behind another is not drawn and has no anchor', () => {
    const pieces = [
      piece('above', [60, 60, 4], moved(0, 0, 20)),
      piece('below', [20, 20, 4], moved(20, 20, 0)),
    ]
    const [above, below] = drawLines(pieces, VIEWS.top, SHEET)!.items
    expect(above!.anchors).not.toBeNull()
    expect(below).toEqual({
      item: 'below',
      tones: ['', '', '', ''],
      outline: '',
      edges: '',
      areaPx2: 0,
      anchors: null,
    })
  })

  test('a mirrored piece is drawn like the piece mirrored: as much outline, as much area', () => {
    const mirror: Motion = [-1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0]
    const view = VIEWS.front
    const own = drawLines([piece('arm', [10, 30, 20])], view, SHEET)!.items[0]!
    const twin = drawLines([piece('arm', [10, 30, 20], mirror)], view, SHEET)!.items[0]!
    expect(lengthOf(twin.outline)).toBeCloseTo(lengthOf(own.outline), 0)
    expect(twin.areaPx2).toBe(own.areaPx2)
  })

  test('nothing gives no drawing', () => {
    expect(drawLines([], VIEWS.slant, SHEET)).toBeNull()
  })

  test('every sample shows the nearest face, as a search through all faces says (seed 5)', () => {
    const random = seededRandom(5)
    const pieces = Array.from({ length: 8 }, (_, i) =>
      piece(
        String(i),
        [5 + 30 * random(), 5 + 30 * random(), 5 + 30 * random()],
        moved(60 * random(), 60 * random(), 60 * random(), [
          360 * random(),
          360 * random(),
          360 * random(),
        ]),
      ),
    )
    const projection = project(pieces, VIEWS.slant, SHEET)!
    const painted = paint(projection, SHEET.widthPx, SHEET.heightPx, 1)
    let looked = 0
    for (let n = 0; n < 2000; n++) {
      const column = Math.floor(SHEET.widthPx * random())
      const row = Math.floor(SHEET.heightPx * random())
      const hits = projection.pieces.flatMap(({ item, x, y, depth, mesh }) => {
        const own: { item: number; depth: number; edge: number }[] = []
        for (let i = 0; i < mesh.indices.length; i += 3) {
          const [a, b, c] = mesh.indices.subarray(i, i + 3)
          const hit = pierce(
            [x[a!]!, y[a!]!],
            [x[b!]!, y[b!]!],
            [x[c!]!, y[c!]!],
            column + 0.5,
            row + 0.5,
          )
          if (hit === null) continue
          const [u, v, w] = hit
          own.push({
            item,
            depth: u * depth[a!]! + v * depth[b!]! + w * depth[c!]!,
            edge: Math.min(...hit),
          })
        }
        return own
      })
      const [front, second] = hits.toSorted((a, b) => b.depth - a.depth)
      const label = painted.label[row * painted.width + column]!
      // Exactly on an edge, or where two faces meet, either answer is right.
      if (
        front !== undefined &&
        (front.edge < 1e-6 || (second !== undefined && front.depth - second.depth < 1e-4))
      )
        continue
      looked++
      expect(label === 0 ? null : (label - 1) >> 2).toBe(front?.item ?? null)
    }
    expect(looked).toBeGreaterThan(1800)
  })
})

/** Weights of the corners at a point inside a triangle; null outside. */
function pierce(
  a: readonly [number, number],
  b: readonly [number, number],
  c: readonly [number, number],
  x: number,
  y: number,
): readonly [number, number, number] | null {
  const area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
  if (Math.abs(area) < 1e-12) return null
  const v = ((x - a[0]) * (c[1] - a[1]) - (y - a[1]) * (c[0] - a[0])) / area
  const w = ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / area
  const u = 1 - v - w
  return u < 0 || v < 0 || w < 0 ? null : [u, v, w]
}
