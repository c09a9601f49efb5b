import type { Mesh, Vec3 } from '../../src/core/model/mesh.ts'
import { shuffled } from './random.ts'
import { circle, oriented, triangulate, type Loop, type Point } from './polygon.ts'

/*
 * Test meshes made in code, in mm, double precision, vertices shared, triangles counter-clockwise seen
 * from outside. Round ones have their corners on the true surface, so they hold a little less.
 */

export { circle, loopArea, type Loop, type Point } from './polygon.ts'
export { shoulderLength, specimenOutline, type SpecimenName } from './specimens.ts'

/** From the origin to (w, d, h). */
export function box(w: number, d: number, h: number): Mesh {
  return prism(rectangle(w, d), h)
}

/** A rectangle from the origin to (w, d), counter-clockwise. */
export function rectangle(w: number, d: number): Loop {
  return [
    [0, 0],
    [w, 0],
    [w, d],
    [0, d],
  ]
}

/** A cube from the origin with a round hole through its middle along z. */
export function cubeWithHole(side: number, radius: number, segments: number): Mesh {
  return prism(rectangle(side, side), side, [circle(radius, segments, side / 2, side / 2)])
}

/** A round tube from z = 0 to `height` about the z axis. */
export function tube(outer: number, inner: number, height: number, segments: number): Mesh {
  return prism(circle(outer, segments), height, [circle(inner, segments)])
}

/**
 * An outline with holes (any sense, simple, apart from one another), pulled up from z = 0 to
 * `height`.
 */
export function prism(outline: Loop, height: number, holes: readonly Loop[] = []): Mesh {
  const loops = [oriented(outline, true), ...holes.map((hole) => oriented(hole, false))]
  const points: Point[] = loops.flat()
  let first = 0
  const numbered = loops.map((loop) => {
    const numbers = loop.map((_, i) => first + i)
    first += loop.length
    return numbers
  })
  const n = points.length
  const top = triangulate(points, numbered)
  const indices: number[] = []
  for (let i = 0; i < top.length; i += 3) {
    const [a, b, c] = [top[i]!, top[i + 1]!, top[i + 2]!]
    indices.push(a + n, b + n, c + n, c, b, a)
  }
  for (const loop of numbered) {
    loop.forEach((a, i) => {
      const b = loop[(i + 1) % loop.length]!
      indices.push(a, b, b + n, a, b + n, a + n)
    })
  }
  const level = (z: number) => points.map(([x, y]): Vec3 => [x, y, z])
  return meshOf([...level(0), ...level(height)], indices)
}

/** A ball about the origin: `n` corners round the equator, n/2 bands from pole to pole (n even). */
export function sphere(radius: number, n: number): Mesh {
  const bands = n / 2
  const points: Vec3[] = [[0, 0, -radius]]
  for (let band = 1; band < bands; band++) {
    const height = -radius * Math.cos((Math.PI * band) / bands)
    const ring = radius * Math.sin((Math.PI * band) / bands)
    points.push(...circle(ring, n).map(([x, y]): Vec3 => [x, y, height]))
  }
  points.push([0, 0, radius])
  const last = points.length - 1
  const at = (band: number, i: number) => 1 + (band - 1) * n + (i % n)
  const indices: number[] = []
  for (let i = 0; i < n; i++) {
    indices.push(0, at(1, i + 1), at(1, i))
    for (let band = 1; band < bands - 1; band++) {
      const [a, b, c, d] = [at(band, i), at(band, i + 1), at(band + 1, i + 1), at(band + 1, i)]
      indices.push(a, b, c, a, c, d)
    }
    indices.push(last, at(bands - 1, i), at(bands - 1, i + 1))
  }
  return meshOf(points, indices)
}

/** A ring about the z axis: `n` corners round the axis, `m` round the ring's own circle. */
export function torus(ringRadius: number, radius: number, n: number, m: number): Mesh {
  const points: Vec3[] = []
  for (let i = 0; i < n; i++) {
    const turn = (2 * Math.PI * i) / n
    for (const [out, z] of circle(radius, m)) {
      points.push([(ringRadius + out) * Math.cos(turn), (ringRadius + out) * Math.sin(turn), z])
    }
  }
  const indices: number[] = []
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < m; j++) {
      const a = i * m + j
      const b = ((i + 1) % n) * m + j
      const c = ((i + 1) % n) * m + ((j + 1) % m)
      const d = i * m + ((j + 1) % m)
      indices.push(a, b, c, a, c, d)
    }
  }
  return meshOf(points, indices)
}

/** A cone standing on z = 0, its point at `height`. */
export function cone(radius: number, height: number, n: number): Mesh {
  const points: Vec3[] = circle(radius, n).map(([x, y]) => [x, y, 0])
  points.push([0, 0, 0], [0, 0, height])
  const indices: number[] = []
  for (let i = 0; i < n; i++) {
    const next = (i + 1) % n
    indices.push(n, next, i, n + 1, i, next)
  }
  return meshOf(points, indices)
}

/** A regular tetrahedron of that edge, on four corners of a cube. */
export function tetrahedron(edge: number): Mesh {
  const s = edge / Math.sqrt(8)
  const points: Vec3[] = [
    [s, s, s],
    [s, -s, -s],
    [-s, s, -s],
    [-s, -s, s],
  ]
  return meshOf(points, [0, 1, 2, 0, 3, 1, 0, 2, 3, 1, 3, 2])
}

export function meshOf(points: readonly Vec3[], indices: readonly number[]): Mesh {
  return { positions: Float64Array.from(points.flat()), indices: Uint32Array.from(indices) }
}

/** All of them in one mesh, one after the other, no vertex shared between them. */
export function merge(meshes: readonly Mesh[]): Mesh {
  const positions: number[] = []
  const indices: number[] = []
  for (const mesh of meshes) {
    const first = positions.length / 3
    for (const value of mesh.positions) positions.push(value)
    for (const index of mesh.indices) indices.push(first + index)
  }
  return { positions: Float64Array.from(positions), indices: Uint32Array.from(indices) }
}

export function translate(mesh: Mesh, by: Vec3): Mesh {
  return mapPoints(mesh, ([x, y, z]) => [x + by[0], y + by[1], z + by[2]])
}

/** Turned about x, then y, then z, in degrees, one axis after the other. */
export function rotate(mesh: Mesh, degrees: Vec3): Mesh {
  const [a, b, c] = degrees.map((value) => (value * Math.PI) / 180) as [number, number, number]
  return mapPoints(mesh, ([x, y, z]) => {
    const [y1, z1] = [y * Math.cos(a) - z * Math.sin(a), y * Math.sin(a) + z * Math.cos(a)]
    const [x2, z2] = [x * Math.cos(b) + z1 * Math.sin(b), -x * Math.sin(b) + z1 * Math.cos(b)]
    return [x2 * Math.cos(c) - y1 * Math.sin(c), x2 * Math.sin(c) + y1 * Math.cos(c), z2]
  })
}

export function scale(mesh: Mesh, factor: number): Mesh {
  return mapPoints(mesh, ([x, y, z]) => [x * factor, y * factor, z * factor])
}

/** The mirror image in the y–z plane, still facing outwards. */
export function mirror(mesh: Mesh): Mesh {
  return flip(mapPoints(mesh, ([x, y, z]) => [-x, y, z]))
}

/** Every triangle facing the other way: an outward mesh becomes inside out. */
export function flip(mesh: Mesh): Mesh {
  return pickTriangles(mesh, ([a, b, c]) => [[a, c, b]])
}

/** Single-precision positions, as most mesh files hold them. */
export function single(mesh: Mesh): Mesh {
  return { positions: Float32Array.from(mesh.positions), indices: mesh.indices }
}

/** The same triangles in another order, each starting at another corner. */
export function shuffleTriangles(mesh: Mesh, random: () => number): Mesh {
  const triangles = shuffled(trianglesOf(mesh), random).map(([a, b, c]) => {
    const turn = Math.floor(random() * 3)
    return turn === 0 ? [a, b, c] : turn === 1 ? [b, c, a] : [c, a, b]
  })
  return { positions: mesh.positions, indices: Uint32Array.from(triangles.flat()) }
}

/** The same triangles with the vertices numbered in another order. */
export function relabelVertices(mesh: Mesh, random: () => number): Mesh {
  const order = shuffled(
    Array.from({ length: mesh.positions.length / 3 }, (_, i) => i),
    random,
  )
  const positions = new Float64Array(mesh.positions.length)
  order.forEach((to, from) => {
    for (let k = 0; k < 3; k++) positions[3 * to + k] = mesh.positions[3 * from + k]!
  })
  return { positions, indices: mesh.indices.map((index) => order[index]!) }
}

type Triangle = readonly [a: number, b: number, c: number]

function trianglesOf(mesh: Mesh): Triangle[] {
  return Array.from({ length: mesh.indices.length / 3 }, (_, t) => [
    mesh.indices[3 * t]!,
    mesh.indices[3 * t + 1]!,
    mesh.indices[3 * t + 2]!,
  ])
}

/** Each triangle replaced by none, one or several: to open, flip or double chosen ones. */
export function pickTriangles(
  mesh: Mesh,
  pick: (triangle: Triangle, number: number) => readonly Triangle[],
): Mesh {
  const indices = trianglesOf(mesh).flatMap((triangle, number) => pick(triangle, number).flat())
  return { positions: mesh.positions, indices: Uint32Array.from(indices) }
}

/** The triangles as a soup, nine numbers each, in the precision of the positions. */
export function soupOf(mesh: Mesh): Float32Array | Float64Array {
  const { positions, indices } = mesh
  const length = 3 * indices.length
  const soup =
    positions instanceof Float32Array ? new Float32Array(length) : new Float64Array(length)
  indices.forEach((index, corner) => {
    for (let k = 0; k < 3; k++) soup[3 * corner + k] = positions[3 * index + k]!
  })
  return soup
}

function mapPoints(mesh: Mesh, move: (point: Vec3) => Vec3): Mesh {
  const { positions, indices } = mesh
  const moved = new Float64Array(positions.length)
  for (let i = 0; i < positions.length; i += 3) {
    moved.set(move([positions[i]!, positions[i + 1]!, positions[i + 2]!]), i)
  }
  return { positions: moved, indices }
}
