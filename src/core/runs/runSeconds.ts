import { layersTime, type LayerWork } from '../figures/layerSeconds.ts'
import { moveTime } from '../figures/kinematics.ts'
import type { Printer } from '../model/figures.ts'
import type { PrintOrder } from '../model/runs.ts'

/** A piece as the clock sees it. */
export interface TimedPiece {
  readonly work: LayerWork
  /** Where the head is when it prints it. */
  readonly xMm: number
  readonly yMm: number
}

/**
 * Seconds of one print of several pieces of the same layer height, by the printer's own data and
 * before its clock was heard: one start; on each layer the lines of all pieces against one least
 * layer time, one change of layer, and a way from each piece to the next. A layer begins where the
 * one below ended, so n pieces need n − 1 ways; each is taken from middle to middle, with the
 * filament drawn back. One at a time each piece keeps its own layers, and what is saved are starts.
 */
export function runSeconds(
  pieces: readonly TimedPiece[],
  printer: Printer,
  order: PrintOrder = 'together',
): number {
  if (pieces.length === 0) return 0
  if (order === 'one at a time') {
    const own = pieces.reduce((sum, { work }) => sum + layersTime(work, printer.leastLayerS), 0)
    return printer.startS + own + waysTime(pieces, printer)
  }
  return printer.startS + layersTime(together(pieces, printer), printer.leastLayerS)
}

function together(pieces: readonly TimedPiece[], printer: Printer): LayerWork {
  const count = Math.max(...pieces.map(({ work }) => work.ownS.length))
  const all = { ownS: new Float64Array(count), slowestS: new Float64Array(count) }
  const add = (i: number, ownS: number, slowestS: number): void => {
    all.ownS[i] = (all.ownS[i] ?? 0) + ownS
    all.slowestS[i] = (all.slowestS[i] ?? 0) + slowestS
  }
  for (const { work } of pieces) {
    for (const [i, ownS] of work.ownS.entries()) add(i, ownS, work.slowestS[i] ?? 0)
  }
  const heights = [...new Set(pieces.map(({ work }) => work.ownS.length))].toSorted((a, b) => a - b)
  let from = 0
  for (const to of heights) {
    const standing = pieces.filter(({ work }) => work.ownS.length > from)
    const moreS = waysTime(standing, printer) - (standing.length - 1) * printer.layerChangeS
    for (let i = from; i < to; i++) add(i, moreS, moreS)
    from = to
  }
  return all
}

/** From piece to piece, always to the nearest not yet seen, the leftmost first. */
function waysTime(pieces: readonly TimedPiece[], printer: Printer): number {
  const left = [...pieces].toSorted((a, b) => a.xMm - b.xMm || a.yMm - b.yMm)
  let here = left.shift()
  let timeS = 0
  while (here !== undefined && left.length > 0) {
    let nearest = 0
    let leastMm = Infinity
    for (const [i, { xMm, yMm }] of left.entries()) {
      const awayMm = Math.hypot(xMm - here.xMm, yMm - here.yMm)
      if (awayMm < leastMm) [leastMm, nearest] = [awayMm, i]
    }
    timeS += moveTime(leastMm, printer.travelMmS, printer.travelAccelMmS2) + printer.retractS
    here = left.splice(nearest, 1)[0]
  }
  return timeS
}
