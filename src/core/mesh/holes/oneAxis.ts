import type { Vec3 } from '../../model/mesh.ts'
import { dot, lengthOf, minus, times } from '../../model/vectors.ts'

/** Cosine of axes that are one: within 1.1°. */
const ONE_AXIS = 0.9998

/** Whether two unit axes run along each other, whichever way each points. */
export const isOneAxis = (a: Vec3, b: Vec3): boolean => Math.abs(dot(a, b)) >= ONE_AXIS

/** How far what lies `between` a point and an axis's own leads off that unit axis. */
export const offAxis = (between: Vec3, axis: Vec3): number =>
  lengthOf(minus(between, times(axis, dot(between, axis))))
