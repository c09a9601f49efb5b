import type { Mesh, MeshPiece, Vec3 } from '../../model/mesh.ts'
import type { Nine } from '../pose.ts'

/** x′ = matrix · x + move: a turn, or a turn and a mirror image, and a shift. */
export interface RigidMap {
  readonly matrix: Nine
  readonly move: Vec3
}

/** A run of triangles of a mesh. */
export type Run = Pick<MeshPiece, 'firstTriangle' | 'triangleCount'>

/** Share of a piece's size that two copies of it may be apart: files print six digits or more. */
const SAME = 2e-5

/**
 * The rigid map that lays one run of triangles on another, corner on corner in the order of the
 * file; null where there is none, as between different, scaled or sheared pieces. A mirror image
 * lists the corners of its triangles backwards.
 *
 * The order of the file decides, not the shape: a symmetric part fits on itself in several ways and
 * only one is how it was placed. Two builds of one object keep its order, whatever their
 * transforms.
 */
export function rigidMap(mesh: Mesh, one: Run, other: Run): RigidMap | null {
  if (one.triangleCount !== other.triangleCount) return null
  const corners = 3 * one.triangleCount
  const from = cornersOf(mesh, one, FORWARDS)
  const span = spanOf(from, corners)
  if (span === null) return null
  for (const order of [FORWARDS, ...BACKWARDS]) {
    const to = cornersOf(mesh, other, order)
    const map = mapOf(from, to, span)
    if (map !== null && fits(from, to, corners, map, SAME * span.size)) return map
  }
  return null
}

/** Where a point of the map's first side lands. */
export function mapPoint({ matrix: m, move }: RigidMap, [x, y, z]: Vec3): Vec3 {
  return [
    m[0] * x + m[1] * y + m[2] * z + move[0],
    m[3] * x + m[4] * y + m[5] * z + move[1],
    m[6] * x + m[7] * y + m[8] * z + move[2],
  ]
}

type Corners = (corner: number) => Vec3

type Order = readonly [number, number, number]
const FORWARDS: Order = [0, 1, 2]
/** Round the other way, from whichever corner. */
const BACKWARDS: readonly Order[] = [
  [2, 1, 0],
  [0, 2, 1],
  [1, 0, 2],
]

/** Corners of a run, those of each triangle in the given order. */
function cornersOf({ positions, indices }: Mesh, run: Run, order: Order): Corners {
  const first = 3 * run.firstTriangle
  return (corner) => {
    const within = corner % 3
    const at = 3 * indices[first + corner - within + order[within]!]!
    return [positions[at]!, positions[at + 1]!, positions[at + 2]!]
  }
}

/** Numbers of the corners that, seen from the first, lie farthest off: from it, from that line, from that plane. */
interface Span {
  readonly corners: readonly [number, number, number]
  readonly size: number
}

function spanOf(at: Corners, corners: number): Span | null {
  const home = at(0)
  const farthest = (measure: (edge: Vec3) => number): number => {
    let best = 0
    let most = 0
    for (let corner = 0; corner < corners; corner++) {
      const size = measure(minus(at(corner), home))
      if (size > most) {
        most = size
        best = corner
      }
    }
    return best
  }
  const a = farthest((edge) => dot(edge, edge))
  const along = minus(at(a), home)
  const b = farthest((edge) => {
    const off = cross(along, edge)
    return dot(off, off)
  })
  const normal = cross(along, minus(at(b), home))
  const c = farthest((edge) => Math.abs(dot(normal, edge)))
  const size = Math.sqrt(dot(along, along))
  // A flat sheet fits on its copy from either side.
  return Math.abs(dot(normal, minus(at(c), home))) > 1e-9 * size ** 3
    ? { corners: [a, b, c], size }
    : null
}

/** Right-angled axes along the span's first two edges, the third to the side where the last corner lies. */
function axesOf(at: Corners, { corners }: Span): readonly [Vec3, Vec3, Vec3] {
  const home = at(0)
  const [u, v, w] = corners.map((corner) => minus(at(corner), home)) as [Vec3, Vec3, Vec3]
  const first = unit(u)
  const across = dot(v, first)
  const second = unit(minus(v, [across * first[0], across * first[1], across * first[2]]))
  const [x, y, z] = cross(first, second)
  return [first, second, dot([x, y, z], w) < 0 ? [-x, -y, -z] : [x, y, z]]
}

/** From axes to axes, so that it is rigid whatever the copies' rounding; `fits` says whether it is the map. */
function mapOf(from: Corners, to: Corners, span: Span): RigidMap | null {
  const before = axesOf(from, span)
  const after = axesOf(to, span)
  const entry = (row: 0 | 1 | 2, column: 0 | 1 | 2): number =>
    after[0][row] * before[0][column] +
    after[1][row] * before[1][column] +
    after[2][row] * before[2][column]
  const matrix: Nine = [
    entry(0, 0),
    entry(0, 1),
    entry(0, 2),
    entry(1, 0),
    entry(1, 1),
    entry(1, 2),
    entry(2, 0),
    entry(2, 1),
    entry(2, 2),
  ]
  if (!matrix.every(Number.isFinite)) return null
  return { matrix, move: minus(to(0), mapPoint({ matrix, move: [0, 0, 0] }, from(0))) }
}

function fits(from: Corners, to: Corners, corners: number, map: RigidMap, apart: number): boolean {
  for (let corner = 0; corner < corners; corner++) {
    const off = minus(mapPoint(map, from(corner)), to(corner))
    if (dot(off, off) > apart * apart) return false
  }
  return true
}

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]

function unit(a: Vec3): Vec3 {
  const length = Math.sqrt(dot(a, a))
  return [a[0] / length, a[1] / length, a[2] / length]
}
