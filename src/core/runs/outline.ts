import type { Mesh } from '../model/mesh.ts'
import type { PieceOutline } from './types.ts'
import { hullOf } from './hull.ts'

/** Cells are this wide, and wider on pieces of more than `MOST_CELLS` a side. */
const CELL_MM = 0.5
const MOST_CELLS = 1200
/** Of a cell: corners on its edge count to one side only. */
const EDGE = 1e-6

/**
 * What a placed mesh (mm, see `placeMesh`) covers of the bed, at any height: every cell that one of
 * its triangles reaches into, seen from above. Null where nothing has a size.
 */
export function outlineOf(mesh: Mesh): PieceOutline | null {
  const { positions, indices } = mesh
  if (indices.length === 0) return null
  let [minX, minY, maxX, maxY, maxZ] = [Infinity, Infinity, -Infinity, -Infinity, -Infinity]
  for (const index of indices) {
    const x = positions[3 * index] ?? 0
    const y = positions[3 * index + 1] ?? 0
    minX = Math.min(minX, x)
    maxX = Math.max(maxX, x)
    minY = Math.min(minY, y)
    maxY = Math.max(maxY, y)
    maxZ = Math.max(maxZ, positions[3 * index + 2] ?? 0)
  }
  const size = Math.max(maxX - minX, maxY - minY)
  if (!(size > 0) || !Number.isFinite(size)) return null
  const cellMm = Math.max(CELL_MM, size / MOST_CELLS)
  const across = Math.max(1, Math.ceil((maxX - minX) / cellMm - EDGE))
  const down = Math.max(1, Math.ceil((maxY - minY) / cellMm - EDGE))
  const cells = new Uint8Array(across * down)
  const corner = (k: number): readonly [number, number] => [
    ((positions[3 * k] ?? 0) - minX) / cellMm,
    ((positions[3 * k + 1] ?? 0) - minY) / cellMm,
  ]
  for (let i = 0; i + 2 < indices.length; i += 3) {
    fillTriangle(
      cells,
      across,
      down,
      corner(indices[i] ?? 0),
      corner(indices[i + 1] ?? 0),
      corner(indices[i + 2] ?? 0),
    )
  }
  const covered = cells.reduce((sum, cell) => sum + cell, 0)
  return {
    cellMm,
    across,
    down,
    cells,
    fromMm: [minX, minY],
    hullMm: hullOf(mesh),
    heightMm: maxZ,
    areaMm2: covered * cellMm ** 2,
  }
}

type Point = readonly [x: number, y: number]

/** Left and right of what a triangle has in a row so far. */
const reach: [left: number, right: number] = [0, 0]

/** Takes what one side of a triangle has in a row. */
function reachBy(p: Point, q: Point, row: number): void {
  const from = Math.max(row, Math.min(p[1], q[1]))
  const to = Math.min(row + 1, Math.max(p[1], q[1]))
  if (from > to) return
  const isLevel = p[1] === q[1]
  const slope = isLevel ? 0 : (q[0] - p[0]) / (q[1] - p[1])
  const first = isLevel ? p[0] : p[0] + slope * (from - p[1])
  const second = isLevel ? q[0] : p[0] + slope * (to - p[1])
  reach[0] = Math.min(reach[0], first, second)
  reach[1] = Math.max(reach[1], first, second)
}

/**
 * Marks the cells of each row from the leftmost to the rightmost point that the triangle has in it.
 * Made of no functions of its own: there are as many rows as the mesh has edges, and more.
 */
function fillTriangle(
  cells: Uint8Array,
  across: number,
  down: number,
  a: Point,
  b: Point,
  c: Point,
): void {
  const low = Math.min(a[1], b[1], c[1])
  const high = Math.max(a[1], b[1], c[1])
  const first = Math.max(0, Math.min(down - 1, Math.floor(low + EDGE)))
  const last = Math.min(down - 1, Math.max(first, Math.ceil(high - EDGE) - 1))
  for (let row = first; row <= last; row++) {
    reach[0] = Infinity
    reach[1] = -Infinity
    reachBy(a, b, row)
    reachBy(b, c, row)
    reachBy(c, a, row)
    const [left, right] = reach
    if (left > right) continue
    const from = Math.max(0, Math.min(across - 1, Math.floor(left + EDGE)))
    const to = Math.min(across - 1, Math.max(from, Math.ceil(right - EDGE) - 1))
    cells.fill(1, row * across + from, row * across + to + 1)
  }
}
