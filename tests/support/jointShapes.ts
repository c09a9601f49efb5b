import type { Mesh, Vec3 } from '../../src/core/model/mesh.ts'
import { boredPlate, straight, type Boring } from './boredPlate.ts'
import { rotate, translate } from './meshes.ts'
import { circle, type Loop, type Point } from './polygon.ts'

/** A turn about x, then y, then z, then a move; a mesh is laid by it, and so is a point. */
export interface Lay {
  readonly degrees: Vec3
  readonly by: Vec3
}

export const lay = (mesh: Mesh, { degrees, by }: Lay): Mesh => translate(rotate(mesh, degrees), by)

export function layPoint([x, y, z]: Vec3, way: Lay): Vec3 {
  const point = { positions: Float64Array.of(x, y, z), indices: new Uint32Array() }
  const [a, b, c] = lay(point, way).positions
  return [a!, b!, c!]
}

export function randomLay(random: () => number): Lay {
  const some = (size: number): Vec3 => [random() * size, random() * size, random() * size]
  return { degrees: some(360), by: some(80) }
}

/** Points at least `least` apart inside a box from `margin` to its sides less that. */
export function scattered(
  random: () => number,
  count: number,
  [w, d]: readonly [number, number],
  margin: number,
  least: number,
): readonly Point[] {
  const points: Point[] = []
  for (let tries = 0; points.length < count && tries < 5000; tries++) {
    const at: Point = [margin + random() * (w - 2 * margin), margin + random() * (d - 2 * margin)]
    if (points.every(([x, y]) => Math.hypot(at[0] - x, at[1] - y) > least)) points.push(at)
  }
  return points
}

/** The kinds of outline an airframe has; each at least 70 × 40, or a ring 80 across. */
export function outlineOf(kind: 'plate' | 'arm' | 'ring', facets: number): Loop {
  if (kind === 'ring') return circle(45, facets, 40, 30)
  return kind === 'plate'
    ? [
        [0, 0],
        [80, 0],
        [80, 60],
        [0, 60],
      ]
    : [
        [0, 0],
        [80, 14],
        [80, 46],
        [0, 60],
      ]
}

/** Blind from the top, as for an insert. */
export const blind = (
  x: number,
  y: number,
  radius: number,
  depth: number,
  facets: number,
): Boring => ({
  ...straight(x, y, radius, depth, facets),
  through: false,
})

export const holed = (
  outline: Loop,
  height: number,
  holes: readonly Point[],
  radius: number,
  facets: number,
): Mesh =>
  boredPlate(
    outline,
    height,
    holes.map(([x, y]) => straight(x, y, radius, height, facets)),
  )
