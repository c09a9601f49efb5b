import { placeMap } from '../mesh/split/drawnPlace.ts'
import { mapPoint } from '../mesh/split/rigidMap.ts'
import type { RigidMap } from '../mesh/split/rigidMap.ts'
import type { Place } from '../model/aircraft.ts'
import type { Nine } from '../mesh/pose.ts'
import type { Vec3 } from '../model/mesh.ts'
import { dot, minus, times, unit } from './vectors.ts'

/** As drawn. */
export const STAY: RigidMap = { matrix: [1, 0, 0, 0, 1, 0, 0, 0, 1], move: [0, 0, 0] }

/** What a place does to the points of a part. */
export function motionOfPlace({ positionMm, rotateDeg, mirrored }: Place): RigidMap {
  return placeMap({ position: positionMm, rotateDeg, mirrored })
}

/** First `inner`, then `outer`. */
export function after(outer: RigidMap, inner: RigidMap): RigidMap {
  return { matrix: product(outer.matrix, inner.matrix), move: mapPoint(outer, inner.move) }
}

export function turned(matrix: Nine, point: Vec3): Vec3 {
  return mapPoint({ matrix, move: [0, 0, 0] }, point)
}

export function product(m: Nine, [a, b, c, d, e, f, g, h, i]: Nine): Nine {
  return columns(turned(m, [a, d, g]), turned(m, [b, e, h]), turned(m, [c, f, i]))
}

export function transposed([a, b, c, d, e, f, g, h, i]: Nine): Nine {
  return [a, d, g, b, e, h, c, f, i]
}

/** The matrix whose columns these are. */
export function columns(x: Vec3, y: Vec3, z: Vec3): Nine {
  return [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]]
}

export function cross([a, b, c]: Vec3, [x, y, z]: Vec3): Vec3 {
  return [b * z - c * y, c * x - a * z, a * y - b * x]
}

/** A direction square to a unit vector, the same one whenever it is asked for. */
export function squareTo(axis: Vec3): Vec3 {
  const sizes = axis.map(Math.abs)
  const least = sizes.indexOf(Math.min(...sizes))
  const helper: Vec3 = least === 0 ? [1, 0, 0] : least === 1 ? [0, 1, 0] : [0, 0, 1]
  return unit(minus(helper, times(axis, dot(helper, axis))))
}
