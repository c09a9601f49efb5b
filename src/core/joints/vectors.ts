import type { Mesh, Vec3 } from '../model/mesh.ts'
import type { RigidMap } from '../mesh/split/rigidMap.ts'

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const times = (a: Vec3, by: number): Vec3 => [a[0] * by, a[1] * by, a[2] * by]
export const lengthOf = (a: Vec3): number => Math.sqrt(dot(a, a))
export const unit = (a: Vec3): Vec3 => times(a, 1 / lengthOf(a))

/** Three right-angled unit axes. */
export type Axes = readonly [Vec3, Vec3, Vec3]

/** The rigid map that turns the axes `from` into `to` and takes the point `at` to `goal`. */
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

/** Furthest that two maps take a point of the ball about `centre` apart, at most. */
export function apart(one: RigidMap, other: RigidMap, centre: Vec3, radius: number): number {
  const at = plus(mapDirection(one, centre), one.move)
  const off = minus(at, plus(mapDirection(other, centre), other.move))
  const turned = one.matrix.reduce((sum, value, i) => sum + (value - other.matrix[i]!) ** 2, 0)
  return lengthOf(off) + radius * Math.sqrt(turned)
}

/** Every triangle facing the other way. */
export function turnedOver({ positions, indices }: Mesh): Mesh {
  const turned = indices.slice()
  for (let i = 0; i < turned.length; i += 3) {
    turned[i + 1] = indices[i + 2]!
    turned[i + 2] = indices[i + 1]!
  }
  return { positions, indices: turned }
}

/** First one, then the other backwards. */
export function between(one: RigidMap, other: RigidMap): RigidMap {
  const column = (k: 0 | 1 | 2): Vec3 =>
    unmapDirection(other, [one.matrix[k], one.matrix[3 + k]!, one.matrix[6 + k]!])
  const [x, y, z] = [column(0), column(1), column(2)]
  return {
    matrix: [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]],
    move: unmapDirection(other, minus(one.move, other.move)),
  }
}

const NOWHERE: RigidMap = { matrix: [1, 0, 0, 0, 1, 0, 0, 0, 1], move: [0, 0, 0] }

export const inverse = (map: RigidMap): RigidMap => between(NOWHERE, map)
