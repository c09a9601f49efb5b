import type { Mesh } from '../../model/mesh.ts'
import { findBodies, NO_BODY } from '../bodies.ts'
import { findHolders } from '../bodiesNest.ts'
import { sumBodies } from '../volume.ts'
import { bodiesTouch, touchBody, type TouchBody } from './touch.ts'

/**
 * More bodies or build items than this are lettering, a grille or a broken mesh, not a plate of
 * parts.
 */
export const MOST_PIECES = 400

/**
 * The things in a mesh that could be picked up one by one: bodies with what is inside them, and
 * bodies that touch or overlap taken together. Each is the list of its triangles.
 *
 * @param mesh faced outwards and without loose scraps; see `cleanMesh`.
 */
export function findPieces(mesh: Mesh): readonly (readonly number[])[] {
  const bodies = findBodies(mesh)
  const all = Array.from({ length: mesh.indices.length / 3 }, (_, t) => t)
  if (bodies.count < 2 || bodies.count > MOST_PIECES) return [all]
  const sums = sumBodies(mesh, bodies)
  const triangles = Array.from({ length: bodies.count }, (): number[] => [])
  bodies.bodyOf.forEach((body, t) => {
    if (body !== NO_BODY) triangles[body]!.push(t)
  })

  const leader = Array.from({ length: bodies.count }, (_, body) => body)
  const lead = (body: number): number => {
    let at = body
    while (leader[at] !== at) at = leader[at]!
    return at
  }
  const unite = (one: number, other: number): void => {
    const [a, b] = [lead(one), lead(other)]
    leader[Math.max(a, b)] = Math.min(a, b)
  }
  const holders = findHolders(mesh, bodies, sums, new Uint8Array(bodies.count).fill(1))
  for (const [held, around] of holders) for (const holder of around) unite(held, holder)
  const ready: (TouchBody | undefined)[] = []
  const bodyAt = (body: number): TouchBody => (ready[body] ??= touchBody(mesh, triangles[body]!))
  for (let one = 0; one < bodies.count; one++) {
    for (let other = one + 1; other < bodies.count; other++) {
      if (lead(one) === lead(other) || !boxesMeet(sums.bounds, one, other)) continue
      if (bodiesTouch(mesh, bodyAt(one), bodyAt(other))) unite(one, other)
    }
  }
  const pieces = new Map<number, number[]>()
  triangles.forEach((own, body) => {
    const piece = pieces.get(lead(body))
    if (piece === undefined) pieces.set(lead(body), [...own])
    else for (const t of own) piece.push(t)
  })
  return [...pieces.values()]
}

function boxesMeet(bounds: Float64Array, one: number, other: number): boolean {
  for (let k = 0; k < 3; k++) {
    const [a, b] = [bounds[6 * one + k]!, bounds[6 * other + k]!]
    const [aTop, bTop] = [bounds[6 * one + 3 + k]!, bounds[6 * other + 3 + k]!]
    const near = 1e-6 * (Math.max(aTop, bTop) - Math.min(a, b))
    if (a > bTop + near || b > aTop + near) return false
  }
  return true
}
