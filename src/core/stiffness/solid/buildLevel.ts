import { writeModes } from './modeTable.ts'
import type { Level, SolidGrid } from './types.ts'
import { MODE_STRIDE } from './types.ts'

/** Numbers the nodes and rows of a grid's full cells. */
export function buildLevel({ linesMm, cells, moduli }: SolidGrid): Level {
  const table = new Float64Array(moduli.length * MODE_STRIDE)
  moduli.forEach((elastic, row) => writeModes(table, row, elastic))
  return numberLevel(
    linesMm,
    Int32Array.from(cells, (row) => row - 1),
    table,
  )
}

/** `rows` by cell, x fastest; −1 where it is empty. */
export function numberLevel(
  linesMm: SolidGrid['linesMm'],
  rows: Int32Array,
  table: Float64Array,
): Level {
  const [nx, ny, nz] = linesMm.map((lines) => lines.length - 1) as [number, number, number]
  const across = nx + 1
  const sheet = across * (ny + 1)
  const nodeAt = new Int32Array(sheet * (nz + 1)).fill(-1)
  let full = 0
  let runCount = 0
  eachFullCell(rows, [nx, ny, nz], (_row, [x, y, z], opensRun) => {
    full++
    if (opensRun) runCount++
    const at = x + across * y + sheet * z
    for (const corner of [at, at + across, at + sheet, at + across + sheet]) {
      nodeAt[corner] = 0
      nodeAt[corner + 1] = 0
    }
  })
  const { nodes, lineOf } = numberNodes(nodeAt, across, ny + 1)
  const runs = new Int32Array(runCount * 8)
  const rowOf = new Int32Array(full)
  let run = -8
  full = 0
  eachFullCell(rows, [nx, ny, nz], (row, [x, y, z], opensRun) => {
    if (opensRun) {
      run += 8
      const at = x + across * y + sheet * z
      runs.set([x, y, z, 0], run)
      runs[run + 4] = nodeAt[at]!
      runs[run + 5] = nodeAt[at + across]!
      runs[run + 6] = nodeAt[at + sheet]!
      runs[run + 7] = nodeAt[at + across + sheet]!
    }
    runs[run + 3]!++
    rowOf[full++] = row
  })
  return { linesMm, size: [nx, ny, nz], nodes, nodeAt, lineOf, runs, rowOf, table }
}

/**
 * Cells that are not empty, x fastest; `opensRun` for the first of those that stand side by side
 * along x.
 */
function eachFullCell(
  rows: ArrayLike<number>,
  [nx, ny, nz]: readonly [number, number, number],
  tell: (row: number, place: readonly [x: number, y: number, z: number], opensRun: boolean) => void,
): void {
  for (let z = 0, cell = 0; z < nz; z++) {
    for (let y = 0; y < ny; y++) {
      let before = -1
      for (let x = 0; x < nx; x++, cell++) {
        const row = rows[cell]!
        if (row >= 0) tell(row, [x, y, z], before < 0)
        before = row
      }
    }
  }
}

/** Numbers what is not −1, in order. */
function numberNodes(nodeAt: Int32Array, across: number, deep: number) {
  let nodes = 0
  for (let at = 0; at < nodeAt.length; at++) if (nodeAt[at] === 0) nodeAt[at] = nodes++
  const lineOf = new Uint16Array(3 * nodes)
  for (let at = 0; at < nodeAt.length; at++) {
    const node = nodeAt[at]!
    if (node < 0) continue
    lineOf[3 * node] = at % across
    lineOf[3 * node + 1] = Math.floor(at / across) % deep
    lineOf[3 * node + 2] = Math.floor(at / (across * deep))
  }
  return { nodes, lineOf }
}
