import type { Elastic } from '../moduli/elastic.ts'

/** Box-shaped cells between lines along x, y and z. */
export interface SolidGrid {
  /** Rising positions of the lines, one more than cells. mm */
  readonly linesMm: readonly [x: Float64Array, y: Float64Array, z: Float64Array]
  /** By cell, x fastest, then y: 0 where it is empty, else its row of `moduli`, from 1. */
  readonly cells: Uint16Array
  readonly moduli: readonly Elastic[]
}

/** Cells of one grid, numbered densely: what solving works on. */
export interface Level {
  readonly linesMm: SolidGrid['linesMm']
  /** Cells along x, y, z. */
  readonly size: readonly [number, number, number]
  readonly nodes: number
  /** By crossing of lines, x fastest: its node, or −1 where no cell touches it. */
  readonly nodeAt: Int32Array
  /** By node: where it lies on the lines, stride 3. */
  readonly lineOf: Uint16Array
  /**
   * Rows of cells along x, stride 8: first cell's x, y and z index, how many, and the first node on
   * the edges (y, z), (y + 1, z), (y, z + 1), (y + 1, z + 1). Along a run nodes are numbered one
   * after the other.
   */
  readonly runs: Int32Array
  /** By full cell in the order of the runs: its row of `table`. */
  readonly rowOf: Int32Array
  /** See `modeTable`: `MODE_STRIDE` numbers a row. */
  readonly table: Float64Array
}

/** Numbers a material takes in a level's table. */
export const MODE_STRIDE = 18

/** Forces, moves: three numbers a node. N, mm */
export type Field = Float64Array
