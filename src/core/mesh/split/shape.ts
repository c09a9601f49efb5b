import type { Mesh, Vec3 } from '../../model/mesh.ts'

/**
 * What tells one body from another wherever it lies and however it is turned. In the mesh's own
 * unit.
 */
export interface Shape {
  readonly volume: number
  readonly area: number
  /** Second moments of the volume about its centre along its own axes, largest first. */
  readonly spread: Vec3
  /**
   * Third moments of the surface about the volume's centre along the same axes, a right-handed
   * frame: xxx, xxy, xxz, xyy, xyz, xzz, yyy, yyz, yzz, zzz.
   */
  readonly skew: readonly number[]
  /** Across the box round it. */
  readonly size: number
}

/**
 * Points and weight of the 6-point rule on a triangle, exact to degree 4 (D. A. Dunavant, Int. J.
 * Numer. Methods Eng. 21, 1985, 1129).
 */
const RULE: readonly (readonly [weight: number, a: number, b: number])[] = [
  [0.223381589678011, 0.445948490915965, 0.10810301816807],
  [0.109951743655322, 0.091576213509771, 0.816847572980459],
]

const TRIPLES = [
  [0, 0, 0],
  [0, 0, 1],
  [0, 0, 2],
  [0, 1, 1],
  [0, 1, 2],
  [0, 2, 2],
  [1, 1, 1],
  [1, 1, 2],
  [1, 2, 2],
  [2, 2, 2],
] as const

/** @param triangles of one body, faced outwards. */
export function shapeOf(mesh: Mesh, triangles: readonly number[]): Shape {
  const points = cornersOf(mesh, triangles)
  const { volume, centre } = centreOf(points)
  for (let i = 0; i < points.length; i++) points[i]! -= centre[i % 3]!
  const { values, axes } = ownAxes(secondMoments(points))
  const turned = turnInto(points, axes)
  const { area, skew } = surfaceMoments(turned)
  return { volume, area, spread: values, skew, size: sizeOf(turned) }
}

/** Nine numbers a triangle, about the first corner. */
function cornersOf({ positions, indices }: Mesh, triangles: readonly number[]): Float64Array {
  const points = new Float64Array(9 * triangles.length)
  const own = 3 * indices[3 * (triangles[0] ?? 0)]!
  triangles.forEach((t, i) => {
    for (let k = 0; k < 9; k++) {
      const corner = indices[3 * t + Math.floor(k / 3)]!
      points[9 * i + k] = positions[3 * corner + (k % 3)]! - positions[own + (k % 3)]!
    }
  })
  return points
}

function tetra(p: Float64Array, i: number): number {
  return (
    (p[i]! * (p[i + 4]! * p[i + 8]! - p[i + 5]! * p[i + 7]!) +
      p[i + 1]! * (p[i + 5]! * p[i + 6]! - p[i + 3]! * p[i + 8]!) +
      p[i + 2]! * (p[i + 3]! * p[i + 7]! - p[i + 4]! * p[i + 6]!)) /
    6
  )
}

function centreOf(points: Float64Array): { volume: number; centre: Vec3 } {
  let volume = 0
  const sums = [0, 0, 0]
  for (let i = 0; i < points.length; i += 9) {
    const part = tetra(points, i)
    volume += part
    for (let k = 0; k < 3; k++) {
      sums[k]! += (part * (points[i + k]! + points[i + 3 + k]! + points[i + 6 + k]!)) / 4
    }
  }
  return { volume, centre: [sums[0]! / volume, sums[1]! / volume, sums[2]! / volume] }
}

type Symmetric = [xx: number, xy: number, xz: number, yy: number, yz: number, zz: number]

/**
 * ∫ x_i x_j over the volume: V/20 · (Σ p_i p_j + Σp_i · Σp_j) for each tetrahedron on the origin.
 */
function secondMoments(points: Float64Array): Symmetric {
  const sums: Symmetric = [0, 0, 0, 0, 0, 0]
  for (let i = 0; i < points.length; i += 9) {
    const part = tetra(points, i) / 20
    let at = 0
    for (let j = 0; j < 3; j++) {
      for (let k = j; k < 3; k++) {
        const [aj, bj, cj] = [points[i + j]!, points[i + 3 + j]!, points[i + 6 + j]!]
        const [ak, bk, ck] = [points[i + k]!, points[i + 3 + k]!, points[i + 6 + k]!]
        sums[at++]! += part * (aj * ak + bj * bk + cj * ck + (aj + bj + cj) * (ak + bk + ck))
      }
    }
  }
  return sums
}

/** Eigenvalues, largest first, and their directions as a right-handed frame (Jacobi rotations). */
function ownAxes([xx, xy, xz, yy, yz, zz]: Symmetric): { values: Vec3; axes: readonly Vec3[] } {
  const m = [
    [xx, xy, xz],
    [xy, yy, yz],
    [xz, yz, zz],
  ]
  const v = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ]
  for (let sweep = 0; sweep < 30; sweep++) {
    const off = m[0]![1]! ** 2 + m[0]![2]! ** 2 + m[1]![2]! ** 2
    if (off <= 1e-30 * (xx + yy + zz) ** 2) break
    for (const [p, q] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const) {
      rotate(m, v, p, q)
    }
  }
  const order = [0, 1, 2].sort((a, b) => m[b]![b]! - m[a]![a]!)
  const axes = order.map((k): Vec3 => [v[0]![k]!, v[1]![k]!, v[2]![k]!])
  const [a, b, c] = axes as [Vec3, Vec3, Vec3]
  const handed =
    a[0] * (b[1] * c[2] - b[2] * c[1]) -
    a[1] * (b[0] * c[2] - b[2] * c[0]) +
    a[2] * (b[0] * c[1] - b[1] * c[0])
  const third: Vec3 = handed < 0 ? [-c[0], -c[1], -c[2]] : c
  const values = order.map((k) => m[k]![k]!) as [number, number, number]
  return { values, axes: [a, b, third] }
}

function rotate(m: number[][], v: number[][], p: number, q: number): void {
  const off = m[p]![q]!
  if (off === 0) return
  const theta = (m[q]![q]! - m[p]![p]!) / (2 * off)
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1))
  const c = 1 / Math.sqrt(t * t + 1)
  const s = t * c
  for (let k = 0; k < 3; k++) {
    const [kp, kq] = [m[k]![p]!, m[k]![q]!]
    m[k]![p] = c * kp - s * kq
    m[k]![q] = s * kp + c * kq
  }
  for (let k = 0; k < 3; k++) {
    const [pk, qk] = [m[p]![k]!, m[q]![k]!]
    m[p]![k] = c * pk - s * qk
    m[q]![k] = s * pk + c * qk
    const [vp, vq] = [v[k]![p]!, v[k]![q]!]
    v[k]![p] = c * vp - s * vq
    v[k]![q] = s * vp + c * vq
  }
}

function turnInto(points: Float64Array, axes: readonly Vec3[]): Float64Array {
  const turned = new Float64Array(points.length)
  for (let i = 0; i < points.length; i += 3) {
    axes.forEach((axis, k) => {
      turned[i + k] = points[i]! * axis[0] + points[i + 1]! * axis[1] + points[i + 2]! * axis[2]
    })
  }
  return turned
}

function surfaceMoments(p: Float64Array): { area: number; skew: number[] } {
  let area = 0
  const skew = TRIPLES.map(() => 0)
  const point = [0, 0, 0]
  for (let i = 0; i < p.length; i += 9) {
    const u = [p[i + 3]! - p[i]!, p[i + 4]! - p[i + 1]!, p[i + 5]! - p[i + 2]!] as const
    const v = [p[i + 6]! - p[i]!, p[i + 7]! - p[i + 1]!, p[i + 8]! - p[i + 2]!] as const
    const size =
      Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) /
      2
    area += size
    for (const [weight, a, b] of RULE) {
      for (let apex = 0; apex < 3; apex++) {
        for (let k = 0; k < 3; k++) {
          const sum = p[i + k]! + p[i + 3 + k]! + p[i + 6 + k]!
          point[k] = a * sum + (b - a) * p[i + 3 * apex + k]!
        }
        TRIPLES.forEach(([j, k, l], at) => {
          skew[at]! += size * weight * point[j]! * point[k]! * point[l]!
        })
      }
    }
  }
  return { area, skew }
}

function sizeOf(points: Float64Array): number {
  const low = [Infinity, Infinity, Infinity]
  const high = [-Infinity, -Infinity, -Infinity]
  points.forEach((value, i) => {
    low[i % 3] = Math.min(low[i % 3]!, value)
    high[i % 3] = Math.max(high[i % 3]!, value)
  })
  return Math.hypot(...high.map((value, k) => value - low[k]!))
}

/**
 * Shares within which two numbers of equal bodies agree; single precision and a move across the bed
 * cost some 1e-6.
 */
const SAME = 3e-4
/** Two own axes are told apart when their moments differ by more than this share. */
const DISTINCT = 0.01

/**
 * Are two bodies the same, mirror images, or neither? A body that can be laid on its mirror image
 * (most plates and tubes) is called equal. Where two of its axes are alike (a square, a disc) left
 * and right cannot be told: also equal, since both weigh the same.
 */
export function compareShapes(a: Shape, b: Shape): 'equal' | 'mirrored' | 'different' {
  if (!close(a.volume, b.volume, a.volume) || !close(a.area, b.area, a.area)) return 'different'
  const [largest] = a.spread
  if (a.spread.some((value, k) => !close(value, b.spread[k]!, largest))) return 'different'
  const scale = a.area * (largest / a.volume) ** 1.5
  const [s0, s1, s2] = a.spread
  if (s0 - s1 < DISTINCT * s0 || s1 - s2 < DISTINCT * s0) {
    return close(strength(a.skew), strength(b.skew), 3 * scale) ? 'equal' : 'different'
  }
  let result: 'mirrored' | 'different' = 'different'
  for (let signs = 0; signs < 8; signs++) {
    const sign = [signs & 1 ? -1 : 1, signs & 2 ? -1 : 1, signs & 4 ? -1 : 1] as const
    const fits = TRIPLES.every(([j, k, l], at) =>
      close(a.skew[at]!, b.skew[at]! * sign[j] * sign[k] * sign[l], scale),
    )
    if (!fits) continue
    if (sign[0] * sign[1] * sign[2] === 1) return 'equal'
    result = 'mirrored'
  }
  return result
}

const close = (one: number, other: number, scale: number): boolean =>
  Math.abs(one - other) <= SAME * scale

/** The length of the whole third-moment tensor: the same in every frame. */
function strength(skew: readonly number[]): number {
  let sum = 0
  TRIPLES.forEach(([j, k, l], at) => {
    const copies = j === k && k === l ? 1 : j === k || k === l ? 3 : 6
    sum += copies * skew[at]! ** 2
  })
  return Math.sqrt(sum)
}
