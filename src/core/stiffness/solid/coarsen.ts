import { numberLevel } from './buildLevel.ts'
import { relax } from './modeTable.ts'
import type { Level } from './types.ts'
import { MODE_STRIDE } from './types.ts'

/** Axes whose cells are at most so many times as long as the shortest side are halved together. */
const NEARLY_CUBES = 1.5

/**
 * The level of cells twice as long where cells are shortest, so that they tend to cubes; null where
 * one cell is left.
 */
export function coarsen(level: Level): Level | null {
  const { size, linesMm } = level
  const sides = linesMm.map((lines, k) => (lines.at(-1)! - lines[0]!) / size[k]!)
  const shortest = Math.min(...sides.filter((_, k) => size[k]! > 1))
  const halved = sides.map((side, k) => size[k]! > 1 && side <= NEARLY_CUBES * shortest)
  if (!halved.includes(true)) return null
  const lines = linesMm.map((all, k) => (halved[k] ? everySecond(all) : all))
  const coarse = lines as unknown as Level['linesMm']
  const { rows, table } = averageCells(level, coarse, halved)
  return numberLevel(coarse, rows, table)
}

function everySecond(lines: Float64Array): Float64Array {
  const last = lines.length - 1
  return Float64Array.from({ length: Math.ceil(last / 2) + 1 }, (_, i) =>
    i * 2 < last ? lines[i * 2]! : lines[last]!,
  )
}

/** Each coarse cell holds the mean moduli of its volume, emptiness among it. */
function averageCells(level: Level, coarse: Level['linesMm'], halved: readonly boolean[]) {
  const [xs, ys, zs] = level.linesMm
  const [nx, ny, nz] = coarse.map((lines) => lines.length - 1) as [number, number, number]
  const rows = new Int32Array(nx * ny * nz).fill(-1)
  const shift = halved.map((half) => (half ? 1 : 0))
  const sums = new Float64Array(Math.min(nx * ny * nz, level.rowOf.length) * MODE_STRIDE)
  let count = 0
  let cell = 0
  for (let run = 0; run < level.runs.length; run += 8) {
    const [x0, y, z] = [level.runs[run]!, level.runs[run + 1]!, level.runs[run + 2]!]
    const face = (ys[y + 1]! - ys[y]!) * (zs[z + 1]! - zs[z]!)
    const base = nx * ((y >> shift[1]!) + ny * (z >> shift[2]!))
    for (let i = 0; i < level.runs[run + 3]!; i++) {
      const x = x0 + i
      const at = base + (x >> shift[0]!)
      if (rows[at]! < 0) rows[at] = count++
      const to = rows[at]! * MODE_STRIDE
      const from = level.rowOf[cell++]! * MODE_STRIDE
      const volume = (xs[x + 1]! - xs[x]!) * face
      for (let k = 0; k < 9; k++) sums[to + k]! += volume * level.table[from + k]!
    }
  }
  const table = sums.slice(0, count * MODE_STRIDE)
  const [cx, cy, cz] = coarse
  for (let z = 0, at = 0; z < nz; z++) {
    for (let y = 0; y < ny; y++) {
      for (let x = 0; x < nx; x++, at++) {
        const row = rows[at]!
        if (row < 0) continue
        const volume = (cx[x + 1]! - cx[x]!) * (cy[y + 1]! - cy[y]!) * (cz[z + 1]! - cz[z]!)
        for (let k = 0; k < 9; k++) table[row * MODE_STRIDE + k]! /= volume
        relax(table, row)
      }
    }
  }
  return { rows, table }
}
