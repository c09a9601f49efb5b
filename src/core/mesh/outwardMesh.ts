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

/** The mesh a part is counted, placed and balanced from: faced outwards (see `orientMesh`), hairs left out unless they are kept. */
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
  return { positions: mesh.positions, indices }
}
