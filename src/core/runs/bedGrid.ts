import { BED_CELL_MM, nearCells } from './stamp.ts'
import type { Stamp } from './types.ts'

/** A bed in cells, one bit each, with the least corner of its usable part as origin. */
export interface BedGrid {
  readonly across: number
  readonly down: number
  readonly words: number
  /**
   * Level k tells of a cell whether it or one of the 2^k − 1 to its right is taken, so that a run
   * of any length is asked for in two steps.
   */
  readonly levels: readonly Uint32Array[]
  readonly isBare: Uint8Array
}

export function emptyGrid([wide, deep]: readonly [number, number]): BedGrid {
  const across = Math.max(0, Math.floor(wide / BED_CELL_MM + 1e-6))
  const down = Math.max(0, Math.floor(deep / BED_CELL_MM + 1e-6))
  const words = Math.max(1, Math.ceil(across / 32))
  const count = Math.max(1, Math.ceil(Math.log2(across + 1)))
  return {
    across,
    down,
    words,
    levels: Array.from({ length: count }, () => new Uint32Array(words * down)),
    isBare: new Uint8Array(down).fill(1),
  }
}

/** Takes the cells of a stamp and all that are nearer to them than `gapMm`. */
export function occupyCells(
  grid: BedGrid,
  stamp: Stamp,
  x: number,
  y: number,
  gapMm: number,
): void {
  const taken = grid.levels[0]
  if (taken === undefined) return
  const near = nearCells(gapMm)
  const pairs = near.length > 0 ? near : [[0, 0] as const]
  const changed = new Set<number>()
  stamp.runs.forEach((runs, r) => {
    for (let i = 0; i + 1 < runs.length; i += 2) {
      for (const [rows, side] of pairs) {
        const row = y + r + rows
        if (row < 0 || row >= grid.down) continue
        const from = Math.max(0, x + (runs[i] ?? 0) - side)
        const past = Math.min(grid.across, x + (runs[i + 1] ?? 0) + side)
        setBits(taken, row * grid.words, from, past)
        changed.add(row)
      }
    }
  })
  for (const row of changed) {
    grid.isBare[row] = 0
    grid.levels.forEach((level, k) => {
      const next = grid.levels[k + 1]
      if (next === undefined) return
      const at = row * grid.words
      for (let w = at; w < at + grid.words; w++) next[w] = level[w] ?? 0
      addShifted(next, at, level, at, grid.words, 2 ** k)
    })
  }
}

/**
 * Lowest, then leftmost cell from `leastY` to `mostY` at which a stamp lies free; null where there
 * is none.
 */
export function lowestSpot(
  grid: BedGrid,
  stamp: Stamp,
  leastY = 0,
  mostY = Infinity,
): readonly [x: number, y: number] | null {
  const lastX = grid.across - stamp.across
  const lastY = Math.min(grid.down - stamp.down, mostY)
  if (lastX < 0) return null
  const blocked = new Uint32Array(grid.words)
  for (let y = leastY; y <= lastY; y++) {
    const x = freeAt(grid, stamp, y, lastX, blocked)
    if (x >= 0) return [x, y]
  }
  return null
}

/** Highest, then leftmost cell at which a stamp lies free, no lower than `leastY`. */
export function highestSpot(
  grid: BedGrid,
  stamp: Stamp,
  leastY: number,
): readonly [x: number, y: number] | null {
  const lastX = grid.across - stamp.across
  if (lastX < 0) return null
  const blocked = new Uint32Array(grid.words)
  for (let y = grid.down - stamp.down; y >= leastY; y--) {
    const x = freeAt(grid, stamp, y, lastX, blocked)
    if (x >= 0) return [x, y]
  }
  return null
}

/** Where each pass over a stamp's rows begins. */
const ROWS_APART = [0, 8, 4, 12, 2, 10, 6, 14, 1, 9, 5, 13, 3, 11, 7, 15]

/** Leftmost free cell of a row, −1 where there is none. */
function freeAt(
  grid: BedGrid,
  { runs, down }: Stamp,
  y: number,
  lastX: number,
  blocked: Uint32Array,
): number {
  const { words, levels, isBare } = grid
  // Of a piece nearly as wide as the bed only the first places matter.
  const wanted = (lastX >>> 5) + 1
  blocked.fill(0, 0, wanted)
  // Rows far apart first: neighbours mostly block the same places, and most places are found taken
  // long before the end.
  for (const first of ROWS_APART) {
    for (let r = first; r < down; r += ROWS_APART.length) {
      if (isBare[y + r] === 1) continue
      const own = runs[r]
      if (own === undefined) continue
      for (let i = 0; i + 1 < own.length; i += 2) {
        const from = own[i] ?? 0
        const length = (own[i + 1] ?? 0) - from
        const k = 31 - Math.clz32(length)
        const level = levels[k]
        if (level === undefined) return -1
        const rest = length - (1 << k)
        addShifted(blocked, 0, level, (y + r) * words, words, from, wanted)
        if (rest > 0) addShifted(blocked, 0, level, (y + r) * words, words, from + rest, wanted)
      }
    }
    if (firstClear(blocked, lastX) < 0) return -1
  }
  return firstClear(blocked, lastX)
}

function firstClear(bits: Uint32Array, last: number): number {
  for (let w = 0; w * 32 <= last; w++) {
    const clear = ~(bits[w] ?? 0)
    if (clear === 0) continue
    const x = w * 32 + 31 - Math.clz32(clear & -clear)
    return x <= last ? x : -1
  }
  return -1
}

/** to[i] |= from[i + by], bit by bit, in the first `wanted` words. */
function addShifted(
  to: Uint32Array,
  toAt: number,
  from: Uint32Array,
  fromAt: number,
  words: number,
  by: number,
  wanted = words,
): void {
  const whole = by >>> 5
  const rest = by & 31
  const end = Math.min(wanted, words - whole)
  const at = fromAt + whole
  // Each word is read once: what was high is low next.
  let low = from[at] ?? 0
  for (let w = 0; w < end; w++) {
    const high = w + whole + 1 < words ? (from[at + w + 1] ?? 0) : 0
    to[toAt + w] = (to[toAt + w] ?? 0) | (rest === 0 ? low : (low >>> rest) | (high << (32 - rest)))
    low = high
  }
}

function setBits(bits: Uint32Array, at: number, from: number, past: number): void {
  for (let w = from >>> 5; w * 32 < past; w++) {
    const low = Math.max(0, from - w * 32)
    const high = Math.min(32, past - w * 32)
    if (high <= low) continue
    const mask = high - low === 32 ? 0xffffffff : ((2 ** (high - low) - 1) << low) >>> 0
    bits[at + w] = (bits[at + w] ?? 0) | mask
  }
}
