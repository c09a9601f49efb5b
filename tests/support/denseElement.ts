import type { Elastic } from '../../src/core/stiffness/moduli/elastic.ts'

/**
 * The 24 × 24 stiffness of a box of sides `size`, the slow way: trilinear shape functions and the
 * nine modes 1 − ξ², 1 − η², 1 − ζ² of u, v and w, integrated with Gauss points (three a side, so
 * that no square is missed), and the nine condensed. Nodes with x fastest, u, v, w each.
 */
export function denseStiffness(size: readonly number[], elastic: Elastic): number[][] {
  const { c11, c22, c33, c12, c13, c23, g12, g13, g23 } = elastic
  const hooke = [
    [c11, c12, c13, 0, 0, 0],
    [c12, c22, c23, 0, 0, 0],
    [c13, c23, c33, 0, 0, 0],
    [0, 0, 0, g12, 0, 0],
    [0, 0, 0, 0, g13, 0],
    [0, 0, 0, 0, 0, g23],
  ]
  const points = [
    [-Math.sqrt(0.6), 5 / 9],
    [0, 8 / 9],
    [Math.sqrt(0.6), 5 / 9],
  ] as const
  const matrix = Array.from({ length: 33 }, () => Array.from({ length: 33 }, () => 0))
  const volume = size.reduce((a, b) => a * b) / 8
  for (const [r, wr] of points) {
    for (const [s, ws] of points) {
      for (const [t, wt] of points) {
        const at = [r, s, t]
        const slopes = [
          ...Array.from({ length: 8 }, (_, n) => cornerSlope(n, at)),
          ...[0, 1, 2].map((k) => [0, 1, 2].map((j) => (j === k ? -2 * at[k]! : 0))),
        ].map((slope) => slope.map((value, k) => (value * 2) / size[k]!))
        const columns = slopes.flatMap((slope) => [0, 1, 2].map((k) => strainOf(slope, k)))
        const stress = columns.map((e) =>
          hooke.map((row) => row.reduce((a, c, i) => a + c * e[i]!, 0)),
        )
        for (let i = 0; i < 33; i++) {
          for (let j = 0; j < 33; j++) {
            const work = columns[i]!.reduce((a, e, k) => a + e * stress[j]![k]!, 0)
            matrix[i]![j]! += volume * wr * ws * wt * work
          }
        }
      }
    }
  }
  for (let k = 32; k >= 24; k--) {
    for (let i = 0; i < k; i++) {
      const share = matrix[i]![k]! / matrix[k]![k]!
      for (let j = 0; j < k; j++) matrix[i]![j]! -= share * matrix[k]![j]!
    }
  }
  return matrix.slice(0, 24).map((row) => row.slice(0, 24))
}

function cornerSlope(corner: number, at: readonly number[]): number[] {
  const signs = [corner & 1, (corner >> 1) & 1, corner >> 2].map((bit) => (bit === 1 ? 1 : -1))
  return [0, 1, 2].map((k) =>
    signs.reduce((value, sign, j) => value * (j === k ? sign : 1 + sign * at[j]!), 1 / 8),
  )
}

/** xx, yy, zz, xy, xz, yz of a field that moves along axis k alone. */
function strainOf([x = 0, y = 0, z = 0]: readonly number[], k: number): number[] {
  if (k === 0) return [x, 0, 0, y, z, 0]
  if (k === 1) return [0, y, 0, x, 0, z]
  return [0, 0, z, 0, x, y]
}
