import { ALONE, surveyFacets, type Facets } from '../mesh/holes/facets.ts'
import { flatAxes } from '../mesh/holes/fitCircle.ts'
import type { Mesh, Vec3 } from '../model/mesh.ts'
import { dot, plus, times } from '../model/vectors.ts'
import type { FlatFace } from './types.ts'

/** Smaller ones hold nothing. */
const LEAST_AREA_MM2 = 20
/** A face narrower than this, by twice its area over its edge, is the rim of a single wall. mm */
const LEAST_WIDTH_MM = 1.6
/** Cosine of triangles of one flat face: within 0.26°. */
const FLAT = 0.99999
/**
 * Where the surface goes on past more of a face's edge than this with a turn of less than 40°, it
 * is a curved skin.
 */
const MOST_CURVED = 0.2
const CURVED = Math.cos((40 * Math.PI) / 180)
/** The largest of a part; the others are steps and ribs. */
const MOST_FACES = 40
/** Meshes with more triangles are scans or sculptures. */
const MOST_TRIANGLES = 2_000_000

/**
 * The large flat faces of a mesh, the largest first, with what tells them from one another: area,
 * and how it lies about its middle. Rims of single walls are left out.
 *
 * @param mesh in mm, faced outwards.
 */
export function findFaces(mesh: Mesh): readonly FlatFace[] {
  const triangles = mesh.indices.length / 3
  if (triangles > MOST_TRIANGLES) return []
  const facets = surveyFacets(mesh)
  const taken = new Uint8Array(triangles)
  const faces: FlatFace[] = []
  for (let t = 0; t < triangles; t++) {
    if (taken[t] === 1) continue
    const face = measure(mesh, facets, growFace(facets, t, taken), t)
    if (face !== null) faces.push(face)
  }
  return faces.toSorted((a, b) => b.areaMm2 - a.areaMm2).slice(0, MOST_FACES)
}

const normalOf = ({ normals }: Facets, t: number): Vec3 => [
  normals[3 * t]!,
  normals[3 * t + 1]!,
  normals[3 * t + 2]!,
]

function growFace(facets: Facets, first: number, taken: Uint8Array): readonly number[] {
  const [nx, ny, nz] = normalOf(facets, first)
  const { normals } = facets
  const triangles = [first]
  taken[first] = 1
  for (let i = 0; i < triangles.length; i++) {
    const t = triangles[i]!
    for (let side = 3 * t; side < 3 * t + 3; side++) {
      const other = facets.across[side]!
      if (other === ALONE) continue
      const u = Math.floor(other / 3)
      const turn = normals[3 * u]! * nx + normals[3 * u + 1]! * ny + normals[3 * u + 2]! * nz
      if (taken[u] === 1 || turn < FLAT) continue
      taken[u] = 1
      triangles.push(u)
    }
  }
  return triangles
}

function measure(
  mesh: Mesh,
  facets: Facets,
  triangles: readonly number[],
  first: number,
): FlatFace | null {
  // Most faces of a mesh are small.
  const roughMm2 = triangles.reduce((sum, t) => sum + facets.areas[t]!, 0)
  if (roughMm2 < LEAST_AREA_MM2) return null
  const normal = normalOf(facets, first)
  const { right, up } = flatAxes(normal)
  const corner = (t: number, k: number): Vec3 => {
    const v = 3 * mesh.indices[3 * t + k]!
    return [mesh.positions[v]!, mesh.positions[v + 1]!, mesh.positions[v + 2]!]
  }
  const base = corner(first, 0)
  const flat = (point: Vec3): readonly [number, number] => [
    dot(point, right) - dot(base, right),
    dot(point, up) - dot(base, up),
  ]
  const inside = new Set(triangles)
  const sums = { area: 0, x: 0, y: 0, edge: 0, bent: 0 }
  const corners: (readonly [number, number])[] = []
  for (const t of triangles) {
    const [a, b, c] = [flat(corner(t, 0)), flat(corner(t, 1)), flat(corner(t, 2))]
    corners.push(a, b, c)
    const area = areaOf(a, b, c)
    sums.area += area
    sums.x += (area * (a[0] + b[0] + c[0])) / 3
    sums.y += (area * (a[1] + b[1] + c[1])) / 3
    ;[a, b, c].forEach((from, k) => {
      const other = facets.across[3 * t + k]!
      if (other !== ALONE && inside.has(Math.floor(other / 3))) return
      const to = [b, c, a][k]!
      const length = Math.hypot(to[0] - from[0], to[1] - from[1])
      sums.edge += length
      if (other === ALONE) return
      if (dot(normalOf(facets, Math.floor(other / 3)), normal) > CURVED) sums.bent += length
    })
  }
  const { area, edge } = sums
  if (area < LEAST_AREA_MM2 || (2 * area) / edge < LEAST_WIDTH_MM) return null
  if (sums.bent > MOST_CURVED * edge) return null
  const [mx, my] = [sums.x / area, sums.y / area]
  const about = corners.map(([x, y]) => [x - mx, y - my] as const)
  const [xx, xy, yy] = [
    moment(
      about,
      ([x]) => x,
      ([x]) => x,
    ),
    moment(
      about,
      ([x]) => x,
      ([, y]) => y,
    ),
    moment(
      about,
      ([, y]) => y,
      ([, y]) => y,
    ),
  ]
  const angle = Math.atan2(2 * xy, xx - yy) / 2
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)]
  const along = ([x, y]: readonly [number, number]) => cosine * x + sine * y
  const across = ([x, y]: readonly [number, number]) => cosine * y - sine * x
  return {
    centreMm: plus(
      times(normal, dot(base, normal)),
      plus(times(right, dot(base, right) + mx), times(up, dot(base, up) + my)),
    ),
    normal,
    areaMm2: area,
    along: plus(times(right, cosine), times(up, sine)),
    across: plus(times(up, cosine), times(right, -sine)),
    gyrationMm: [
      Math.sqrt(moment(about, along, along) / area),
      Math.sqrt(moment(about, across, across) / area),
    ],
    skewMm: [Math.cbrt(cubed(about, along) / area), Math.cbrt(cubed(about, across) / area)],
  }
}

type Flat = readonly [x: number, y: number]

const areaOf = (a: Flat, b: Flat, c: Flat): number =>
  ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2

/** ∫ p q over triangles given by their corners: exact for p and q linear. */
function moment(corners: readonly Flat[], p: (at: Flat) => number, q: (at: Flat) => number) {
  let sum = 0
  for (let i = 0; i < corners.length; i += 3) {
    const [a, b, c] = [corners[i]!, corners[i + 1]!, corners[i + 2]!]
    const products = p(a) * q(a) + p(b) * q(b) + p(c) * q(c)
    const whole = (p(a) + p(b) + p(c)) * (q(a) + q(b) + q(c))
    sum += (areaOf(a, b, c) * (products + whole)) / 12
  }
  return sum
}

/** ∫ p³ over triangles: exact for p linear. */
function cubed(corners: readonly Flat[], p: (at: Flat) => number): number {
  let sum = 0
  for (let i = 0; i < corners.length; i += 3) {
    const [a, b, c] = [p(corners[i]!), p(corners[i + 1]!), p(corners[i + 2]!)]
    const cubes = a ** 3 + b ** 3 + c ** 3
    const squares = a * a * (b + c) + b * b * (a + c) + c * c * (a + b)
    const area = areaOf(corners[i]!, corners[i + 1]!, corners[i + 2]!)
    sum += (area * (cubes + squares + a * b * c)) / 10
  }
  return sum
}
