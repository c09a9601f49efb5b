import type { Mesh, MeshPiece, Vec3 } from '../../model/mesh.ts'
import { cross, dot, minus, times, unit } from '../../model/vectors.ts'
import { mapAxes, mapPoint, type Axes, type RigidMap } from '../rigidMaps.ts'

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

/**
 * Numbers of the corners that, seen from the first, lie farthest off: from it, from that line, from
 * that plane.
 */
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

/**
 * Right-angled axes along the span's first two edges, the third to the side where the last corner
 * lies.
 */
function axesOf(at: Corners, { corners }: Span): Axes {
  const home = at(0)
  const [u, v, w] = corners.map((corner) => minus(at(corner), home)) as [Vec3, Vec3, Vec3]
  const first = unit(u)
  const across = dot(v, first)
  const second = unit(minus(v, times(first, across)))
  const third = cross(first, second)
  return [first, second, dot(third, w) < 0 ? times(third, -1) : third]
}

/**
 * From axes to axes, so that it is rigid whatever the copies' rounding; `fits` says whether it is
 * the map.
 */
function mapOf(from: Corners, to: Corners, span: Span): RigidMap | null {
  const map = mapAxes(axesOf(from, span), axesOf(to, span), from(0), to(0))
  return map.matrix.every(Number.isFinite) ? map : null
}

function fits(from: Corners, to: Corners, corners: number, map: RigidMap, apart: number): boolean {
  for (let corner = 0; corner < corners; corner++) {
    const off = minus(mapPoint(map, from(corner)), to(corner))
    if (dot(off, off) > apart * apart) return false
  }
  return true
}
