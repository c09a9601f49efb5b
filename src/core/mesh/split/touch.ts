import type { Mesh } from '../../model/mesh.ts'

/** Pairs of triangles looked at before two bodies are simply taken as touching. */
const MOST_TESTS = 400_000
/** Closer than this share of the box round both counts as touching. */
const NEAR = 1e-6

/** Do two bodies touch or cross each other's surface? `one` and `other` list their triangles. */
export function bodiesTouch(mesh: Mesh, one: readonly number[], other: readonly number[]): boolean {
  const a = boxesOf(mesh, one)
  const b = boxesOf(mesh, other)
  const whole = boxRound([a, b])
  const near = NEAR * Math.hypot(whole[3] - whole[0], whole[4] - whole[1], whole[5] - whole[2])
  const insideA = trianglesIn(one, a, boxRound([b]), near)
  const insideB = trianglesIn(other, b, boxRound([a]), near)
  // Along x, so that only triangles that overlap there are compared.
  const byX = (p: Boxed, q: Boxed) => p.box[0] - q.box[0]
  insideA.sort(byX)
  insideB.sort(byX)
  let tests = 0
  let from = 0
  const widest = insideB.reduce((most, { box }) => Math.max(most, box[3] - box[0]), 0)
  for (const p of insideA) {
    while (from < insideB.length && insideB[from]!.box[0] < p.box[0] - widest - near) from++
    for (let i = from; i < insideB.length && insideB[i]!.box[0] <= p.box[3] + near; i++) {
      if (!meet(p.box, insideB[i]!.box, near)) continue
      if (++tests > MOST_TESTS) return true
      if (trianglesCross(mesh, p.triangle, insideB[i]!.triangle, near)) return true
    }
  }
  return false
}

type Box = [number, number, number, number, number, number]

interface Boxed {
  readonly triangle: number
  readonly box: Box
}

function boxesOf({ positions, indices }: Mesh, triangles: readonly number[]): readonly Box[] {
  return triangles.map((t) => {
    const box: Box = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity]
    for (let corner = 3 * t; corner < 3 * t + 3; corner++) {
      for (let k = 0; k < 3; k++) {
        const value = positions[3 * indices[corner]! + k]!
        if (value < box[k]!) box[k] = value
        if (value > box[3 + k]!) box[3 + k] = value
      }
    }
    return box
  })
}

function boxRound(lists: readonly (readonly Box[])[]): Box {
  const round: Box = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity]
  for (const boxes of lists) {
    for (const box of boxes) {
      for (let k = 0; k < 3; k++) {
        round[k] = Math.min(round[k]!, box[k]!)
        round[3 + k] = Math.max(round[3 + k]!, box[3 + k]!)
      }
    }
  }
  return round
}

function trianglesIn(
  triangles: readonly number[],
  boxes: readonly Box[],
  round: Box,
  near: number,
): Boxed[] {
  return triangles.flatMap((triangle, i) => {
    const box = boxes[i]!
    return meet(box, round, near) ? [{ triangle, box }] : []
  })
}

function meet(a: Box, b: Box, near: number): boolean {
  for (let k = 0; k < 3; k++) {
    if (a[k]! > b[3 + k]! + near || b[k]! > a[3 + k]! + near) return false
  }
  return true
}

function trianglesCross(mesh: Mesh, t: number, u: number, near: number): boolean {
  for (let k = 0; k < 3; k++) {
    if (sidePierces(mesh, t, k, u, near) || sidePierces(mesh, u, k, t, near)) return true
  }
  return false
}

/**
 * Does side k of triangle t meet triangle u (T. Möller, B. Trumbore, J. Graphics Tools 2, 1997, 21)? Ends and rims count. A side
 * that lies in the plane of u is left to the other sides, some of which stand on it.
 */
function sidePierces(
  { positions: p, indices }: Mesh,
  t: number,
  k: number,
  u: number,
  near: number,
): boolean {
  const from = 3 * indices[3 * t + k]!
  const to = 3 * indices[3 * t + ((k + 1) % 3)]!
  const a = 3 * indices[3 * u]!
  const b = 3 * indices[3 * u + 1]!
  const c = 3 * indices[3 * u + 2]!
  const d = [p[to]! - p[from]!, p[to + 1]! - p[from + 1]!, p[to + 2]! - p[from + 2]!] as const
  const e = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!] as const
  const f = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!] as const
  const g = [d[1] * f[2] - d[2] * f[1], d[2] * f[0] - d[0] * f[2], d[0] * f[1] - d[1] * f[0]]
  const det = e[0] * g[0]! + e[1] * g[1]! + e[2] * g[2]!
  const length = Math.hypot(...d)
  if (Math.abs(det) <= 1e-9 * length * Math.hypot(...e) * Math.hypot(...f)) return false
  const slack = near / Math.max(length, near)
  const s = [p[from]! - p[a]!, p[from + 1]! - p[a + 1]!, p[from + 2]! - p[a + 2]!] as const
  const v = (s[0] * g[0]! + s[1] * g[1]! + s[2] * g[2]!) / det
  if (v < -1e-6 || v > 1 + 1e-6) return false
  const h = [s[1] * e[2] - s[2] * e[1], s[2] * e[0] - s[0] * e[2], s[0] * e[1] - s[1] * e[0]]
  const w = (d[0] * h[0]! + d[1] * h[1]! + d[2] * h[2]!) / det
  if (w < -1e-6 || v + w > 1 + 1e-6) return false
  const along = (f[0] * h[0]! + f[1] * h[1]! + f[2] * h[2]!) / det
  return along >= -slack && along <= 1 + slack
}
