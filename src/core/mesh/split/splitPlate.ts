import type { DrawnPlace } from '../../model/aircraft.ts'
import type { Mesh } from '../../model/mesh.ts'
import { weldSoup } from '../../model/weld.ts'
import { cleanMesh } from './cleanMesh.ts'
import { findPieces } from './findPieces.ts'
import { compareShapes, shapeOf, type Shape } from './shape.ts'

/** Equal pieces of a plate. */
export interface PlateGroup {
  /** How many, mirrored ones included. */
  readonly count: number
  /** How many of them are mirror images of `mesh`. */
  readonly mirrored: number
  /** The first of them, where it lies on the plate. */
  readonly mesh: Mesh
  readonly shape: Shape
  /** Where the file puts each of them, from where `mesh` lies; left out where it does not say. */
  readonly places?: readonly DrawnPlace[]
  /** What the file calls the first of them; left out where it does not. */
  readonly name?: string
}

export interface Plate {
  /** In the order of the file. */
  readonly groups: readonly PlateGroup[]
  /** Triangles of loose scraps and double skins that belong to no piece. */
  readonly leftOut: number
}

/**
 * Takes a plate of parts apart and puts equal ones together. One group of one piece where the mesh
 * is a single part.
 */
export function splitPlate(mesh: Mesh): Plate {
  const clean = cleanMesh(mesh)
  const groups: { shape: Shape; count: number; mirrored: number; triangles: readonly number[] }[] =
    []
  for (const triangles of findPieces(clean)) {
    const shape = shapeOf(clean, triangles)
    const match = groups
      .map((group) => ({ group, how: compareShapes(group.shape, shape) }))
      .find(({ how }) => how !== 'different')
    if (match === undefined) {
      groups.push({ shape, count: 1, mirrored: 0, triangles })
      continue
    }
    match.group.count++
    if (match.how === 'mirrored') match.group.mirrored++
  }
  return {
    groups: groups.map(({ shape, count, mirrored, triangles }) => {
      let picked: Mesh | null = null
      return {
        shape,
        count,
        mirrored,
        // Most only ask what there is.
        get mesh() {
          return (picked ??= pick(clean, triangles))
        },
      }
    }),
    leftOut: (mesh.indices.length - clean.indices.length) / 3,
  }
}

/** Some triangles of a mesh as a mesh of their own. */
function pick({ positions, indices }: Mesh, triangles: readonly number[]): Mesh {
  const soup =
    positions instanceof Float32Array
      ? new Float32Array(9 * triangles.length)
      : new Float64Array(9 * triangles.length)
  triangles.forEach((t, i) => {
    for (let k = 0; k < 9; k++) {
      soup[9 * i + k] = positions[3 * indices[3 * t + Math.floor(k / 3)]! + (k % 3)]!
    }
  })
  return weldSoup(soup)
}
