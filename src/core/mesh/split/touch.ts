import type { Mesh } from '../../model/mesh.ts'

/** Pairs of triangles looked at before two bodies are simply taken as touching. */
const MOST_TESTS = 400_000
/** Closer than this share of the box round both counts as touching. */
const NEAR = 1e-6
/** Slabs across x into which a body's triangles are sorted. */
const SLABS = 512

/** A body ready to be held against others. */
export interface TouchBody {
  /** Its triangles, by the slab their lowest x lies in. */
  readonly sorted: Uint32Array
  /** Those of slab i: `start[i]` up to `start[i + 1]`. */
  readonly start: Uint32Array
  readonly lowX: number
  /** Slabs a unit of length. */
  readonly perUnit: number
  /** How far the widest triangle reaches along x. */
  readonly widest: number
  /** Three lows, three highs. */
  readonly box: Box
}

type Box = [number, number, number, number, number, number]

interface Boxed {
  readonly triangle: number
  readonly box: Box
}

/**
 * Sorts a body's triangles along x, so that a small neighbour need not be held against all of a
 * large body. Linear.
 */
export function touchBody(mesh: Mesh, triangles: readonly number[]): TouchBody {
  const box: Box = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity]
  let widest = 0
  for (const t of triangles) {
    boxOf(mesh, t)
    for (let k = 0; k < 3; k++) {
      if (at[k]! < box[k]!) box[k] = at[k]!
      if (at[3 + k]! > box[3 + k]!) box[3 + k] = at[3 + k]!
    }
    if (at[3] - at[0] > widest) widest = at[3] - at[0]
  }
  const lowX = box[0]
  const perUnit = box[3] > lowX ? SLABS / (box[3] - lowX) : 0
  const start = new Uint32Array(SLABS + 1)
  const slabs = Uint16Array.from(triangles, (t) => {
    boxOf(mesh, t)
    return slabOf(at[0], lowX, perUnit)
  })
  for (const slab of slabs) start[slab + 1]!++
  for (let slab = 0; slab < SLABS; slab++) start[slab + 1]! += start[slab]!
  const next = start.slice(0, SLABS)
  const sorted = new Uint32Array(triangles.length)
  for (let i = 0; i < slabs.length; i++) sorted[next[slabs[i]!]!++] = triangles[i]!
  return { sorted, start, lowX, perUnit, widest, box }
}

function slabOf(x: number, lowX: number, perUnit: number): number {
  return Math.max(0, Math.min(SLABS - 1, Math.floor((x - lowX) * perUnit)))
}

/** Do two bodies touch or cross each other's surface? */
export function bodiesTouch(mesh: Mesh, one: TouchBody, other: TouchBody): boolean {
  const size = [0, 1, 2].map(
    (k) => Math.max(one.box[3 + k]!, other.box[3 + k]!) - Math.min(one.box[k]!, other.box[k]!),
  )
  const near = NEAR * Math.hypot(...size)
  const insideA = trianglesIn(mesh, one, other.box, near)
  const insideB = trianglesIn(mesh, other, one.box, near)
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

/** The box of the triangle at hand. */
const at: Box = [0, 0, 0, 0, 0, 0]

function boxOf({ positions, indices }: Mesh, t: number): void {
  const a = 3 * indices[3 * t]!
  const b = 3 * indices[3 * t + 1]!
  const c = 3 * indices[3 * t + 2]!
  for (let k = 0; k < 3; k++) {
    const p = positions[a + k]!
    const q = positions[b + k]!
    const r = positions[c + k]!
    at[k] = p < q ? (p < r ? p : r) : q < r ? q : r
    at[3 + k] = p > q ? (p > r ? p : r) : q > r ? q : r
  }
}

/** The triangles of a body that meet a box. */
function trianglesIn(
  mesh: Mesh,
  { sorted, start, lowX, perUnit, widest }: TouchBody,
  round: Box,
  near: number,
): Boxed[] {
  const first = start[slabOf(round[0] - near - widest, lowX, perUnit)]!
  const past = start[slabOf(round[3] + near, lowX, perUnit) + 1]!
  const found: Boxed[] = []
  for (let i = first; i < past; i++) {
    boxOf(mesh, sorted[i]!)
    if (meet(at, round, near)) found.push({ triangle: sorted[i]!, box: [...at] })
  }
  return found
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
 * Does side k of triangle t meet triangle u (T. Möller, B. Trumbore, J. Graphics Tools 2, 1997,
 * 21)? Ends and rims count. A side that lies in the plane of u is left to the other sides, some of
 * which stand on it.
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
