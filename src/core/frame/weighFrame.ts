import type { Foretold } from '../doubt/belief.ts'
import { STRAY_OFF } from '../doubt/strays.ts'
import { rangeOf } from '../doubt/bell.ts'
import type { Lesson } from '../doubt/lessons.ts'
import type { Printer, Range } from '../model/figures.ts'
import type { CarbonFrame, Frame } from '../model/frame.ts'
import { scaleRange, shiftRange } from '../model/ranges.ts'
import type { ClockTime } from '../model/readings.ts'
import { doubtedPart } from './doubtedPart.ts'
import type { FrameDoubt, PieceKind } from './frameDoubt.ts'
import { frameDoubt, partIdOf } from './frameDoubt.ts'
import { clockReadings, laidReadings, wholeReadings } from './frameReadings.ts'
import { learnedHours, learnedOf } from './learned.ts'
import { aircraftLedger } from './ledger.ts'
import { frameLimits } from './limits.ts'
import { pieceMass } from './pieceMass.ts'
import type { PieceMass } from './pieceMass.ts'
import { pieceSum } from './pieceSum.ts'
import { readingsTold } from './readingsTold.ts'
import type {
  CarbonDifference,
  FramePart,
  FrameRow,
  FrameSum,
  LeftOut,
  PieceSum,
  StrayReading,
} from './types.ts'

/**
 * Adds a frame up, once: printed parts by their figures or by the scale, spares apart, bought
 * items, limits and the carbon frame, with what is left out. Page, files and command show what
 * stands here and sum nothing themselves.
 *
 * `pieceMass` says of each part whether scale or figures say what a piece weighs; `frameDoubt` is
 * the one model of errors: it hears scale, clock and what earlier frames taught, and every range
 * comes out of it; `aircraftLedger` adds items and growth. Cheap enough for every step of a slider
 * drag.
 */
export function weighFrame(
  parts: readonly FramePart[],
  frame: Pick<Frame, 'aircraft' | 'carbon' | 'printer' | 'wholes' | 'clocks' | 'laid'>,
  lessons: readonly Lesson[] = [],
): FrameSum {
  const { aircraft, carbon, printer } = frame
  const known = parts.flatMap((one) => knownPart(one, printer))
  const doubted = known.map((one) =>
    doubtedPart(one.part, one.material, printer, one.figures, one, one.share),
  )
  const leftOutParts = leftOut(parts, known)
  // A whole frame on the scale tells nothing while some of its parts have no mass.
  const wholes = leftOutParts.some(({ weighed }) => !weighed)
    ? []
    : wholeReadings(frame.wholes ?? [], doubted, aircraft.items)
  const counted = doubted.filter(({ byScale }) => byScale !== true)
  const clocks = [
    ...clockReadings(frame.clocks ?? [], counted, printer),
    ...laidReadings(frame.laid ?? [], counted, printer.startS),
  ]
  const heard = frameDoubt(doubted, aircraft.items, [...wholes, ...clocks], lessons)
  // Nor while a part weighs what nothing explains: the rest would have to make up for it.
  const isAtOdds = wholes.length > 0 && hasStrayPart(heard, known)
  const doubt = isAtOdds ? frameDoubt(doubted, aircraft.items, clocks, lessons) : heard
  const printed = sumOf(doubt, known, 'flying')
  const rows = known.map((one) => rowOf(one, printed, doubt))
  const ledger = aircraftLedger(rows, { ...aircraft, items: doubt.countedItems })
  return {
    rows,
    leftOut: leftOutParts,
    pieces: {
      flying: parts.reduce((all, { part }) => all + part.quantity, 0),
      spares: parts.reduce((all, { part }) => all + part.spares, 0),
    },
    printed,
    spares: sumOf(doubt, known, 'spares'),
    withSpares: known.some(({ part }) => part.spares > 0) ? sumOf(doubt, known, 'all') : printed,
    allUpG: rangeOf(doubt.allUpBell),
    ledger,
    limits: frameLimits(aircraft, printed.massG.mid, ledger.bought.massG),
    carbon: carbon === null ? null : carbonDifference(printed, carbon),
    doubt,
    strays: doubt.known.strays.map((stray) => strayReading(stray, frame.clocks ?? [])),
    learned: learnedOf(doubt, printer.id, lessons),
    learnedHours: learnedHours(doubt, printer, lessons),
    readings: readingsTold(
      { parts, wholes: frame.wholes ?? [], clocks: frame.clocks ?? [], laid: frame.laid ?? [] },
      doubt,
      isAtOdds,
    ),
  }
}

/**
 * A clock time is told as it was read, not as the pieces of that print are reckoned in the frame's
 * runs.
 */
function strayReading(
  { id, value, foretold: { mean, sigma } }: Foretold,
  clocks: readonly ClockTime[],
): StrayReading {
  const timeS = clocks.find((one) => one.id === id)?.timeS ?? value
  const times = value > 0 ? timeS / value : 1
  const off = STRAY_OFF * sigma
  return {
    id: partIdOf(id),
    value: timeS,
    foretold: rangeOf({ mean: mean * times, sigma: sigma * times }),
    taken: {
      low: Math.max(0, mean - off) * times,
      mid: Math.max(0, mean) * times,
      high: (mean + off) * times,
    },
  }
}

function hasStrayPart(doubt: FrameDoubt, known: readonly KnownPart[]): boolean {
  const weighed = new Set(known.map(({ part }) => part.id))
  return doubt.known.strays.some(({ id }) => weighed.has(partIdOf(id)))
}

type KnownPart = PieceMass & Pick<FramePart, 'part' | 'material' | 'figures' | 'share'>

function knownPart(one: FramePart, printer: Printer): readonly KnownPart[] {
  const { part, material, figures, share } = one
  const mass = pieceMass(part, material, printer, figures)
  if (mass === null) return []
  const { massG, massFrom, scaleRatio, changes } = mass
  const known = { part, material, figures, massG, massFrom, scaleRatio, changes }
  return [share === undefined ? known : { ...known, share }]
}

function leftOut(parts: readonly FramePart[], known: readonly KnownPart[]): readonly LeftOut[] {
  const weighed = new Set(known.map(({ part }) => part.id))
  return parts.flatMap(({ part: { id, name }, figures, failed }): readonly LeftOut[] => {
    if (figures !== null) return []
    return [{ id, name, why: failed ? 'failed' : 'not counted yet', weighed: weighed.has(id) }]
  })
}

function rowOf(one: KnownPart, printed: PieceSum, doubt: FrameDoubt): FrameRow {
  const { part, material, figures, massFrom, scaleRatio, changes } = one
  const flying = sumOf(doubt, [one], 'flying')
  return {
    part,
    material,
    figures,
    massFrom,
    scaleRatio,
    changes,
    pieceG: rangeOf(doubt.piece(part.id)),
    flying,
    spares: sumOf(doubt, [one], 'spares'),
    withSpares: part.spares > 0 ? sumOf(doubt, [one], 'all') : flying,
    massShare: shareOf(flying.massG, printed.massG),
    costShare: shareOf(flying.cost, printed.cost),
    timeShare: shareOf(flying.timeS, printed.timeS),
  }
}

function sumOf(doubt: FrameDoubt, known: readonly KnownPart[], kind: PieceKind): PieceSum {
  return pieceSum(
    doubt,
    kind,
    known.map(({ part: { id, quantity, spares }, figures }) => {
      const flying = kind === 'spares' ? 0 : quantity
      return { id, pieces: flying + (kind === 'flying' ? 0 : spares), figures }
    }),
  )
}

/** Printed mass and cost against a bought carbon frame. */
function carbonDifference({ massG, cost }: PieceSum, carbon: CarbonFrame): CarbonDifference {
  const more = shiftRange(massG, -carbon.massG)
  return {
    massG: more,
    massShare: carbon.massG > 0 ? scaleRange(more, 1 / carbon.massG) : null,
    cost: shiftRange(cost, -carbon.price),
  }
}

function shareOf(own: Range, all: Range): number {
  return all.mid > 0 ? own.mid / all.mid : 0
}
