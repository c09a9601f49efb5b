import { createBends } from './bends.ts'
import type { Field, Level } from './types.ts'

/**
 * Interpolation from a coarse level's nodes to a fine one's, and its transpose: straight lines, and
 * bends.
 */
export interface Transfer {
  /** Adds what coarse moves are on the fine nodes. */
  readonly addFine: (coarse: Field, fine: Field) => void
  /** Sums fine forces up on the coarse nodes. */
  readonly toCoarse: (fine: Field, coarse: Field) => void
  /** The same for springs on single directions: shares count squared. */
  readonly springsToCoarse: (fine: Field, coarse: Field) => void
}

export function createTransfer(fine: Level, coarse: Level): Transfer {
  const axes = fine.linesMm.map((lines, k) => axisShares(lines, coarse.linesMm[k]!))
  const [x, y, z] = axes as [AxisShares, AxisShares, AxisShares]
  const across = coarse.size[0] + 1
  const sheet = across * (coarse.size[1] + 1)
  const { lineOf, nodes } = fine
  const { nodeAt } = coarse
  // Up to eight coarse nodes a fine one, those of no weight left out.
  const start = new Int32Array(nodes + 1)
  const at = new Int32Array(8 * nodes)
  const share = new Float64Array(8 * nodes)
  let count = 0
  for (let node = 0; node < nodes; node++) {
    const [i, j, k] = [lineOf[3 * node]!, lineOf[3 * node + 1]!, lineOf[3 * node + 2]!]
    for (let corner = 0; corner < 8; corner++) {
      const [r, s, t] = [corner & 1, (corner >> 1) & 1, corner >> 2]
      const weight = weightOf(x, i, r) * weightOf(y, j, s) * weightOf(z, k, t)
      if (weight === 0) continue
      at[count] = nodeAt[x.below[i]! + r + across * (y.below[j]! + s) + sheet * (z.below[k]! + t)]!
      share[count++] = weight
    }
    start[node + 1] = count
  }
  const gather = (from: Field, to: Field, power: 1 | 2): void => {
    to.fill(0)
    for (let node = 0; node < nodes; node++) {
      const [u, v, w] = [from[3 * node]!, from[3 * node + 1]!, from[3 * node + 2]!]
      for (let c = start[node]!; c < start[node + 1]!; c++) {
        const into = 3 * at[c]!
        const weight = power === 1 ? share[c]! : share[c]! ** 2
        to[into]! += weight * u
        to[into + 1]! += weight * v
        to[into + 2]! += weight * w
      }
    }
  }
  const bends = createBends(fine, coarse)
  return {
    addFine(from, to) {
      bends.addFine(from, to)
      for (let node = 0; node < nodes; node++) {
        let u = 0
        let v = 0
        let w = 0
        for (let c = start[node]!; c < start[node + 1]!; c++) {
          const source = 3 * at[c]!
          const weight = share[c]!
          u += weight * from[source]!
          v += weight * from[source + 1]!
          w += weight * from[source + 2]!
        }
        to[3 * node]! += u
        to[3 * node + 1]! += v
        to[3 * node + 2]! += w
      }
    },
    toCoarse(from, to) {
      gather(from, to, 1)
      bends.addCoarse(from, to)
    },
    springsToCoarse: (from, to) => gather(from, to, 2),
  }
}

interface AxisShares {
  /** By fine line: the coarse line at or below it, but never the last. */
  readonly below: Int32Array
  /** How far it is on towards the next, 0–1. */
  readonly on: Float64Array
}

const weightOf = ({ on }: AxisShares, line: number, upper: number): number =>
  upper === 1 ? on[line]! : 1 - on[line]!

function axisShares(fine: Float64Array, coarse: Float64Array): AxisShares {
  const below = new Int32Array(fine.length)
  const on = new Float64Array(fine.length)
  let line = 0
  fine.forEach((at, i) => {
    while (line + 2 < coarse.length && coarse[line + 1]! <= at) line++
    below[i] = line
    on[i] = (at - coarse[line]!) / (coarse[line + 1]! - coarse[line]!)
  })
  return { below, on }
}
