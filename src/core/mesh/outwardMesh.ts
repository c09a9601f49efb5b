import { NO_BODY } from './bodies.ts'
import type { Mesh } from '../model/mesh.ts'
import { findHairs } from './findHairs.ts'
import { orientMesh } from './orient.ts'
import { takeApart, type Apart } from './takeApart.ts'

/** How the mesh of a part is taken. */
export interface MeshTaking {
  readonly scaleToMm: number
  /** Loose bodies thinner than a line stay in. */
  readonly keepsHairs: boolean
}

/**
 * The mesh a part is counted, placed and balanced from: faced outwards (see `orientMesh`), hairs
 * left out unless they are kept.
 */
export function outwardMesh(
  mesh: Mesh,
  { scaleToMm, keepsHairs }: MeshTaking,
  apart = takeApart(mesh),
): Mesh {
  return orientMesh(mesh, apart, keepsHairs ? new Set() : findHairs(mesh, apart, scaleToMm))
}

/** The mesh as it was read, hairs left out unless they are kept: what the part's picture shows. */
export function shownMesh(mesh: Mesh, { scaleToMm, keepsHairs }: MeshTaking, known?: Apart): Mesh {
  if (keepsHairs) return mesh
  const apart = known ?? takeApart(mesh)
  const hairs = findHairs(mesh, apart, scaleToMm)
  if (hairs.size === 0) return mesh
  const { bodyOf } = apart.bodies
  const indices = mesh.indices.filter((_, corner) => {
    const body = bodyOf[Math.floor(corner / 3)]!
    return body === NO_BODY || !hairs.has(body)
  })
  return compact(mesh.positions, indices)
}

/** Without the vertices that no triangle uses: a picture is fitted round all there are. */
function compact(positions: Mesh['positions'], indices: Uint32Array): Mesh {
  const numberOf = new Map<number, number>()
  const kept: number[] = []
  const renumbered = indices.map((vertex) => {
    const known = numberOf.get(vertex)
    if (known !== undefined) return known
    const number = numberOf.size
    numberOf.set(vertex, number)
    for (let k = 0; k < 3; k++) kept.push(positions[3 * vertex + k]!)
    return number
  })
  const Kind = positions instanceof Float32Array ? Float32Array : Float64Array
  return { positions: Kind.from(kept), indices: renumbered }
}
