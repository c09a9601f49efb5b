import type { Mesh } from '../model/mesh.ts'

/**
 * How high a triangle stands over or under (x, y), seen from above; NaN beside it and where it
 * stands upright. Corners as places in `positions`.
 */
export function heightAt(
  positions: Mesh['positions'],
  a: number,
  b: number,
  c: number,
  x: number,
  y: number,
): number {
  let inside = passesRight(positions, a, b, x, y)
  if (passesRight(positions, b, c, x, y)) inside = !inside
  if (passesRight(positions, c, a, x, y)) inside = !inside
  if (!inside) return NaN
  const ux = positions[b]! - positions[a]!
  const uy = positions[b + 1]! - positions[a + 1]!
  const uz = positions[b + 2]! - positions[a + 2]!
  const vx = positions[c]! - positions[a]!
  const vy = positions[c + 1]! - positions[a + 1]!
  const vz = positions[c + 2]! - positions[a + 2]!
  const nx = uy * vz - uz * vy
  const ny = uz * vx - ux * vz
  const nz = ux * vy - uy * vx
  if (nz === 0) return NaN
  return positions[a + 2]! - (nx * (x - positions[a]!) + ny * (y - positions[a + 1]!)) / nz
}

/** Whether the corners run counter-clockwise seen from above. */
export function facesUp(positions: Mesh['positions'], a: number, b: number, c: number): boolean {
  const ux = positions[b]! - positions[a]!
  const uy = positions[b + 1]! - positions[a + 1]!
  const vx = positions[c]! - positions[a]!
  const vy = positions[c + 1]! - positions[a + 1]!
  return ux * vy - uy * vx > 0
}

/**
 * Does the edge, seen from above, pass to the right of (x, y)? Worked out from the lower vertex
 * number whichever triangle asks, so two neighbours always agree and no ray slips between them.
 */
function passesRight(
  positions: Mesh['positions'],
  one: number,
  other: number,
  x: number,
  y: number,
): boolean {
  const from = one < other ? one : other
  const to = one < other ? other : one
  const y1 = positions[from + 1]!
  const y2 = positions[to + 1]!
  if (y1 > y === y2 > y) return false
  const x1 = positions[from]!
  return x < x1 + ((y - y1) / (y2 - y1)) * (positions[to]! - x1)
}
