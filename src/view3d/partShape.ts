import { Box3, BufferAttribute, BufferGeometry, Sphere, type Matrix4 } from 'three'
import type { Mesh } from '../core/mesh.ts'
import { findCreaseEdges } from './creaseEdges.ts'

/** Edges are drawn up to this many triangles; beyond, a mesh is so dense that they would only darken it. */
const EDGES_UP_TO_TRIANGLES = 300_000
/** One piece's index is handed to the graphics card at a time: 5 MB, about 3 ms. */
const PIECE_TRIANGLES = 400_000
const STEP = 16_384

/** A part ready for the graphics card. The middle of its bounds is the origin. */
export interface PartShape {
  readonly positions: Float32Array
  /** Share one vertex buffer. */
  readonly pieces: readonly BufferGeometry[]
  readonly edges: BufferGeometry | null
}

/** Re-centres (single precision would be coarse far from the origin) and cuts into pieces; yields about every millisecond. */
export function* shapePart(mesh: Mesh): Generator<void, PartShape> {
  const middle = yield* findMiddle(mesh.positions)
  const positions = new Float32Array(mesh.positions.length)
  for (let i = 0; i < positions.length; i += 3) {
    positions[i] = (mesh.positions[i] ?? 0) - middle[0]
    positions[i + 1] = (mesh.positions[i + 1] ?? 0) - middle[1]
    positions[i + 2] = (mesh.positions[i + 2] ?? 0) - middle[2]
    if (i % STEP === 0) yield
  }
  const vertices = new BufferAttribute(positions, 3)
  const pieces: BufferGeometry[] = []
  for (let first = 0; first < mesh.indices.length; first += PIECE_TRIANGLES * 3) {
    pieces.push(geometryOf(vertices, mesh.indices.subarray(first, first + PIECE_TRIANGLES * 3)))
  }
  const edges =
    mesh.indices.length / 3 > EDGES_UP_TO_TRIANGLES
      ? null
      : geometryOf(vertices, yield* findCreaseEdges(positions, mesh.indices))
  return { positions, pieces, edges }
}

function geometryOf(vertices: BufferAttribute, index: Uint32Array): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', vertices)
  geometry.setIndex(new BufferAttribute(index, 1))
  // Never culled and never picked; set, lest three walks all vertices to find it.
  geometry.boundingSphere = new Sphere()
  return geometry
}

function* findMiddle(positions: Float32Array | Float64Array) {
  const min = [Infinity, Infinity, Infinity]
  const max = [-Infinity, -Infinity, -Infinity]
  for (let i = 0; i < positions.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const value = positions[i + k] ?? 0
      if (value < (min[k] ?? 0)) min[k] = value
      if (value > (max[k] ?? 0)) max[k] = value
    }
    if (i % STEP === 0) yield
  }
  const middle = (k: number) => (positions.length < 3 ? 0 : ((min[k] ?? 0) + (max[k] ?? 0)) / 2)
  return [middle(0), middle(1), middle(2)] as const
}

/** Bounds of the turned shape, one pass over the vertices (1 M take about 8 ms). */
export function turnedBounds(positions: Float32Array, turn: Matrix4): Box3 {
  const e = turn.elements
  const [xx, yx, zx, , xy, yy, zy, , xz, yz, zz] = e
  const box = new Box3()
  const { min, max } = box
  for (let i = 0; i < positions.length; i += 3) {
    const px = positions[i] ?? 0
    const py = positions[i + 1] ?? 0
    const pz = positions[i + 2] ?? 0
    const x = xx * px + xy * py + xz * pz
    const y = yx * px + yy * py + yz * pz
    const z = zx * px + zy * py + zz * pz
    if (x < min.x) min.x = x
    if (x > max.x) max.x = x
    if (y < min.y) min.y = y
    if (y > max.y) max.y = y
    if (z < min.z) min.z = z
    if (z > max.z) max.z = z
  }
  return box
}
