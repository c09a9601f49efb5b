import type { SolidGrid } from './types.ts'

/** Which cells hang together. */
export interface CellBodies {
  /** By cell: its body from 1, over faces alone; 0 where it is empty. */
  readonly bodyOf: Int32Array
  /** Cells of each body; entry 0 is none's. */
  readonly cells: readonly number[]
}

/**
 * Cells that share a face are one body. Two that share an edge or a corner only are not: on the
 * grid they would turn about it like a hinge, whatever the part does there.
 */
export function cellBodies({ linesMm, cells }: Pick<SolidGrid, 'linesMm' | 'cells'>): CellBodies {
  const [nx, ny, nz] = linesMm.map((lines) => lines.length - 1) as [number, number, number]
  const bodyOf = new Int32Array(cells.length)
  const counts = [0]
  const open: number[] = []
  const reach = (cell: number, body: number): void => {
    if (cells[cell] === 0 || bodyOf[cell] !== 0) return
    bodyOf[cell] = body
    counts[body]!++
    open.push(cell)
  }
  for (let seed = 0; seed < cells.length; seed++) {
    if (cells[seed] === 0 || bodyOf[seed] !== 0) continue
    const body = counts.push(0) - 1
    reach(seed, body)
    for (let cell = open.pop(); cell !== undefined; cell = open.pop()) {
      const x = cell % nx
      const y = Math.floor(cell / nx) % ny
      const z = Math.floor(cell / (nx * ny))
      if (x > 0) reach(cell - 1, body)
      if (x + 1 < nx) reach(cell + 1, body)
      if (y > 0) reach(cell - nx, body)
      if (y + 1 < ny) reach(cell + nx, body)
      if (z > 0) reach(cell - nx * ny, body)
      if (z + 1 < nz) reach(cell + nx * ny, body)
    }
  }
  return { bodyOf, cells: counts }
}

/** The grid with the cells of some bodies alone. */
export function keepBodies(
  grid: SolidGrid,
  { bodyOf }: CellBodies,
  kept: ReadonlySet<number>,
): SolidGrid {
  const cells = grid.cells.map((row, cell) => (kept.has(bodyOf[cell]!) ? row : 0))
  return { ...grid, cells }
}
