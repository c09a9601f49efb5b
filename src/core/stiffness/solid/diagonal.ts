import type { Field, Level } from './types.ts'
import { MODE_STRIDE } from './types.ts'

/** The diagonal of a level's stiffness, N/mm: all corners of a cell have the same share of it. */
export function diagonalOf({ linesMm, nodes, runs, rowOf, table }: Level): Field {
  const [xs, ys, zs] = linesMm
  const diagonal = new Float64Array(3 * nodes)
  let cell = 0
  for (let run = 0; run < runs.length; run += 8) {
    const y = runs[run + 1]!
    const z = runs[run + 2]!
    const dy = ys[y + 1]! - ys[y]!
    const dz = zs[z + 1]! - zs[z]!
    const yy = (2 / dy) ** 2
    const zz = (2 / dz) ** 2
    for (let i = 0; i < runs[run + 3]!; i++) {
      const x = runs[run]! + i
      const dx = xs[x + 1]! - xs[x]!
      const xx = (2 / dx) ** 2
      const m = rowOf[cell++]! * MODE_STRIDE
      const v = (dx * dy * dz) / 64
      const g12 = table[m + 6]!
      const g13 = table[m + 7]!
      const g23 = table[m + 8]!
      const u = table[m]! * xx * (10 / 9) + (table[m + 12]! + table[m + 15]!) * (xx / 3)
      const w = table[m + 1]! * yy * (10 / 9) + (table[m + 9]! + table[m + 17]!) * (yy / 3)
      const t = table[m + 2]! * zz * (10 / 9) + (table[m + 11]! + table[m + 14]!) * (zz / 3)
      const sums = [
        v * (u + (13 / 9) * (g12 * yy + g13 * zz)),
        v * (w + (13 / 9) * (g12 * xx + g23 * zz)),
        v * (t + (13 / 9) * (g13 * xx + g23 * yy)),
      ] as const
      for (let edge = 4; edge < 8; edge++) {
        const at = 3 * (runs[run + edge]! + i)
        for (let k = 0; k < 3; k++) {
          diagonal[at + k]! += sums[k]!
          diagonal[at + 3 + k]! += sums[k]!
        }
      }
    }
  }
  return diagonal
}
