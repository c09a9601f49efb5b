import type { DrawnPlace } from '../../model/aircraft.ts'
import { drawnPlaceOf } from './drawnPlace.ts'
import type { Mesh, MeshPiece, ReadMesh, Vec3 } from '../../model/mesh.ts'
import { weldSoup } from '../../model/weld.ts'
import { cleanMesh } from './cleanMesh.ts'
import { MOST_PIECES } from './findPieces.ts'
import { rigidMap } from './rigidMap.ts'
import { shapeOf } from './shape.ts'
import type { Plate, PlateGroup } from './splitPlate.ts'

/** The reader's own name for an item that has none. */
const NUMBERED = /^item \d+$/

/**
 * Takes a 3MF apart by its build items, which are what is made, whether they touch or not, and puts
 * equal ones together with the place the build gives each. Null for other files and for a build of
 * one item.
 */
export function splitItems({ format, mesh, pieces }: ReadMesh): Plate | null {
  if (format !== '3mf' || pieces.length < 2 || pieces.length > MOST_PIECES) return null
  const groups: { first: MeshPiece; middle: Vec3; mirrored: number; places: DrawnPlace[] }[] = []
  for (const piece of pieces) {
    const match = groups
      .map((group) => ({ group, map: rigidMap(mesh, group.first, piece) }))
      .find(({ map }) => map !== null)
    if (match?.map) {
      const place = drawnPlaceOf(match.map, match.group.middle)
      match.group.places.push(place)
      if (place.mirrored) match.group.mirrored++
      continue
    }
    groups.push({
      first: piece,
      middle: middleOf(mesh, piece),
      mirrored: 0,
      // As it lies, exactly.
      places: [{ position: [0, 0, 0], rotateDeg: [0, 0, 0], mirrored: false }],
    })
  }
  let leftOut = 0
  return {
    groups: groups.map(({ first, mirrored, places }): PlateGroup => {
      const clean = cleanMesh(pieceMesh(mesh, first))
      const triangles = clean.indices.length / 3
      leftOut += places.length * (first.triangleCount - triangles)
      const shape = shapeOf(
        clean,
        Array.from({ length: triangles }, (_, t) => t),
      )
      const group = { count: places.length, mirrored, mesh: clean, shape, places }
      return NUMBERED.test(first.name) ? group : { ...group, name: first.name }
    }),
    leftOut,
  }
}

/** The triangles of one piece as a mesh of their own. */
function pieceMesh({ positions, indices }: Mesh, piece: MeshPiece): Mesh {
  const first = 3 * piece.firstTriangle
  const corners = 3 * piece.triangleCount
  const soup =
    positions instanceof Float32Array
      ? new Float32Array(3 * corners)
      : new Float64Array(3 * corners)
  for (let corner = 0; corner < corners; corner++) {
    const from = 3 * indices[first + corner]!
    for (let k = 0; k < 3; k++) soup[3 * corner + k] = positions[from + k]!
  }
  return weldSoup(soup)
}

/** Mean of a piece's corners. */
function middleOf({ positions, indices }: Mesh, piece: MeshPiece): Vec3 {
  const first = 3 * piece.firstTriangle
  const corners = 3 * piece.triangleCount
  let [x, y, z] = [0, 0, 0]
  for (let corner = 0; corner < corners; corner++) {
    const from = 3 * indices[first + corner]!
    x += positions[from]!
    y += positions[from + 1]!
    z += positions[from + 2]!
  }
  return [x / corners, y / corners, z / corners]
}
