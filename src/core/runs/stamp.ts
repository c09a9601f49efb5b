import { sineCosine, turnedBox } from './hull.ts'
import type { PieceOutline, Stamp } from './types.ts'

/** Of the bed's cells, in which pieces are laid. */
export const BED_CELL_MM = 1
const STEP_DEG = 15
/** Rounding of coordinates in a file must not cost a cell. */
const SLACK = 1e-6

/**
 * The turns a piece is tried at: every 15°, the four in which its box is smallest, and the middle
 * of those at which it goes on the bed at all where none of these does.
 */
function turnsOf({ hullMm }: PieceOutline, brimMm: number, usableMm: readonly [number, number]) {
  const steps = Array.from({ length: 360 / STEP_DEG }, (_, i) => i * STEP_DEG)
  let least = Infinity
  let leastDeg = 0
  const fitting: number[] = []
  for (let deg = 0; deg < 180; deg += 0.5) {
    const { widthMm, depthMm } = turnedBox(hullMm, deg)
    if (deg < 90 && widthMm * depthMm < least * (1 - 1e-9)) {
      least = widthMm * depthMm
      leastDeg = deg
    }
    if (fitsTurned(hullMm, brimMm, usableMm, deg)) fitting.push(deg)
  }
  const all = [...steps, ...[0, 90, 180, 270].map((quarter) => leastDeg + quarter)]
  const boxes = all.filter((deg) => fitsTurned(hullMm, brimMm, usableMm, deg))
  const middle = fitting[Math.floor(fitting.length / 2)]
  return [...new Set(boxes.length > 0 || middle === undefined ? boxes : [middle, middle + 180])]
}

/** Whether a hull with its brim goes on what of a bed may be used, at this turn. */
export function fitsTurned(
  hullMm: Float64Array,
  brimMm: number,
  [wideMm, deepMm]: readonly [number, number],
  turnDeg: number,
): boolean {
  const { widthMm, depthMm } = turnedBox(hullMm, turnDeg)
  return widthMm + 2 * brimMm <= wideMm + SLACK && depthMm + 2 * brimMm <= deepMm + SLACK
}

/** What was made of an outline last: the same pieces are laid again and again. */
const kept = new WeakMap<
  PieceOutline,
  { readonly key: string; readonly stamps: readonly Stamp[] }
>()

/** A piece at every turn it is tried at, those that come to the same left out. */
export function stampsOf(
  outline: PieceOutline,
  brimMm: number,
  usableMm: readonly [number, number],
): readonly Stamp[] {
  const key = [brimMm, ...usableMm].join(' ')
  const known = kept.get(outline)
  if (known?.key === key) return known.stamps
  const turned = turnsOf(outline, brimMm, usableMm).map((deg) => stampOf(outline, brimMm, deg))
  const stamps = turned.filter((one, i) => !turned.slice(0, i).some((other) => isAlike(one, other)))
  kept.set(outline, { key, stamps })
  return stamps
}

/** As a square is after a quarter turn. */
function isAlike(a: Stamp, b: Stamp): boolean {
  return (
    a.across === b.across &&
    a.down === b.down &&
    a.runs.every((runs, row) => {
      const others = b.runs[row]
      return runs.length === others?.length && runs.every((cell, i) => cell === others[i])
    })
  )
}

/** A piece turned, in cells of the bed: every cell that it or its brim may reach into. */
function stampOf(outline: PieceOutline, brimMm: number, turnDeg: number): Stamp {
  const { minX, minY, widthMm, depthMm } = turnedBox(outline.hullMm, turnDeg)
  const sizeMm = [widthMm + 2 * brimMm, depthMm + 2 * brimMm] as const
  const originMm = [brimMm - minX, brimMm - minY] as const
  const across = Math.max(1, Math.ceil(sizeMm[0] / BED_CELL_MM - SLACK))
  const down = Math.max(1, Math.ceil(sizeMm[1] / BED_CELL_MM - SLACK))
  const cells = new Uint8Array(across * down)
  const [sine, cosine] = sineCosine(turnDeg)
  // A turned cell lies within this of its middle, along x and along y.
  const reach = (outline.cellMm * (Math.abs(sine) + Math.abs(cosine))) / 2
  const [lastX, lastY] = [across - 1, down - 1]
  // Tens of thousands of cells, each a box of one to four of the bed's, at two dozen turns: no
  // calls, no lists.
  for (let row = 0; row < outline.down; row++) {
    const py = outline.fromMm[1] + (row + 0.5) * outline.cellMm
    // The box before: cells in a row often reach into the same ones.
    let [wasFrom, wasTo, wasFirst, wasLast] = [-1, -1, -1, -1]
    for (let column = 0; column < outline.across; column++) {
      if (outline.cells[row * outline.across + column] !== 1) continue
      const px = outline.fromMm[0] + (column + 0.5) * outline.cellMm
      const x = cosine * px - sine * py + originMm[0]
      const y = sine * px + cosine * py + originMm[1]
      const from = clampedTo(lastX, Math.floor((x - reach) / BED_CELL_MM + SLACK))
      const to = clampedTo(lastX, Math.ceil((x + reach) / BED_CELL_MM - SLACK) - 1)
      const first = clampedTo(lastY, Math.floor((y - reach) / BED_CELL_MM + SLACK))
      const last = clampedTo(lastY, Math.ceil((y + reach) / BED_CELL_MM - SLACK) - 1)
      if (from === wasFrom && to === wasTo && first === wasFirst && last === wasLast) continue
      wasFrom = from
      wasTo = to
      wasFirst = first
      wasLast = last
      for (let j = first; j <= last; j++) for (let i = from; i <= to; i++) cells[j * across + i] = 1
    }
  }
  const grown = brimMm > 0 ? grow(cells, across, down, brimMm) : cells
  const runs = Array.from({ length: down }, (_, row) => runsOf(grown, across, row))
  return { turnDeg, sizeMm, originMm, across, down, runs }
}

function clampedTo(most: number, value: number): number {
  return value < 0 ? 0 : value > most ? most : value
}

/**
 * For each step to the next row and beyond, how many cells to either side lie nearer than `gapMm`
 * to a cell: pairs of rows and cells.
 */
export function nearCells(gapMm: number): readonly (readonly [rows: number, cells: number])[] {
  const near: (readonly [number, number])[] = []
  const gap = gapMm / BED_CELL_MM
  const most = Math.ceil(gap - SLACK)
  for (let rows = -most; rows <= most; rows++) {
    const away = Math.max(0, Math.abs(rows) - 1)
    if (away >= gap - SLACK) continue
    near.push([rows, Math.ceil(Math.sqrt(gap ** 2 - away ** 2) - SLACK)])
  }
  return near
}

function grow(cells: Uint8Array, across: number, down: number, byMm: number): Uint8Array {
  const grown = cells.slice()
  const near = nearCells(byMm)
  for (let row = 0; row < down; row++) {
    const runs = runsOf(cells, across, row)
    for (let i = 0; i + 1 < runs.length; i += 2) {
      for (const [rows, side] of near) {
        const to = row + rows
        if (to < 0 || to >= down) continue
        const from = Math.max(0, (runs[i] ?? 0) - side)
        const past = Math.min(across, (runs[i + 1] ?? 0) + side)
        grown.fill(1, to * across + from, to * across + past)
      }
    }
  }
  return grown
}

function runsOf(cells: Uint8Array, across: number, row: number): Uint16Array {
  const runs: number[] = []
  const start = row * across
  for (let column = 0; column <= across; column++) {
    const is = column < across && cells[start + column] === 1
    const inside = runs.length % 2 === 1
    if (is !== inside) runs.push(column)
  }
  return Uint16Array.from(runs)
}
