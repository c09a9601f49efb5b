import type { Mesh } from '../../model/mesh.ts'
import { SCAN_TILT_DEG } from '../rows/scanGrid.ts'
import type { ScanFrame } from './planeCutter.ts'

const TILT = (SCAN_TILT_DEG * Math.PI) / 180

/** How the rows lie. */
export const FRAME: ScanFrame = { cos: Math.cos(TILT), sin: Math.sin(TILT) }

/**
 * How far a placed mesh reaches along the rows and across them, and its height, mm; of the vertices
 * that triangles use: a surface that was left out still has its own among the positions.
 */
export function extentOf({ positions, indices }: Mesh): {
  uLow: number
  uHigh: number
  vLow: number
  vHigh: number
  heightMm: number
} {
  let uLow = Infinity
  let uHigh = -Infinity
  let vLow = Infinity
  let vHigh = -Infinity
  let zHigh = 0
  for (const index of indices) {
    const i = 3 * index
    const u = positions[i]! * FRAME.cos + positions[i + 1]! * FRAME.sin
    const v = positions[i + 1]! * FRAME.cos - positions[i]! * FRAME.sin
    if (u < uLow) uLow = u
    if (u > uHigh) uHigh = u
    if (v < vLow) vLow = v
    if (v > vHigh) vHigh = v
    if (positions[i + 2]! > zHigh) zHigh = positions[i + 2]!
  }
  return { uLow, uHigh, vLow, vHigh, heightMm: zHigh }
}
