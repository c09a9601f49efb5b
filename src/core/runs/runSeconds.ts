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
 * Seconds from piece to piece on each of the layers `from` to before `to`, where `standing` pieces
 * are.
 */
export interface Ways {
  readonly from: number
  readonly to: number
  readonly standing: number
  readonly timeS: number
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
  ways: readonly Ways[] = waysOf(pieces, printer, order),
): number {
  if (pieces.length === 0) return 0
  if (order === 'one at a time') {
    const own = pieces.reduce((sum, { work }) => sum + layersTime(work, printer.leastLayerS), 0)
    return printer.startS + own + ways.reduce((sum, { timeS }) => sum + timeS, 0)
  }
  return printer.startS + layersTime(together(pieces, printer, ways), printer.leastLayerS)
}

/**
 * How the head goes from piece to piece: it depends on where they lie and how tall they are alone.
 */
export function waysOf(
  pieces: readonly TimedPiece[],
  printer: Printer,
  order: PrintOrder,
): readonly Ways[] {
  if (order === 'one at a time') {
    return [{ from: 0, to: 1, standing: pieces.length, timeS: waySeconds(pieces, printer) }]
  }
  const heights = [...new Set(pieces.map(({ work }) => work.ownS.length))].toSorted((a, b) => a - b)
  return heights.map((to, i): Ways => {
    const from = heights[i - 1] ?? 0
    const standing = pieces.filter(({ work }) => work.ownS.length > from)
    return { from, to, standing: standing.length, timeS: waySeconds(standing, printer) }
  })
}

function together(
  pieces: readonly TimedPiece[],
  printer: Printer,
  ways: readonly Ways[],
): LayerWork {
  const count = Math.max(...pieces.map(({ work }) => work.ownS.length))
  const all = { ownS: new Float64Array(count), slowestS: new Float64Array(count) }
  const add = (i: number, ownS: number, slowestS: number): void => {
    all.ownS[i] = (all.ownS[i] ?? 0) + ownS
    all.slowestS[i] = (all.slowestS[i] ?? 0) + slowestS
  }
  for (const { work } of pieces) {
    for (let i = 0; i < work.ownS.length; i++) add(i, work.ownS[i] ?? 0, work.slowestS[i] ?? 0)
  }
  for (const { from, to, standing, timeS } of ways) {
    // Each piece counted its own change of layer, and there is one.
    const moreS = timeS - (standing - 1) * printer.layerChangeS
    for (let i = from; i < to; i++) add(i, moreS, moreS)
  }
  return all
}

/** From piece to piece, always to the nearest not yet seen, the leftmost first. */
function waySeconds(pieces: readonly TimedPiece[], printer: Printer): number {
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
