import type { LineKind } from '../model/toolpath.ts'
import type { LayerMoves } from './layerMoves.ts'

/** What lies in a cell of a layer's plan. */
export const AIR = 0
const WALL = 1
export const SKIN = 2
export const ROOM = 3
const SPARSE = 4
const OUTSIDE = 5

/** A square raster over the bed; each layer is painted on it anew. */
export interface Plan {
  readonly pitchMm: number
  readonly size: number
  readonly originX: number
  readonly originY: number
  readonly cells: Uint8Array
  /** For whoever looks at the cells; all zero between uses. */
  readonly scratch: readonly [Uint8Array, Uint8Array]
  /** The cells painted last, first and one past the last. */
  box: Box
}

interface Box {
  readonly left: number
  readonly bottom: number
  readonly right: number
  readonly top: number
}

const SPAN_MM = 420
const PITCH_MM = 0.4

export function planAbout(x: number, y: number): Plan {
  const size = Math.round(SPAN_MM / PITCH_MM)
  return {
    pitchMm: PITCH_MM,
    size,
    originX: x - SPAN_MM / 2,
    originY: y - SPAN_MM / 2,
    cells: new Uint8Array(size * size),
    scratch: [new Uint8Array(size * size), new Uint8Array(size * size)],
    box: { left: 0, bottom: 0, right: 0, top: 0 },
  }
}

/**
 * Paints what lies where: walls and gap lines, skins, and rooms: what walls and skins enclose and
 * infill lines run through. What is enclosed and empty stays air: a hole, or a room of 0 %.
 */
export function paintPlan(
  plan: Plan,
  moves: LayerMoves,
  kinds: readonly (LineKind | null)[],
  widths: Float64Array,
): void {
  clear(plan)
  let [left, bottom, right, top] = [plan.size, plan.size, 0, 0]
  const order: readonly (readonly [LineKind, number])[] = [
    ['infill', SPARSE],
    ['skin', SKIN],
    ['gap', WALL],
    ['inner', WALL],
    ['outer', WALL],
  ]
  for (const [kind, state] of order) {
    for (let i = 0; i < moves.count; i++) {
      if (kinds[i] !== kind) continue
      const reachMm = Math.max(widths[i]! * 0.55, plan.pitchMm * 0.75)
      const box = paintLine(plan, moves, i, reachMm, state)
      left = Math.min(left, box.left)
      bottom = Math.min(bottom, box.bottom)
      right = Math.max(right, box.right)
      top = Math.max(top, box.top)
    }
  }
  plan.box = {
    left: Math.max(0, left - 1),
    bottom: Math.max(0, bottom - 1),
    right: Math.min(plan.size, right + 1),
    top: Math.min(plan.size, top + 1),
  }
  nameRooms(plan)
}

/** Area of all that is no air. */
export function filledMm2({ cells, size, box, pitchMm }: Plan): number {
  let count = 0
  for (let row = box.bottom; row < box.top; row++) {
    for (let column = box.left; column < box.right; column++) {
      if (cells[row * size + column] !== AIR) count++
    }
  }
  return count * pitchMm * pitchMm
}

function clear(plan: Plan): void {
  const { left, right, bottom, top } = plan.box
  for (let row = bottom; row < top; row++) {
    plan.cells.fill(AIR, row * plan.size + left, row * plan.size + right)
  }
}

function paintLine(plan: Plan, moves: LayerMoves, i: number, reachMm: number, state: number): Box {
  const { pitchMm, size, cells } = plan
  const ax = (moves.fromX[i]! - plan.originX) / pitchMm - 0.5
  const ay = (moves.fromY[i]! - plan.originY) / pitchMm - 0.5
  const bx = (moves.toX[i]! - plan.originX) / pitchMm - 0.5
  const by = (moves.toY[i]! - plan.originY) / pitchMm - 0.5
  const reach = reachMm / pitchMm
  const within = (value: number): number => Math.min(size - 1, Math.max(0, value))
  const bottom = within(Math.ceil(Math.min(ay, by) - reach))
  const top = within(Math.floor(Math.max(ay, by) + reach))
  const [dx, dy] = [bx - ax, by - ay]
  const length2 = dx * dx + dy * dy
  let [left, right] = [size, 0]
  for (let row = bottom; row <= top; row++) {
    // The stretch of the line whose height is within reach of the row, widened by the reach.
    let [low, high] = [Math.min(ax, bx), Math.max(ax, bx)]
    if (Math.abs(dy) > 1e-9) {
      const at = (y: number): number => ax + (Math.min(1, Math.max(0, (y - ay) / dy)) || 0) * dx
      const [one, two] = [at(row - reach), at(row + reach)]
      low = Math.min(one, two)
      high = Math.max(one, two)
    }
    const first = within(Math.ceil(low - reach))
    const last = within(Math.floor(high + reach))
    for (let column = first; column <= last; column++) {
      const share = Math.min(1, Math.max(0, ((column - ax) * dx + (row - ay) * dy) / length2))
      const [ox, oy] = [column - ax - share * dx, row - ay - share * dy]
      if (ox * ox + oy * oy <= reach * reach) cells[row * size + column] = state
    }
    left = Math.min(left, first)
    right = Math.max(right, last + 1)
  }
  return { left, bottom, right, top: top + 1 }
}

/**
 * Finds what is enclosed: air reached from the edge stays air, and so do enclosed cells without
 * infill.
 */
function nameRooms({ cells, size, box }: Plan): void {
  const { left, bottom, right, top } = box
  const queue: number[] = []
  const spread = (from: number, over: (state: number) => boolean, as: number): number[] => {
    const reached = [from]
    cells[from] = as
    for (let k = 0; k < reached.length; k++) {
      const cell = reached[k]!
      const column = cell % size
      const row = (cell - column) / size
      for (const [next, inside] of [
        [cell - 1, column > left],
        [cell + 1, column + 1 < right],
        [cell - size, row > bottom],
        [cell + size, row + 1 < top],
      ] as const) {
        if (!inside || !over(cells[next]!)) continue
        cells[next] = as
        reached.push(next)
      }
    }
    return reached
  }
  const isAir = (state: number): boolean => state === AIR
  for (let column = left; column < right; column++) {
    queue.push(bottom * size + column, (top - 1) * size + column)
  }
  for (let row = bottom; row < top; row++) queue.push(row * size + left, row * size + right - 1)
  const outside: number[] = []
  for (const cell of queue) {
    if (cells[cell] === AIR) for (const each of spread(cell, isAir, OUTSIDE)) outside.push(each)
  }
  const isRoom = (state: number): boolean => state === AIR || state === SPARSE
  for (let row = bottom; row < top; row++) {
    for (let column = left; column < right; column++) {
      const cell = row * size + column
      if (cells[cell] === SPARSE) spread(cell, isRoom, ROOM)
    }
  }
  for (const cell of outside) cells[cell] = AIR
}
