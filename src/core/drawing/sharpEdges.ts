import { onceAMesh } from '../mesh/onceAMesh.ts'
import { sortSides } from '../mesh/edges.ts'
import { unitNormals } from '../mesh/unitNormals.ts'
import type { Mesh } from '../model/mesh.ts'

/** Edges of a mesh that some view may show as a line; one entry an edge. */
export interface SharpEdges {
  readonly from: Uint32Array
  readonly to: Uint32Array
  /** Its faces; −1 where there is no second one, or more than two. */
  readonly left: Int32Array
  readonly right: Int32Array
  /**
   * 1 where the faces meet at more than 28°, or where there are not two: drawn from wherever it is
   * seen.
   */
  readonly crease: Uint8Array
}

const CREASE_COS = Math.cos((28 * Math.PI) / 180)
/**
 * Faces this near to one plane never part into one seen and one hidden but edge-on, where nothing
 * shows.
 */
const FLAT_COS = Math.cos((0.4 * Math.PI) / 180)

export const sharpEdges = onceAMesh(findSharpEdges)

function findSharpEdges(mesh: Mesh): SharpEdges {
  const { starts, higher, sides } = sortSides(mesh)
  const { normals } = unitNormals(mesh)
  const from: number[] = []
  const to: number[] = []
  const left: number[] = []
  const right: number[] = []
  const crease: number[] = []
  for (let v = 0; v + 1 < starts.length; v++) {
    const end = starts[v + 1]!
    for (let at = starts[v]!; at < end;) {
      let next = at + 1
      while (next < end && higher[next] === higher[at]) next++
      const isPair = next - at === 2
      const one = Math.floor((sides[at]! >> 1) / 3)
      const two = isPair ? Math.floor((sides[at + 1]! >> 1) / 3) : -1
      const cos = isPair ? cosBetween(normals, one, two) : -1
      if (cos < FLAT_COS) {
        from.push(v)
        to.push(higher[at]!)
        left.push(one)
        right.push(two)
        crease.push(cos < CREASE_COS ? 1 : 0)
      }
      at = next
    }
  }
  return {
    from: Uint32Array.from(from),
    to: Uint32Array.from(to),
    left: Int32Array.from(left),
    right: Int32Array.from(right),
    crease: Uint8Array.from(crease),
  }
}

/** 1 where a face has no area: such a sliver is no edge of the part. */
function cosBetween(n: Float64Array, s: number, t: number): number {
  const sx = n[3 * s]!
  const sy = n[3 * s + 1]!
  const sz = n[3 * s + 2]!
  const tx = n[3 * t]!
  const ty = n[3 * t + 1]!
  const tz = n[3 * t + 2]!
  if ((sx === 0 && sy === 0 && sz === 0) || (tx === 0 && ty === 0 && tz === 0)) return 1
  return sx * tx + sy * ty + sz * tz
}
