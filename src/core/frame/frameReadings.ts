import type { Reading } from '../doubt/readings.ts'
import { scaleNoiseG } from '../doubt/readings.ts'
import type { Item } from '../model/aircraft.ts'
import type { ClockTime, WholeWeighing } from '../model/readings.ts'
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

/** What was read of the whole frame, as it counts now. Nothing where a part has no figures. */
export function wholeReadings(
  wholes: readonly WholeWeighing[],
  parts: readonly DoubtedPart[],
  items: readonly Item[],
): readonly Reading[] {
  const printedG = parts.reduce((sum, part) => sum + part.quantity * part.figures.massG.mid, 0)
  const boughtG = items.reduce((sum, item) => sum + item.quantity * item.massG, 0)
  return wholes.map((one): Reading => {
    const allUp = one.of === 'all-up'
    const netG = one.scaleG - one.tareG
    const noiseG = scaleNoiseG(netG, one.stepG, one.tareG > 0)
    const { value, noise } = asNow(netG, noiseG, one.calculatedG, printedG + (allUp ? boughtG : 0))
    const lineIds = [...parts, ...(allUp ? items : [])].map(({ id }) => id)
    const of = { kind: 'whole', lineIds, unlisted: allUp ? UNLISTED : 0 } as const
    return { id: one.id, value, noise, of, trusted: one.trusted }
  })
}

/**
 * What the clock said, as it counts now. A run of several pieces starts once, while each piece by
 * itself is reckoned with its own start of `startS`.
 */
export function clockReadings(
  clocks: readonly ClockTime[],
  parts: readonly DoubtedPart[],
  startS: number,
): readonly Reading[] {
  return clocks.flatMap((one): Reading[] => {
    const run = Object.entries(one.pieces).flatMap(([partId, pieces]) => {
      const part = parts.find(({ id }) => id === partId)
      return part === undefined ? [] : [{ part, pieces }]
    })
    if (run.length === 0 || run.length < Object.keys(one.pieces).length) return []
    const alone = run.reduce((sum, { part, pieces }) => sum + pieces * part.figures.timeS.mid, 0)
    const starts = run.reduce((sum, { pieces }) => sum + pieces, 0) - 1
    const nowS = alone - starts * startS
    const { value, noise } = asNow(one.timeS, CLOCK_NOISE_S, one.calculatedS, nowS)
    const of = {
      kind: 'run',
      pieces: run.map(({ part, pieces }) => ({ lineId: lineIdOf('time', part.id), pieces })),
    } as const
    return [{ id: one.id, value: value + starts * startS, noise, of, trusted: one.trusted }]
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
