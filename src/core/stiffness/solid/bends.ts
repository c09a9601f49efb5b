import type { Field, Level } from './types.ts'

/**
 * What bending cells put between their corners, added to a transfer of straight lines; and its
 * transpose.
 */
export interface Bends {
  readonly addFine: (coarse: Field, fine: Field) => void
  readonly addCoarse: (fine: Field, coarse: Field) => void
}

/** Fine nodes in a coarse cell, its ends among them, x fastest. */
const STRIDE = 27

/**
 * A cell that bends is curved between its corners: where u goes with x·y, v goes with 1 − x²
 * besides (the incompatible modes of `applyLevel`, which free it of shear). Without that a coarse
 * bend is far too stiff on the fine level, whose nodes it puts on straight lines. Nodes that
 * several coarse cells share take their mean. A solid arm takes 8 steps for 13, a hollow one 68 for
 * 84, a plate 41 for 69.
 */
export function createBends(fine: Level, coarse: Level): Bends {
  const cells = coarse.rowOf.length
  const inside = new Int32Array(STRIDE * cells).fill(-1)
  const corners = new Int32Array(8 * cells)
  const ratio = new Float64Array(6 * cells)
  const bulge = new Float64Array(3 * cells)
  const shared = new Float64Array(fine.nodes)
  const firsts = fine.linesMm.map((lines, k) => firstLines(lines, coarse.linesMm[k]!))
  const [fx, fy] = [fine.size[0] + 1, fine.size[1] + 1]
  let cell = 0
  for (let run = 0; run < coarse.runs.length; run += 8) {
    for (let i = 0; i < coarse.runs[run + 3]!; i++, cell++) {
      const at = [coarse.runs[run]! + i, coarse.runs[run + 1]!, coarse.runs[run + 2]!] as const
      for (let edge = 0; edge < 4; edge++) {
        corners[8 * cell + 2 * edge] = coarse.runs[run + 4 + edge]! + i
        corners[8 * cell + 2 * edge + 1] = coarse.runs[run + 4 + edge]! + i + 1
      }
      const sides = at.map((j, k) => coarse.linesMm[k]![j + 1]! - coarse.linesMm[k]![j]!)
      const [dx, dy, dz] = sides as [number, number, number]
      ratio.set(
        [dx / dy, dx / dz, dy / dx, dy / dz, dz / dx, dz / dy].map((r) => r / 16),
        6 * cell,
      )
      const lines = at.map((j, k) => {
        const [low, high] = [firsts[k]![j]!, firsts[k]![j + 1]!]
        const all = fine.linesMm[k]!
        if (high - low === 2) {
          const on = (2 * (all[low + 1]! - all[low]!)) / (all[high]! - all[low]!) - 1
          bulge[3 * cell + k] = 1 - on * on
        }
        return [low, high - low === 2 ? low + 1 : -1, high] as const
      })
      for (let z = 0; z < 3; z++) {
        for (let y = 0; y < 3; y++) {
          for (let x = 0; x < 3; x++) {
            if (x !== 1 && y !== 1 && z !== 1) continue
            const [lx, ly, lz] = [lines[0]![x]!, lines[1]![y]!, lines[2]![z]!]
            if (lx < 0 || ly < 0 || lz < 0) continue
            const node = fine.nodeAt[lx + fx * (ly + fy * lz)]!
            if (node < 0) continue
            inside[STRIDE * cell + x + 3 * y + 9 * z] = node
            shared[node]!++
          }
        }
      }
    }
  }
  const share = shared.map((count) => (count > 0 ? 1 / count : 0))
  return {
    addFine(from, to) {
      for (let c = 0; c < cells; c++) {
        // Sums over the corners with the signs of the modes u·xy, u·xz, v·xy, v·yz, w·xz, w·yz.
        let uxy = 0
        let uxz = 0
        let vxy = 0
        let vyz = 0
        let wxz = 0
        let wyz = 0
        for (let n = 0; n < 8; n++) {
          const at = 3 * corners[8 * c + n]!
          const [x, y, z] = [(n & 1) * 2 - 1, (n & 2) - 1, (n >> 2) * 2 - 1]
          uxy += x * y * from[at]!
          uxz += x * z * from[at]!
          vxy += x * y * from[at + 1]!
          vyz += y * z * from[at + 1]!
          wxz += x * z * from[at + 2]!
          wyz += y * z * from[at + 2]!
        }
        const r = 6 * c
        const [bx, by, bz] = [bulge[3 * c]!, bulge[3 * c + 1]!, bulge[3 * c + 2]!]
        const vx = bx * ratio[r]! * uxy
        const wx = bx * ratio[r + 1]! * uxz
        const uy = by * ratio[r + 2]! * vxy
        const wy = by * ratio[r + 3]! * vyz
        const uz = bz * ratio[r + 4]! * wxz
        const vz = bz * ratio[r + 5]! * wyz
        for (let k = 0; k < STRIDE; k++) {
          const node = inside[STRIDE * c + k]!
          if (node < 0) continue
          const w = share[node]!
          const isX = k % 3 === 1
          const isY = ((k / 3) | 0) % 3 === 1
          const isZ = k >= 9 && k < 18
          to[3 * node]! += w * ((isY ? uy : 0) + (isZ ? uz : 0))
          to[3 * node + 1]! += w * ((isX ? vx : 0) + (isZ ? vz : 0))
          to[3 * node + 2]! += w * ((isX ? wx : 0) + (isY ? wy : 0))
        }
      }
    },
    addCoarse(from, to) {
      for (let c = 0; c < cells; c++) {
        let vx = 0
        let wx = 0
        let uy = 0
        let wy = 0
        let uz = 0
        let vz = 0
        for (let k = 0; k < STRIDE; k++) {
          const node = inside[STRIDE * c + k]!
          if (node < 0) continue
          const w = share[node]!
          const [u, v, t] = [w * from[3 * node]!, w * from[3 * node + 1]!, w * from[3 * node + 2]!]
          if (k % 3 === 1) {
            vx += v
            wx += t
          }
          if (((k / 3) | 0) % 3 === 1) {
            uy += u
            wy += t
          }
          if (k >= 9 && k < 18) {
            uz += u
            vz += v
          }
        }
        const r = 6 * c
        const [bx, by, bz] = [bulge[3 * c]!, bulge[3 * c + 1]!, bulge[3 * c + 2]!]
        const uxy = bx * ratio[r]! * vx
        const uxz = bx * ratio[r + 1]! * wx
        const vxy = by * ratio[r + 2]! * uy
        const vyz = by * ratio[r + 3]! * wy
        const wxz = bz * ratio[r + 4]! * uz
        const wyz = bz * ratio[r + 5]! * vz
        for (let n = 0; n < 8; n++) {
          const at = 3 * corners[8 * c + n]!
          const [x, y, z] = [(n & 1) * 2 - 1, (n & 2) - 1, (n >> 2) * 2 - 1]
          to[at]! += x * y * uxy + x * z * uxz
          to[at + 1]! += x * y * vxy + y * z * vyz
          to[at + 2]! += x * z * wxz + y * z * wyz
        }
      }
    },
  }
}

/** By coarse line: the fine line it is. */
function firstLines(fine: Float64Array, coarse: Float64Array): Int32Array {
  let line = 0
  return Int32Array.from(coarse, (at) => {
    while (fine[line]! < at - 1e-9) line++
    return line
  })
}
