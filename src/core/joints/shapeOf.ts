import { boxOfMesh } from '../mesh/boxOfMesh.ts'
import type { Bounds, Mesh, Vec3 } from '../model/mesh.ts'
import { lengthOf, minus, plus, times } from '../model/vectors.ts'
import { bodyMoments, type BodyMoments } from './bodyMoments.ts'
import { columnsOf, type Columns } from './columns.ts'
import { findFaces } from './findFaces.ts'
import { findMouths } from './findMouths.ts'
import { groupMouths, type Pattern } from './matchBores.ts'
import type { FlatFace, Mouth } from './types.ts'

/**
 * All that is asked of one mesh while its joints are looked for; found once, columns when first
 * wanted.
 */
export interface Shape {
  readonly mesh: Mesh
  readonly box: Bounds
  readonly centreMm: Vec3
  readonly radiusMm: number
  readonly mouths: readonly Mouth[]
  readonly patterns: readonly Pattern[]
  readonly faces: readonly FlatFace[]
  readonly moments: BodyMoments
  /** Along a direction of the mesh's own axes. */
  columns(direction: Vec3): Columns
}

/** @param mesh in mm, faced outwards. */
export function shapeOf(mesh: Mesh): Shape {
  const box = boxOfMesh(mesh)
  const kept = new Map<string, Columns>()
  const mouths = findMouths(mesh)
  return {
    mesh,
    box,
    centreMm: times(plus(box.min, box.max), 0.5),
    radiusMm: lengthOf(minus(box.max, box.min)) / 2,
    mouths,
    patterns: groupMouths(mouths),
    faces: findFaces(mesh),
    moments: bodyMoments(mesh),
    columns(direction) {
      const key = direction.map((value) => Math.round(value * 1e7)).join(' ')
      const known = kept.get(key)
      if (known !== undefined) return known
      const made = columnsOf(mesh, direction)
      kept.set(key, made)
      return made
    },
  }
}
