import type { Mesh } from '../model/mesh.ts'

const HEADER = 84
/** Must not begin with “solid”, which some readers take for text. */
const HEADER_TEXT = 'binary STL, part of a larger file'
const FACET = 50

/**
 * Binary STL of a mesh, in the mesh's own unit: an 80-byte header, a count, then 50 bytes a
 * triangle, little-endian.
 */
export function writeStl({ positions, indices }: Mesh): Uint8Array<ArrayBuffer> {
  const triangles = indices.length / 3
  const bytes = new Uint8Array(HEADER + FACET * triangles)
  const view = new DataView(bytes.buffer)
  bytes.set(Uint8Array.from(HEADER_TEXT, (char) => char.charCodeAt(0)))
  view.setUint32(80, triangles, true)
  for (let t = 0; t < triangles; t++) {
    const at = HEADER + FACET * t
    const corners = [0, 1, 2].map((k) => 3 * indices[3 * t + k]!) as [number, number, number]
    const normal = normalOf(positions, corners)
    for (let k = 0; k < 3; k++) {
      view.setFloat32(at + 4 * k, normal[k]!, true)
      corners.forEach((corner, i) => {
        view.setFloat32(at + 12 + 12 * i + 4 * k, positions[corner + k]!, true)
      })
    }
  }
  return bytes
}

function normalOf(
  positions: Mesh['positions'],
  [a, b, c]: readonly [number, number, number],
): readonly number[] {
  const u = [0, 1, 2].map((k) => positions[b + k]! - positions[a + k]!)
  const v = [0, 1, 2].map((k) => positions[c + k]! - positions[a + k]!)
  const n = [
    u[1]! * v[2]! - u[2]! * v[1]!,
    u[2]! * v[0]! - u[0]! * v[2]!,
    u[0]! * v[1]! - u[1]! * v[0]!,
  ]
  const length = Math.hypot(...n)
  return length > 0 ? n.map((value) => value / length) : [0, 0, 0]
}
