import type { BorrowedList } from '../model/borrowed.ts'
import type { LayerMoves } from './layerMoves.ts'

/** Where a ray meets a line of the layer. */
export interface Meeting {
  readonly move: number
  readonly distanceMm: number
}

/** Finds the lines of a layer that a ray meets. */
export interface Nearby {
  /** Meetings within `reachMm`, nearest first. `dx`, `dy`: unit length. */
  readonly along: (
    x: number,
    y: number,
    dx: number,
    dy: number,
    reachMm: number,
  ) => BorrowedList<Meeting>
}

const CELL_MM = 1.5

/** @param lines numbers of the moves to look among. */
export function nearbyLines(moves: LayerMoves, lines: readonly number[]): Nearby {
  const { fromX, fromY, toX, toY } = moves
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const i of lines) {
    minX = Math.min(minX, fromX[i]!, toX[i]!)
    minY = Math.min(minY, fromY[i]!, toY[i]!)
    maxX = Math.max(maxX, fromX[i]!, toX[i]!)
    maxY = Math.max(maxY, fromY[i]!, toY[i]!)
  }
  const cellMm = Math.max(CELL_MM, (maxX - minX) / 2000, (maxY - minY) / 2000)
  const wide = Math.floor((maxX - minX) / cellMm) + 1
  const high = Math.floor((maxY - minY) / cellMm) + 1
  const cells: number[][] = lines.length > 0 ? Array.from({ length: wide * high }) : []
  for (const i of lines) {
    eachCell(fromX[i]!, fromY[i]!, toX[i]!, toY[i]!, (cell) => {
      const list = cells[cell]
      if (list === undefined) cells[cell] = [i]
      else list.push(i)
    })
  }

  /** Every cell that a straight passes, each once. */
  function eachCell(
    ax: number,
    ay: number,
    bx: number,
    by: number,
    visit: (cell: number) => void,
  ): void {
    const step = (value: number, min: number, most: number): number =>
      Math.min(most - 1, Math.max(0, Math.floor((value - min) / cellMm)))
    let cx = step(ax, minX, wide)
    let cy = step(ay, minY, high)
    const endX = step(bx, minX, wide)
    const endY = step(by, minY, high)
    const [dx, dy] = [bx - ax, by - ay]
    const [sx, sy] = [Math.sign(endX - cx), Math.sign(endY - cy)]
    const edge = (cell: number, sign: number, min: number): number =>
      min + (cell + (sign > 0 ? 1 : 0)) * cellMm
    let tx = sx === 0 ? Infinity : (edge(cx, sx, minX) - ax) / dx
    let ty = sy === 0 ? Infinity : (edge(cy, sy, minY) - ay) / dy
    const [gainX, gainY] = [Math.abs(cellMm / dx), Math.abs(cellMm / dy)]
    for (let left = Math.abs(endX - cx) + Math.abs(endY - cy); ; left--) {
      visit(cy * wide + cx)
      if (left <= 0) return
      if ((tx < ty && cx !== endX) || cy === endY) {
        cx += sx
        tx += gainX
      } else {
        cy += sy
        ty += gainY
      }
    }
  }

  const meetings: { move: number; distanceMm: number }[] = []
  const seen = new Set<number>()
  return {
    along(x, y, dx, dy, reachMm) {
      meetings.length = 0
      seen.clear()
      if (cells.length === 0) return meetings
      const cross = (i: number): void => {
        if (seen.has(i)) return
        seen.add(i)
        const [ex, ey] = [toX[i]! - fromX[i]!, toY[i]! - fromY[i]!]
        const [ox, oy] = [fromX[i]! - x, fromY[i]! - y]
        const across = dx * ey - dy * ex
        if (Math.abs(across) < 1e-12) return
        const distanceMm = (ox * ey - oy * ex) / across
        const share = (ox * dy - oy * dx) / across
        if (distanceMm > 1e-6 && distanceMm <= reachMm && share >= 0 && share < 1) {
          meetings.push({ move: i, distanceMm })
        }
      }
      eachCell(x, y, x + dx * reachMm, y + dy * reachMm, (cell) => cells[cell]?.forEach(cross))
      return meetings.sort((a, b) => a.distanceMm - b.distanceMm)
    },
  }
}
