import type { Mesh, Vec3 } from '../model/mesh.ts'
import type { Pose } from '../model/settings.ts'

/** A side of the part as drawn (x to the right, y away from you, z up) that can lie on the bed. */
export interface FacePose {
  readonly face: 'bottom' | 'top' | 'front' | 'back' | 'left' | 'right'
  /** How the part then lies, for a list or a button. */
  readonly name: string
  readonly pose: Pose
}

/** The six quick ways to lay a part down: which side, as drawn, faces the bed. */
export const FACE_POSES: readonly FacePose[] = [
  { face: 'bottom', name: 'As drawn', pose: { rotateDeg: [0, 0, 0] } },
  { face: 'top', name: 'Upside down', pose: { rotateDeg: [180, 0, 0] } },
  { face: 'front', name: 'On its front', pose: { rotateDeg: [90, 0, 0] } },
  { face: 'back', name: 'On its back', pose: { rotateDeg: [-90, 0, 0] } },
  { face: 'left', name: 'On its left side', pose: { rotateDeg: [0, -90, 0] } },
  { face: 'right', name: 'On its right side', pose: { rotateDeg: [0, 90, 0] } },
]

/**
 * Lays a mesh on the bed: scaled to mm, turned about x, then y, then z, lowest point at z = 0, and
 * the middle of its x–y bounds at the origin.
 *
 * Reuses the mesh itself when it already is in mm, unturned, on z = 0 and has the origin within its
 * x–y bounds; otherwise the positions are new (double precision, so that a part drawn far from the
 * origin loses nothing) and the indices are shared.
 */
export function placeMesh(mesh: Mesh, scaleToMm: number, pose: Pose): Mesh {
  const { positions, indices } = mesh
  if (indices.length === 0) return mesh
  const turn = turnMatrix(pose)
  const still = turn.every((value, i) => value === (i % 4 === 0 ? 1 : 0))
  if (still && scaleToMm === 1 && liesAtOrigin(mesh)) return mesh

  const placed = new Float64Array(positions.length)
  // Turned about a vertex of its own rather than about the origin: far from the origin that keeps
  // the digits.
  const own = 3 * indices[0]!
  const x0 = positions[own]!
  const y0 = positions[own + 1]!
  const z0 = positions[own + 2]!
  const [xx, xy, xz, yx, yy, yz, zx, zy, zz] = turn.map((value) => value * scaleToMm) as Nine
  for (let i = 0; i < positions.length; i += 3) {
    const x = positions[i]! - x0
    const y = positions[i + 1]! - y0
    const z = positions[i + 2]! - z0
    placed[i] = xx * x + xy * y + xz * z
    placed[i + 1] = yx * x + yy * y + yz * z
    placed[i + 2] = zx * x + zy * y + zz * z
  }
  const { minX, maxX, minY, maxY, minZ } = boundsOf(placed, indices)
  const middleX = (minX + maxX) / 2
  const middleY = (minY + maxY) / 2
  for (let i = 0; i < placed.length; i += 3) {
    // Adding 0 turns −0 into 0.
    placed[i] = placed[i]! - middleX + 0
    placed[i + 1] = placed[i + 1]! - middleY + 0
    placed[i + 2] = placed[i + 2]! - minZ + 0
  }
  return { positions: placed, indices }
}

/** Where the origin of a drawing lies once its mesh was placed by `placeMesh`, mm. */
export function originOf(drawn: Mesh, placed: Mesh, scaleToMm: number, pose: Pose): Vec3 {
  const at = 3 * (drawn.indices[0] ?? 0)
  const turn = turnMatrix(pose)
  const along = (k: 0 | 1 | 2): number => {
    const turned = [0, 1, 2].reduce(
      (sum, j) => sum + turn[3 * k + j]! * drawn.positions[at + j]!,
      0,
    )
    return placed.positions[at + k]! - scaleToMm * turned
  }
  return [along(0), along(1), along(2)]
}

/**
 * Where a point of a drawing (mm as drawn) lies once it was placed: turned, then moved by
 * `originMm`.
 */
export function placePoint(originMm: Vec3, pose: Pose, [x, y, z]: Vec3): Vec3 {
  const [xx, xy, xz, yx, yy, yz, zx, zy, zz] = turnMatrix(pose)
  return [
    originMm[0] + xx * x + xy * y + xz * z,
    originMm[1] + yx * x + yy * y + yz * z,
    originMm[2] + zx * x + zy * y + zz * z,
  ]
}

/**
 * Places a part and meshes drawn in the same axes (its zones) together: the part decides where all
 * go.
 */
export function placeTogether(
  part: Mesh,
  others: readonly Mesh[],
  scaleToMm: number,
  pose: Pose,
): { readonly placed: Mesh; readonly others: readonly Mesh[] } {
  if (others.length === 0) return { placed: placeMesh(part, scaleToMm, pose), others: [] }
  const meshes = [part, ...others]
  const positions = new Float64Array(meshes.reduce((sum, mesh) => sum + mesh.positions.length, 0))
  let start = 0
  const starts = meshes.map((mesh) => {
    const at = start
    positions.set(mesh.positions, at)
    start += mesh.positions.length
    return at
  })
  // Vertices that no triangle of the part uses are carried along without counting.
  const all = placeMesh({ positions, indices: part.indices }, scaleToMm, pose).positions
  const [placed, ...rest] = meshes.map(({ positions: own, indices }, i): Mesh => {
    const at = starts[i] ?? 0
    return { positions: all.subarray(at, at + own.length), indices }
  })
  return { placed: placed ?? part, others: rest }
}

/** Row-major 3 × 3 matrix. */
export type Nine = [number, number, number, number, number, number, number, number, number]

/** Row-major rotation about x, then y, then z. */
export function turnMatrix(pose: Pose): Nine {
  const [sx, cx] = sineCosine(pose.rotateDeg[0])
  const [sy, cy] = sineCosine(pose.rotateDeg[1])
  const [sz, cz] = sineCosine(pose.rotateDeg[2])
  return [
    cz * cy,
    cz * sy * sx - sz * cx,
    cz * sy * cx + sz * sx,
    sz * cy,
    sz * sy * sx + cz * cx,
    sz * sy * cx - cz * sx,
    -sy,
    cy * sx,
    cy * cx,
  ]
}

/** Exact at every quarter turn, so that a flat face stays flat to the last bit. */
function sineCosine(degrees: number): readonly [sine: number, cosine: number] {
  const quarter = degrees / 90
  if (Number.isInteger(quarter)) {
    const sines = [0, 1, 0, -1] as const
    const step = ((quarter % 4) + 4) % 4
    return [sines[step]!, sines[(step + 1) % 4]!]
  }
  const radians = (degrees * Math.PI) / 180
  return [Math.sin(radians), Math.cos(radians)]
}

function liesAtOrigin({ positions, indices }: Mesh): boolean {
  const { minX, maxX, minY, maxY, minZ } = boundsOf(positions, indices)
  return minZ === 0 && minX <= 0 && maxX >= 0 && minY <= 0 && maxY >= 0
}

/** Of the vertices that triangles use: a file may list others, and those are not printed. */
function boundsOf(positions: Mesh['positions'], indices: Uint32Array) {
  let minX = Infinity
  let maxX = -Infinity
  let minY = Infinity
  let maxY = -Infinity
  let minZ = Infinity
  for (let corner = 0; corner < indices.length; corner++) {
    const i = 3 * indices[corner]!
    const x = positions[i]!
    const y = positions[i + 1]!
    const z = positions[i + 2]!
    if (x < minX) minX = x
    if (x > maxX) maxX = x
    if (y < minY) minY = y
    if (y > maxY) maxY = y
    if (z < minZ) minZ = z
  }
  return { minX, maxX, minY, maxY, minZ }
}
