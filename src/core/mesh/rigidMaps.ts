import type { Vec3 } from '../model/mesh.ts'
import { dot, lengthOf, minus, times } from '../model/vectors.ts'
import type { Nine } from './pose.ts'

/** x′ = matrix · x + move: a turn, or a turn and a mirror image, and a shift. */
export interface RigidMap {
  readonly matrix: Nine
  readonly move: Vec3
}

/** Everything where it is. */
export const STAY: RigidMap = { matrix: [1, 0, 0, 0, 1, 0, 0, 0, 1], move: [0, 0, 0] }

/** Where a point of the map's first side lands. */
export function mapPoint({ matrix: m, move }: RigidMap, [x, y, z]: Vec3): Vec3 {
  return [
    m[0] * x + m[1] * y + m[2] * z + move[0],
    m[3] * x + m[4] * y + m[5] * z + move[1],
    m[6] * x + m[7] * y + m[8] * z + move[2],
  ]
}

/** A direction after a map: turned, not moved. */
export function mapDirection({ matrix: m }: RigidMap, [x, y, z]: Vec3): Vec3 {
  return [
    m[0] * x + m[1] * y + m[2] * z,
    m[3] * x + m[4] * y + m[5] * z,
    m[6] * x + m[7] * y + m[8] * z,
  ]
}

/** A direction before a map. */
export function unmapDirection({ matrix: m }: RigidMap, [x, y, z]: Vec3): Vec3 {
  return [
    m[0] * x + m[3] * y + m[6] * z,
    m[1] * x + m[4] * y + m[7] * z,
    m[2] * x + m[5] * y + m[8] * z,
  ]
}

/** The point that a map takes to this one. */
export const unmapPoint = (map: RigidMap, point: Vec3): Vec3 =>
  unmapDirection(map, minus(point, map.move))

/** First `inner`, then `outer`. */
export function after(outer: RigidMap, inner: RigidMap): RigidMap {
  const [a, b, c, d, e, f, g, h, i] = inner.matrix
  const x = mapDirection(outer, [a, d, g])
  const y = mapDirection(outer, [b, e, h])
  const z = mapDirection(outer, [c, f, i])
  return {
    matrix: [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]],
    move: mapPoint(outer, inner.move),
  }
}

/** Backwards. */
export function inverse(map: RigidMap): RigidMap {
  const [a, b, c, d, e, f, g, h, i] = map.matrix
  return { matrix: [a, d, g, b, e, h, c, f, i], move: times(unmapDirection(map, map.move), -1) }
}

/** Three right-angled unit axes. */
export type Axes = readonly [Vec3, Vec3, Vec3]

/** The map that turns the axes `from` into `to` and takes the point `at` to `goal`. */
export function mapAxes(from: Axes, to: Axes, at: Vec3, goal: Vec3): RigidMap {
  const entry = (row: 0 | 1 | 2, column: 0 | 1 | 2): number =>
    to[0][row] * from[0][column] + to[1][row] * from[1][column] + to[2][row] * from[2][column]
  const row = (k: 0 | 1 | 2): Vec3 => [entry(k, 0), entry(k, 1), entry(k, 2)]
  const [x, y, z] = [row(0), row(1), row(2)]
  return {
    matrix: [...x, ...y, ...z],
    move: minus(goal, [dot(x, at), dot(y, at), dot(z, at)]),
  }
}

/** Furthest that two maps take a point of the ball about `centre` apart, at most. */
export function apart(one: RigidMap, other: RigidMap, centre: Vec3, radius: number): number {
  const off = minus(mapPoint(one, centre), mapPoint(other, centre))
  const turned = one.matrix.reduce((sum, value, i) => sum + (value - other.matrix[i]!) ** 2, 0)
  return lengthOf(off) + radius * Math.sqrt(turned)
}
