import type { LineKind } from '../model/toolpath.ts'
import type { LayerMoves } from './layerMoves.ts'
import { planLength } from './layerMoves.ts'
import type { Plan } from './rooms.ts'
import { ROOM } from './rooms.ts'

/** Rooms without a rim of this width, where lines turn and reach over the walls. mm */
const RIM_MM = 1.2

/** What lies in the middle of a layer's rooms. */
export interface Cores {
  readonly areaMm2: number
  /** Plastic of the infill lines in there, as mm of filament. */
  readonly filamentMm: number
  readonly lengthMm: number
  /** Per move, the share of its length that lies in there. */
  readonly inside: Float64Array
}

/** Looks at infill where only its spacing shows: away from the walls. */
export function measureCores(
  plan: Plan,
  moves: LayerMoves,
  kinds: readonly (LineKind | null)[],
): Cores {
  const { size, pitchMm, originX, originY } = plan
  const { isCore, count } = findCores(plan)
  const inside = new Float64Array(moves.count)
  let [filamentMm, lengthMm] = [0, 0]
  for (let i = 0; i < moves.count && count > 0; i++) {
    if (kinds[i] !== 'infill') continue
    const length = planLength(moves, i)
    const steps = Math.max(1, Math.ceil((4 * length) / pitchMm))
    let within = 0
    for (let k = 0; k < steps; k++) {
      const share = (k + 0.5) / steps
      const x = moves.fromX[i]! + share * (moves.toX[i]! - moves.fromX[i]!)
      const y = moves.fromY[i]! + share * (moves.toY[i]! - moves.fromY[i]!)
      const column = Math.floor((x - originX) / pitchMm)
      const row = Math.floor((y - originY) / pitchMm)
      if (column >= 0 && row >= 0 && column < size && row < size) {
        within += isCore[row * size + column]!
      }
    }
    inside[i] = within / steps
    filamentMm += moves.laidMm[i]! * inside[i]!
    lengthMm += length * inside[i]!
  }
  for (const cells of plan.scratch) {
    for (let row = plan.box.bottom; row < plan.box.top; row++) {
      cells.fill(0, row * size + plan.box.left, row * size + plan.box.right)
    }
  }
  return { areaMm2: count * pitchMm * pitchMm, filamentMm, lengthMm, inside }
}

/** Cells of rooms with nothing else within the rim: rows first, then columns. */
function findCores({ cells, scratch, size, box, pitchMm }: Plan): {
  readonly isCore: Uint8Array
  readonly count: number
} {
  const rim = Math.ceil(RIM_MM / pitchMm)
  const [long, isCore] = scratch
  let count = 0
  for (let row = box.bottom; row < box.top; row++) {
    let run = 0
    for (let column = box.left; column < box.right; column++) {
      run = cells[row * size + column] === ROOM ? run + 1 : 0
      if (run > 2 * rim) long[row * size + column - rim] = 1
    }
  }
  for (let column = box.left; column < box.right; column++) {
    let run = 0
    for (let row = box.bottom; row < box.top; row++) {
      run = long[row * size + column] === 1 ? run + 1 : 0
      if (run > 2 * rim) {
        isCore[(row - rim) * size + column] = 1
        count++
      }
    }
  }
  return { isCore, count }
}
