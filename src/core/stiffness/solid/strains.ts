import type { Field, Level } from './types.ts'

/** Strains of one cell: at its middle, and what bending adds towards its faces. */
export interface CellStrain {
  /** xx, yy, zz, xy, xz, yz at the middle; shear as engineering strain. */
  readonly middle: Float64Array
  /**
   * xx, yy, zz that bending adds at the faces across x, then y, then z: linear, of either sign.
   * Along the face's own axis stands 0; it is whatever makes that stress nothing.
   */
  readonly bending: Float64Array
}

/**
 * Calls `each` for every cell, in the order of the level's rows; the strain is good until the next.
 */
export function eachStrain(
  { linesMm, runs }: Level,
  moves: Field,
  each: (cell: number, strain: CellStrain, x: number, y: number, z: number) => void,
): void {
  const [xs, ys, zs] = linesMm
  const middle = new Float64Array(6)
  const bending = new Float64Array(9)
  const corner = new Float64Array(24)
  const strain = { middle, bending }
  /** Sum over the corners with the signs of a mode, over 8. */
  const mode = (k: number, byX: boolean, byY: boolean, byZ: boolean): number => {
    let sum = 0
    for (let n = 0; n < 8; n++) {
      const odd =
        (byX && (n & 1) === 0 ? 1 : 0) +
        (byY && (n & 2) === 0 ? 1 : 0) +
        (byZ && (n & 4) === 0 ? 1 : 0)
      sum += odd % 2 === 0 ? corner[3 * n + k]! : -corner[3 * n + k]!
    }
    return sum / 8
  }
  let cell = 0
  for (let run = 0; run < runs.length; run += 8) {
    const [x0, y, z] = [runs[run]!, runs[run + 1]!, runs[run + 2]!]
    const ay = 2 / (ys[y + 1]! - ys[y]!)
    const az = 2 / (zs[z + 1]! - zs[z]!)
    for (let i = 0; i < runs[run + 3]!; i++, cell++) {
      const x = x0 + i
      const ax = 2 / (xs[x + 1]! - xs[x]!)
      for (let edge = 0; edge < 4; edge++) {
        const at = 3 * (runs[run + 4 + edge]! + i)
        for (let k = 0; k < 6; k++) corner[6 * edge + k] = moves[at + k]!
      }
      middle[0] = ax * mode(0, true, false, false)
      middle[1] = ay * mode(1, false, true, false)
      middle[2] = az * mode(2, false, false, true)
      middle[3] = ay * mode(0, false, true, false) + ax * mode(1, true, false, false)
      middle[4] = az * mode(0, false, false, true) + ax * mode(2, true, false, false)
      middle[5] = az * mode(1, false, false, true) + ay * mode(2, false, true, false)
      bending[1] = ay * mode(1, true, true, false)
      bending[2] = az * mode(2, true, false, true)
      bending[3] = ax * mode(0, true, true, false)
      bending[5] = az * mode(2, false, true, true)
      bending[6] = ax * mode(0, true, false, true)
      bending[7] = ay * mode(1, false, true, true)
      each(cell, strain, x, y, z)
    }
  }
}
