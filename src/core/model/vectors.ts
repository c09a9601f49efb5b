import type { Vec3 } from './mesh.ts'

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const times = (a: Vec3, by: number): Vec3 => [a[0] * by, a[1] * by, a[2] * by]
export const lengthOf = (a: Vec3): number => Math.sqrt(dot(a, a))
export const unit = (a: Vec3): Vec3 => times(a, 1 / lengthOf(a))

export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
