import { moreOf } from '../data/printerMore.ts'
import type { Census } from '../model/census.ts'
import type { Material, Printer } from '../model/figures.ts'
import type { LaidRecipe } from '../model/settings.ts'
import { drawnRooms, infillAt } from './hours.ts'
import { PATTERN_MODELS, roomsOf } from './infill.ts'
import { lineSeconds } from './lineHours.ts'

/** Seconds that one piece takes on each of its layers, its change included, the least layer time not yet asked. */
export interface LayerWork {
  /** At its own speeds. */
  readonly ownS: Float64Array
  /** With every line at the printer's slowest speed. */
  readonly slowestS: Float64Array
}

/**
 * The hours of `printTime` layer by layer, for prints in which layers of several pieces lie beside
 * each other.
 */
export function layerWork(
  census: Census,
  recipe: LaidRecipe,
  material: Material,
  printer: Printer,
): LayerWork {
  const { count, heightMm } = census.layers
  const { floorMmS } = moreOf(printer)
  const ownS = new Float64Array(count).fill(printer.layerChangeS)
  const slowestS = ownS.slice()
  if (count === 0) return { ownS, slowestS }
  const spread = (seconds: number, over: ArrayLike<number> | null, to: Float64Array): void => {
    const all = over === null ? count : sumOf(over)
    if (!(all > 0)) return
    for (let i = 0; i < count; i++) to[i]! += (seconds * (over?.[i] ?? 1)) / all
  }
  for (const rooms of roomsOf(census, recipe).map(drawnRooms)) {
    const lines = lineSeconds(rooms.census, rooms.recipe, material, printer)
    for (let i = 0; i < count; i++) {
      ownS[i]! += lines.seconds[i]!
      slowestS[i]! += lines.lengthMm[i]! / floorMmS
    }
    const { roomMm, roomLines } = rooms.census.moves.byLayer
    const at = (wantedMmS: number, layerMm: number) =>
      infillAt(rooms, material, printer, wantedMmS, layerMm)
    const usual = at(printer.infillMmS, recipe.layerMm)
    const slow = Math.min(printer.infillMmS, printer.firstLayerMmS)
    const first = roomMm[0]! > 0 ? at(slow, heightMm[0]!) : usual
    const winds = PATTERN_MODELS[rooms.recipe.pattern].pathFactor > 1
    const [length, turning] = [roomMm, winds ? roomMm : roomLines]
    const [allMm, allTurning] = [sumOf(length), sumOf(turning)]
    for (let i = 0; i < count; i++) {
      const { cruiseS, turnS, speedMmS } = i === 0 ? first : usual
      const alongS = allMm > 0 ? (cruiseS * length[i]!) / allMm : 0
      ownS[i]! += alongS + (allTurning > 0 ? (turnS * turning[i]!) / allTurning : 0)
      slowestS[i]! += (alongS * speedMmS) / floorMmS
    }
    for (const { seconds, over } of usual.travels) {
      spread(seconds, over, ownS)
      spread(seconds, over, slowestS)
    }
  }
  return { ownS, slowestS }
}

/** All layers, the start left out: each its own time, or the least layer time at no less than the slowest speed. */
export function layersTime({ ownS, slowestS }: LayerWork, leastS: number): number {
  let timeS = 0
  for (let i = 0; i < ownS.length; i++) {
    timeS += Math.max(ownS[i]!, Math.min(leastS, slowestS[i]!))
  }
  return timeS
}

function sumOf(values: ArrayLike<number>): number {
  let total = 0
  for (let i = 0; i < values.length; i++) total += values[i]!
  return total
}
