import type { Census } from '../model/census.ts'
import type { Material, Printer } from '../model/figures.ts'
import type { Recipe } from '../model/settings.ts'
import { SUPPORT_SHARE } from './deposit.ts'
import { meltSpeedMmS } from './flow.ts'
import { moveTime } from './kinematics.ts'
import type { LaidSeconds, Motion } from './motion.ts'
import { hopCount, lapTime, zigzagTime } from './motion.ts'
import { createMemory } from './remember.ts'

/** One kind of line: how it spreads over the layers, and how long all of it takes at a wanted speed. */
interface Kind {
  /** On each layer, in any measure of length and of number. */
  readonly length: ArrayLike<number>
  readonly number: ArrayLike<number>
  readonly wantedMmS: number
  readonly accelMmS2: number
  readonly timeAt: (motion: Motion) => LaidSeconds
}

/** Of a recipe, what its lines but those of infill take their time by; the rest stands in the census. */
type Bead = Pick<Recipe, 'lineMm' | 'layerMm'>

/** Two printers, the printer and a slower one, of a few recipes. */
const remember = createMemory<Float64Array>(4)

/**
 * Seconds that the lines of every kind but infill take on each layer. Not to be written to: no
 * share of infill changes them, so they are kept.
 */
export function lineSeconds(
  census: Census,
  { lineMm, layerMm }: Bead,
  { flow }: Pick<Material, 'flow'>,
  printer: Printer,
): Float64Array {
  return remember(census, [lineMm, layerMm, flow, printer], () =>
    secondsOf(census, { lineMm, layerMm }, flow, printer),
  )
}

function secondsOf(census: Census, bead: Bead, flow: number, printer: Printer): Float64Array {
  const { layers } = census
  const layerS = new Float64Array(layers.count)
  for (const kind of kindsOf(census, bead, printer)) {
    const length = sum(kind.length)
    const number = sum(kind.number)
    if (length <= 0 || number <= 0) continue
    const timesAt = (wanted: number, heightMm: number): LaidSeconds => {
      const speedMmS = meltSpeedMmS(wanted, printer.flowMm3S, bead.lineMm, heightMm, flow)
      const motion = { speedMmS, accelMmS2: kind.accelMmS2, cornerMmS: printer.cornerMmS }
      const { cruiseS, turnS } = kind.timeAt(motion)
      return { cruiseS: cruiseS / length, turnS: turnS / number }
    }
    const slow = Math.min(kind.wantedMmS, printer.firstLayerMmS)
    const onFirst = kind.length[0]! > 0 || kind.number[0]! > 0
    const usual = timesAt(kind.wantedMmS, bead.layerMm)
    const first = onFirst ? timesAt(slow, layers.heightMm[0]!) : usual
    for (let i = 0; i < layers.count; i++) {
      const { cruiseS, turnS } = i === 0 ? first : usual
      layerS[i]! += cruiseS * kind.length[i]! + turnS * kind.number[i]!
    }
  }
  return layerS
}

function kindsOf(census: Census, { lineMm }: Bead, printer: Printer): readonly Kind[] {
  const { layers, moves } = census
  const wallMm = sum(layers.wallMm2) / lineMm
  const brimMm2 = new Float64Array(layers.count)
  brimMm2[0] = census.brimMm3 / layers.heightMm[0]!
  const supportMm = (sum(layers.supportMm2) * SUPPORT_SHARE) / lineMm
  const supportRunMm = Math.sqrt(most(layers.supportMm2))
  const lines = { accelMmS2: printer.accelMmS2 }
  return [
    {
      length: layers.wallMm2,
      number: layers.contours,
      wantedMmS: printer.wallMmS,
      accelMmS2: printer.wallAccelMmS2,
      // Inner wall lines turn the same corners on shorter runs, so one scale fits them all.
      timeAt: (motion) =>
        moves.wallLapMm > 0
          ? lapTime(moves.wall, wallMm / moves.wallLapMm, motion)
          : { cruiseS: wallMm / motion.speedMmS, turnS: 0 },
    },
    {
      ...lines,
      length: moves.byLayer.skinMm,
      number: moves.byLayer.skinLines,
      wantedMmS: printer.skinMmS,
      timeAt: (motion) =>
        zigzagTime(
          moves.skin,
          hopCount(moves.oneWay.skin),
          lineMm,
          lineMm * moves.skin.slant,
          lineMm,
          motion,
        ),
    },
    {
      ...lines,
      length: layers.supportMm2,
      number: layers.supportMm2,
      wantedMmS: printer.infillMmS,
      timeAt: (motion) => evenRuns(supportMm, supportRunMm, motion),
    },
    {
      accelMmS2: printer.wallAccelMmS2,
      length: brimMm2,
      number: brimMm2,
      wantedMmS: printer.wallMmS,
      timeAt: (motion) => evenRuns(brimMm2[0]! / lineMm, Math.sqrt(layers.areaMm2[0]!), motion),
    },
  ]
}

/** Lines of which only the length and a typical run are known. */
function evenRuns(lengthMm: number, runMm: number, motion: Motion): LaidSeconds {
  if (lengthMm <= 0 || runMm <= 0) return { cruiseS: 0, turnS: 0 }
  const { speedMmS, accelMmS2 } = motion
  const corner = Math.min(motion.cornerMmS, speedMmS)
  const cruiseS = lengthMm / speedMmS
  return {
    cruiseS,
    turnS: (lengthMm / runMm) * moveTime(runMm, speedMmS, accelMmS2, corner) - cruiseS,
  }
}

function most(values: ArrayLike<number>): number {
  let largest = 0
  for (let i = 0; i < values.length; i++) largest = Math.max(largest, values[i]!)
  return largest
}

function sum(values: ArrayLike<number>): number {
  let total = 0
  for (let i = 0; i < values.length; i++) total += values[i]!
  return total
}
