import type { Mesh, Vec3 } from '../../src/core/model/mesh.ts'
import { meshOf } from './meshes.ts'
import { circle, oriented, triangulate, type Loop, type Point } from './polygon.ts'

/** A round bore from the top of a plate: radius by depth below the top, the steps in order. */
export interface Boring {
  readonly x: number
  readonly y: number
  readonly facets: number
  /** Where each ring of corners lies. The first is at depth 0; two at one depth are a flat step. */
  readonly rings: readonly (readonly [depth: number, radius: number])[]
  /** The last ring lies in the bottom face; else a flat floor closes it. */
  readonly through: boolean
}

/** Straight through a plate of this height. */
export const straight = (
  x: number,
  y: number,
  radius: number,
  height: number,
  facets: number,
): Boring => ({
  x,
  y,
  facets,
  through: true,
  rings: [
    [0, radius],
    [height, radius],
  ],
})

/** A plate from z = 0 to `height` with bores from its top, all corners shared. */
export function boredPlate(outline: Loop, height: number, borings: readonly Boring[]): Mesh {
  const points: Vec3[] = []
  const indices: number[] = []
  const add = (loop: Loop, z: number): number[] => loop.map(([x, y]) => points.push([x, y, z]) - 1)
  const wall = (upper: readonly number[], lower: readonly number[]) => {
    upper.forEach((a, i) => {
      const next = (i + 1) % upper.length
      indices.push(a, lower[i]!, lower[next]!, a, lower[next]!, upper[next]!)
    })
  }
  const edge = oriented(outline, true)
  const top = [add(edge, height)]
  const bottom = [add(edge, 0)]
  wall(top[0]!, bottom[0]!)
  for (const { x, y, facets, rings, through } of borings) {
    const levels = rings.map(([depth, radius]) =>
      // Clockwise, so that its wall faces inwards.
      add(oriented(circle(radius, facets, x, y), false), height - depth),
    )
    for (let i = 1; i < levels.length; i++) wall(levels[i - 1]!, levels[i]!)
    top.push(levels[0]!)
    const last = levels.at(-1)!
    if (through) bottom.push(last)
    else for (let i = 1; i + 1 < facets; i++) indices.push(last[0]!, last[i + 1]!, last[i]!)
  }
  cover(top, false)
  cover(bottom, true)
  return meshOf(points, indices)

  function cover(loops: readonly (readonly number[])[], facesDown: boolean): void {
    const numbers = loops.flat()
    let first = 0
    const numbered = loops.map((loop) => loop.map(() => first++))
    const flat: Point[] = numbers.map((n) => [points[n]![0], points[n]![1]])
    const faces = triangulate(flat, numbered)
    for (let i = 0; i < faces.length; i += 3) {
      const [a, b, c] = [faces[i]!, faces[i + 1]!, faces[i + 2]!].map((n) => numbers[n]!)
      indices.push(a!, facesDown ? c! : b!, facesDown ? b! : c!)
    }
  }
}
