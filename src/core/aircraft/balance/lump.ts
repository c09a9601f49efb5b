import type { Vec3 } from '../../model/mesh.ts'
import { dot } from '../../model/vectors.ts'
import type { Nine } from '../../mesh/pose.ts'

/** Second moments ∫x² ∫y² ∫z² ∫xy ∫yz ∫zx. */
export type Six = readonly [xx: number, yy: number, zz: number, xy: number, yz: number, zx: number]

/** Some amount (mass in g, volume in mm³, area in mm²) with its centre and its spread. */
export interface Lump {
  readonly amount: number
  /** mm */
  readonly centreMm: Vec3
  /** About its own centre, amount × mm². */
  readonly second: Six
}

export const NO_LUMP: Lump = { amount: 0, centreMm: [0, 0, 0], second: [0, 0, 0, 0, 0, 0] }

/** All of it in one point. */
export function pointLump(amount: number, centreMm: Vec3): Lump {
  return { amount, centreMm, second: NO_LUMP.second }
}

/** The same spread with another amount in all. Nothing stays nothing. */
export function withAmount(lump: Lump, amount: number): Lump {
  const factor = lump.amount === 0 ? 0 : amount / lump.amount
  return {
    amount: lump.amount === 0 ? 0 : amount,
    centreMm: lump.centreMm,
    second: mapSix(lump.second, (value) => value * factor),
  }
}

/** Together, about their common centre (parallel axes; any mechanics text). */
export function joinLumps(lumps: readonly Lump[]): Lump {
  const amount = lumps.reduce((sum, lump) => sum + lump.amount, 0)
  if (amount === 0) return NO_LUMP
  const mean = (axis: 0 | 1 | 2): number =>
    lumps.reduce((sum, lump) => sum + lump.amount * lump.centreMm[axis], 0) / amount
  const centreMm: Vec3 = [mean(0), mean(1), mean(2)]
  let second = NO_LUMP.second
  for (const lump of lumps) {
    const shifted = shiftSix(lump, [
      lump.centreMm[0] - centreMm[0],
      lump.centreMm[1] - centreMm[1],
      lump.centreMm[2] - centreMm[2],
    ])
    second = mapSix(second, (value, k) => value + (shifted[k] ?? 0))
  }
  return { amount, centreMm, second }
}

/** Second moments about a point that the centre lies `by` away from. */
function shiftSix({ amount, second }: Lump, [x, y, z]: Vec3): Six {
  const products: Six = [x * x, y * y, z * z, x * y, y * z, z * x]
  return mapSix(second, (value, k) => value + amount * (products[k] ?? 0))
}

/** Taken through a matrix (turn or mirror): centre M c, spread M S Mᵀ. */
export function transformLump(lump: Lump, matrix: Nine): Lump {
  const [a, b, c, d, e, f, g, h, i] = matrix
  const [xx, yy, zz, xy, yz, zx] = lump.second
  const rows: readonly Vec3[] = [
    [a, b, c],
    [d, e, f],
    [g, h, i],
  ]
  const times = ([x, y, z]: Vec3): Vec3 => [
    xx * x + xy * y + zx * z,
    xy * x + yy * y + yz * z,
    zx * x + yz * y + zz * z,
  ]
  const between = (p: number, q: number): number => dot(rows[p] ?? NIL, times(rows[q] ?? NIL))
  return {
    amount: lump.amount,
    centreMm: [
      dot([a, b, c], lump.centreMm),
      dot([d, e, f], lump.centreMm),
      dot([g, h, i], lump.centreMm),
    ],
    second: [
      between(0, 0),
      between(1, 1),
      between(2, 2),
      between(0, 1),
      between(1, 2),
      between(2, 0),
    ],
  }
}

export function moveLump(lump: Lump, [x, y, z]: Vec3): Lump {
  const [cx, cy, cz] = lump.centreMm
  return { ...lump, centreMm: [cx + x, cy + y, cz + z] }
}

const NIL: Vec3 = [0, 0, 0]

function mapSix(six: Six, change: (value: number, index: number) => number): Six {
  return [
    change(six[0], 0),
    change(six[1], 1),
    change(six[2], 2),
    change(six[3], 3),
    change(six[4], 4),
    change(six[5], 5),
  ]
}
