import type { Reading } from '../doubt/readings.ts'
import { showsInMoves } from '../doubt/factors.ts'
import { scaleNoiseG } from '../doubt/readings.ts'
import type { Printer } from '../model/figures.ts'
import type { Item } from '../model/aircraft.ts'
import type { ClockTime, LaidReading, WholeWeighing } from '../model/readings.ts'
import type { DoubtedPart } from './frameDoubt.ts'
import { lineIdOf } from './frameDoubt.ts'

/**
 * One standard deviation of what flies but is on no list: glue, wire, solder, as a share of the
 * whole (common practice, no source).
 */
const UNLISTED = 0.01
/** One standard deviation of a ratio that was read before something of the frame was changed. */
const CHANGED = 0.01
/** Below this two calculated figures are the same. */
const SAME = 1e-6
/** Nobody stands beside a printer with a watch: one standard deviation. s */
const CLOCK_NOISE_S = 30

/**
 * What is calculated for what lies on the scale when the whole is weighed, before anything is
 * learned. g
 */
export function calculatedWholeG(
  of: WholeWeighing['of'],
  parts: readonly Pick<DoubtedPart, 'quantity' | 'figures'>[],
  items: readonly Pick<Item, 'quantity' | 'massG'>[],
): number {
  const printedG = parts.reduce((sum, part) => sum + part.quantity * part.figures.massG.mid, 0)
  if (of === 'printed') return printedG
  return items.reduce((sum, item) => sum + item.quantity * item.massG, printedG)
}

/** What was read of the whole frame, as it counts now. Nothing where a part has no figures. */
export function wholeReadings(
  wholes: readonly WholeWeighing[],
  parts: readonly DoubtedPart[],
  items: readonly Item[],
): readonly Reading[] {
  return wholes.map((one): Reading => {
    const allUp = one.of === 'all-up'
    const netG = one.scaleG - one.tareG
    const noiseG = scaleNoiseG(netG, one.stepG, one.tareG > 0)
    const nowG = calculatedWholeG(one.of, parts, items)
    const { value, noise } = asNow(netG, noiseG, one.calculatedG, nowG)
    const lineIds = [...parts, ...(allUp ? items : [])].map(({ id }) => id)
    const of = { kind: 'whole', lineIds, unlisted: allUp ? UNLISTED : 0 } as const
    return { id: one.id, value, noise, of, trusted: one.trusted }
  })
}

/**
 * What the clock said, as it counts now. A run of several pieces starts once, while each piece by
 * itself is reckoned with its own start of the frame's printer; what comes of that is put at the
 * hours these pieces have in the frame's own runs.
 */
export function clockReadings(
  clocks: readonly ClockTime[],
  parts: readonly DoubtedPart[],
  { id: ownId, startS }: Pick<Printer, 'id' | 'startS'>,
): readonly Reading[] {
  return clocks.flatMap((one): Reading[] => {
    const run = Object.entries(one.pieces).flatMap(([partId, pieces]) => {
      const part = parts.find(({ id }) => id === partId)
      return part === undefined ? [] : [{ part, pieces }]
    })
    if (run.length === 0 || run.length < Object.keys(one.pieces).length) return []
    const sum = (each: (part: DoubtedPart) => number): number =>
      run.reduce((total, { part, pieces }) => total + pieces * each(part), 0)
    const of = {
      kind: 'run',
      pieces: run.map(({ part, pieces }) => ({ lineId: lineIdOf('time', part.id), pieces })),
      printerId: one.printerId ?? ownId,
    } as const
    const besideS = sum(({ figures }) => figures.timeS.mid)
    if (one.beside === true) {
      const heard = asNow(one.timeS, CLOCK_NOISE_S, one.calculatedS, besideS)
      return [{ id: one.id, ...heard, of, trusted: one.trusted }]
    }
    const alone = sum(({ aloneS }) => aloneS)
    const inRuns = alone > 0 ? besideS / alone : 1
    const starts = sum(() => 1) - 1
    const nowS = alone - starts * startS
    const { value, noise } = asNow(one.timeS, CLOCK_NOISE_S, one.calculatedS, nowS)
    const heardS = (value + starts * startS) * inRuns
    return [{ id: one.id, value: heardS, noise: noise * inRuns, of, trusted: one.trusted }]
  })
}

/**
 * A skirt, a purge wall, another way round a corner: one deviation of the plastic of a file, as a
 * share.
 */
const LAID_NOISE = 0.01
/**
 * One deviation of a file's time from what its printer takes, as a share: machines do not reach
 * what is written, and files may be made for another one (common practice, no source).
 */
const WRITTEN_NOISE = 0.06
const TIME_OF_FILE = ':time'

/** What the reading of a file's time is called among the readings. */
export function fileTimeId(id: string): string {
  return `${id}${TIME_OF_FILE}`
}

export function isFileTime(id: string): boolean {
  return id.endsWith(TIME_OF_FILE)
}

/**
 * What printer's files say: their plastic of habits and first layers, their time of the printer's
 * pace.
 */
export function laidReadings(
  laid: readonly LaidReading[],
  parts: readonly DoubtedPart[],
  startS: number,
): readonly Reading[] {
  return laid.flatMap((one): Reading[] => {
    const part = parts.find(({ id }) => id === one.partId)
    if (part === undefined || !(one.calculatedMm3 > 0) || !(one.calculatedS > 0)) return []
    const { mass } = part.figures.doubt
    const shared = mass.shared.filter(showsInMoves)
    const value = one.depositMm3 / one.calculatedMm3
    const of = { kind: 'laid', lineId: part.id, shared, own: mass.own } as const
    const { trusted } = one
    const { aloneS, figures } = part
    const alone = (one.timeS / one.calculatedS) * Math.max(0, aloneS - startS) + startS
    const fileS = aloneS > 0 ? (alone * figures.timeS.mid) / aloneS : alone
    const pieces = [{ lineId: lineIdOf('time', part.id), pieces: 1 }]
    return [
      { id: one.id, value, noise: LAID_NOISE * value, of, trusted },
      {
        id: fileTimeId(one.id),
        value: fileS,
        noise: WRITTEN_NOISE * fileS,
        of: { kind: 'run', pieces },
        trusted,
      },
    ]
  })
}

/** A reading held against what was calculated then, carried over to what is calculated now. */
function asNow(
  value: number,
  noise: number,
  calculatedThen: number,
  calculatedNow: number,
): { readonly value: number; readonly noise: number } {
  const ratio = calculatedThen > 0 ? calculatedNow / calculatedThen : 1
  if (Math.abs(ratio - 1) < SAME) return { value, noise }
  return { value: value * ratio, noise: Math.hypot(noise * ratio, CHANGED * value * ratio) }
}
