import {
  Box3,
  BufferAttribute,
  BufferGeometry,
  Matrix4,
  Sphere,
  Vector3,
  type Quaternion,
} from 'three'
import type { Mesh } from '../core/model/mesh.ts'
import { findCreaseEdges } from './creaseEdges.ts'

/**
 * Edges are drawn up to this many triangles, and edges; beyond, they would only darken the part.
 */
const EDGES_UP_TO_TRIANGLES = 300_000
const MOST_EDGES = 150_000
/**
 * Triangles handed to the graphics card at a time, with the vertices they use: 2 MB of a welded
 * mesh. With one vertex buffer for all, a part of 2 M triangles stopped the page for 65 ms of
 * processor time.
 */
const PIECE_TRIANGLES = 100_000
const STEP = 16_384

/** A part ready for the graphics card. The middle of its bounds is the origin. */
export interface PartShape {
  /** x, y, z a vertex; not on the card. */
  readonly positions: Float32Array
  readonly bounds: Box3
  /** Of the bounds, before they were centred. */
  readonly middle: Vector3
  readonly pieces: readonly BufferGeometry[]
  readonly edges: BufferGeometry | null
}

/**
 * Re-centres (single precision would be coarse far from the origin) and cuts into pieces; yields
 * about every millisecond.
 */
export function* shapePart(mesh: Mesh): Generator<void, PartShape> {
  const drawn = yield* findBounds(mesh.positions)
  const middle = drawn.getCenter(new Vector3())
  const positions = new Float32Array(mesh.positions.length)
  for (let i = 0; i < positions.length; i += 3) {
    positions[i] = (mesh.positions[i] ?? 0) - middle.x
    positions[i + 1] = (mesh.positions[i + 1] ?? 0) - middle.y
    positions[i + 2] = (mesh.positions[i + 2] ?? 0) - middle.z
    if (i % STEP === 0) yield
  }
  const pieces = yield* cutPieces(positions, mesh.indices)
  const edges =
    mesh.indices.length / 3 > EDGES_UP_TO_TRIANGLES
      ? null
      : inkEdges(positions, yield* findCreaseEdges(positions, mesh.indices))
  return { positions, bounds: drawn.translate(middle.clone().negate()), middle, pieces, edges }
}

/** Each piece has its own vertices, numbered anew. */
function* cutPieces(
  positions: Float32Array,
  indices: Uint32Array,
): Generator<void, readonly BufferGeometry[]> {
  const pieces: BufferGeometry[] = []
  /** Number of a vertex within the piece that used it last, and that piece's number from 1. */
  const local = new Uint32Array(positions.length / 3)
  const user = new Uint32Array(positions.length / 3)
  for (let first = 0; first < indices.length; first += PIECE_TRIANGLES * 3) {
    const index = indices.slice(first, first + PIECE_TRIANGLES * 3)
    const points = new Float32Array(index.length * 3)
    const piece = pieces.length + 1
    let used = 0
    for (let i = 0; i < index.length; i++) {
      const vertex = index[i] ?? 0
      if (user[vertex] !== piece) {
        user[vertex] = piece
        local[vertex] = used
        points[used * 3] = positions[vertex * 3] ?? 0
        points[used * 3 + 1] = positions[vertex * 3 + 1] ?? 0
        points[used * 3 + 2] = positions[vertex * 3 + 2] ?? 0
        used++
      }
      index[i] = local[vertex] ?? 0
      if (i % STEP === 0) yield
    }
    const geometry = geometryOf(points.slice(0, used * 3))
    geometry.setIndex(new BufferAttribute(index, 1))
    pieces.push(geometry)
  }
  return pieces
}

function inkEdges(positions: Float32Array, ends: Uint32Array): BufferGeometry | null {
  if (ends.length / 2 > MOST_EDGES) return null
  const points = new Float32Array(ends.length * 3)
  ends.forEach((vertex, i) => points.set(positions.subarray(vertex * 3, vertex * 3 + 3), i * 3))
  return geometryOf(points)
}

function geometryOf(points: Float32Array): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(points, 3))
  // Never culled and never picked; set, lest three walks all vertices to find it.
  geometry.boundingSphere = new Sphere()
  return geometry
}

function* findBounds(positions: Float32Array | Float64Array): Generator<void, Box3> {
  let [minX, minY, minZ] = [Infinity, Infinity, Infinity]
  let [maxX, maxY, maxZ] = [-Infinity, -Infinity, -Infinity]
  for (let i = 0; i < positions.length; i += 3) {
    const x = positions[i] ?? 0
    const y = positions[i + 1] ?? 0
    const z = positions[i + 2] ?? 0
    if (x < minX) minX = x
    if (x > maxX) maxX = x
    if (y < minY) minY = y
    if (y > maxY) maxY = y
    if (z < minZ) minZ = z
    if (z > maxZ) maxZ = z
    if (i % STEP === 0) yield
  }
  return new Box3(new Vector3(minX, minY, minZ), new Vector3(maxX, maxY, maxZ))
}

/**
 * Bounds of the turned shape, one pass over the vertices (1 M take about 8 ms); none where it is
 * not turned.
 */
export function turnedBounds({ positions, bounds }: PartShape, turn: Quaternion): Box3 {
  if (Math.abs(turn.w) === 1) return bounds.clone()
  const [xx, yx, zx, , xy, yy, zy, , xz, yz, zz] = new Matrix4().makeRotationFromQuaternion(
    turn,
  ).elements
  let [minX, minY, minZ] = [Infinity, Infinity, Infinity]
  let [maxX, maxY, maxZ] = [-Infinity, -Infinity, -Infinity]
  for (let i = 0; i < positions.length; i += 3) {
    const px = positions[i] ?? 0
    const py = positions[i + 1] ?? 0
    const pz = positions[i + 2] ?? 0
    const x = xx * px + xy * py + xz * pz
    const y = yx * px + yy * py + yz * pz
    const z = zx * px + zy * py + zz * pz
    if (x < minX) minX = x
    if (x > maxX) maxX = x
    if (y < minY) minY = y
    if (y > maxY) maxY = y
    if (z < minZ) minZ = z
    if (z > maxZ) maxZ = z
  }
  return new Box3(new Vector3(minX, minY, minZ), new Vector3(maxX, maxY, maxZ))
}
