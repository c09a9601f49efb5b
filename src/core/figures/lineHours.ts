import type { Census } from '../model/census.ts'
import type { Material, Printer } from '../model/figures.ts'
import { HABIT_DEFAULTS } from '../model/habits.ts'
import type { RunTable } from '../model/moves.ts'
import type { Recipe } from '../model/settings.ts'
import { moreOf } from '../data/printerMore.ts'
import { SUPPORT_SHARE } from './deposit.ts'
import { meltSpeedMmS } from './flow.ts'
import { moveTime } from './kinematics.ts'
import type { LaidSeconds, Motion } from './motion.ts'
import { driveLines, hopCount, lapTime, zigzagTime } from './motion.ts'
import { createMemory } from './remember.ts'

/**
 * One kind of line: how it spreads over the layers, and how long all of it takes at a wanted speed.
 */
interface Kind {
  /** On each layer, in any measure of length and of number. */
  readonly length: ArrayLike<number>
  readonly number: ArrayLike<number>
  readonly wantedMmS: number
  readonly accelMmS2: number
  readonly timeAt: (motion: Motion) => LaidSeconds
}

/**
 * Of a recipe, what its lines but those of infill take their time by; the rest stands in the
 * census.
 */
interface Bead extends Pick<Recipe, 'lineMm' | 'layerMm'> {
  /** Of a gap line, in the middle of those there are. */
  readonly gapLineMm: number
}

/** Lines of every kind but infill, on each layer. */
interface LineSeconds {
  readonly seconds: Float64Array
  readonly lengthMm: Float64Array
}

/** Two printers, the printer and a slower one, of a few recipes. */
const remember = createMemory<LineSeconds>(4)

/**
 * Seconds that the lines of every kind but infill take on each layer, and how long they are. Not to
 * be written to: no share of infill changes them, so they are kept.
 */
export function lineSeconds(
  census: Census,
  recipe: Recipe,
  { flow }: Pick<Material, 'flow'>,
  printer: Printer,
): LineSeconds {
  const { lineMm, layerMm } = recipe
  const gapMm = gapLineMm(recipe)
  return remember(census, [lineMm, layerMm, gapMm, flow, printer], () =>
    secondsOf(census, { lineMm, layerMm, gapLineMm: gapMm }, flow, printer),
  )
}

/**
 * Width of a gap line, from none to as wide as what is left before two lines more are laid: in the
 * middle.
 */
export function gapLineMm({ habits, lineMm }: Pick<Recipe, 'habits' | 'lineMm'>): number {
  return ((habits?.oneLineBelow ?? HABIT_DEFAULTS.oneLineBelow) / 2) * lineMm
}

function secondsOf(census: Census, bead: Bead, flow: number, printer: Printer): LineSeconds {
  const { layers } = census
  const layerS = new Float64Array(layers.count)
  const lengthMm = new Float64Array(layers.count)
  for (const kind of kindsOf(census, bead, printer)) {
    const length = sum(kind.length)
    const number = sum(kind.number)
    if (length <= 0 || number <= 0) continue
    const timesAt = (
      wanted: number,
      heightMm: number,
    ): LaidSeconds & { readonly pathMm: number } => {
      const speedMmS = meltSpeedMmS(wanted, printer.flowMm3S, bead.lineMm, heightMm, flow)
      const motion = { speedMmS, accelMmS2: kind.accelMmS2, cornerMmS: printer.cornerMmS }
      const { cruiseS, turnS } = kind.timeAt(motion)
      const pathMm = (cruiseS * speedMmS) / length
      return { cruiseS: cruiseS / length, turnS: turnS / number, pathMm }
    }
    const slow = Math.min(kind.wantedMmS, printer.firstLayerMmS)
    const onFirst = kind.length[0]! > 0 || kind.number[0]! > 0
    const usual = timesAt(kind.wantedMmS, bead.layerMm)
    const first = onFirst ? timesAt(slow, layers.heightMm[0]!) : usual
    for (let i = 0; i < layers.count; i++) {
      const { cruiseS, turnS, pathMm } = i === 0 ? first : usual
      layerS[i]! += cruiseS * kind.length[i]! + turnS * kind.number[i]!
      lengthMm[i]! += pathMm * kind.length[i]!
    }
  }
  return { seconds: layerS, lengthMm }
}

function kindsOf(census: Census, bead: Bead, printer: Printer): readonly Kind[] {
  return [
    ...wallKinds(census, bead, printer),
    ...skinKinds(census, bead, printer),
    ...extraKinds(census, bead, printer),
  ]
}

/** Outermost lines, those behind them, all lines of small loops, and gap lines. */
function wallKinds({ layers, moves }: Census, bead: Bead, printer: Printer): readonly Kind[] {
  const { outerMm, smallMm, smallLoops } = moves.byLayer
  const { outerWallMmS, smallLoopMmS, gapMmS } = moreOf(printer)
  const each = (valueAt: (i: number) => number): Float64Array =>
    Float64Array.from(layers.contours, (_, i) => valueAt(i))
  const wallMm = each((i) => (layers.wallMm2[i]! - layers.gapMm2[i]!) / bead.lineMm)
  const innerMm = each((i) => Math.max(0, wallMm[i]! - outerMm[i]! - smallMm[i]!))
  const gapMm = each((i) => layers.gapMm2[i]! / bead.gapLineMm)
  const largeMm = sum(outerMm) + sum(innerMm)
  const largeLoops = each((i) => layers.contours[i]! - smallLoops[i]!)
  // Inner wall lines turn the same corners on shorter runs, so one scale fits them all.
  const large = (lengthMm: number) => (motion: Motion) =>
    lapsTime(moves.wall, moves.wallLapMm, largeMm, lengthMm, motion)
  const accelMmS2 = printer.wallAccelMmS2
  return [
    {
      length: outerMm,
      number: largeLoops,
      wantedMmS: outerWallMmS,
      accelMmS2,
      timeAt: large(sum(outerMm)),
    },
    {
      length: innerMm,
      number: largeLoops,
      wantedMmS: printer.wallMmS,
      accelMmS2,
      timeAt: large(sum(innerMm)),
    },
    {
      length: smallMm,
      number: smallLoops,
      wantedMmS: smallLoopMmS,
      accelMmS2,
      timeAt: (motion) =>
        lapsTime(moves.smallLoop, moves.smallLapMm, sum(smallMm), sum(smallMm), motion),
    },
    { length: gapMm, number: gapMm, wantedMmS: gapMmS, accelMmS2, timeAt: large(sum(gapMm)) },
  ]
}

/**
 * Seconds of `lengthMm` of wall lines that turn as the laps do whose lines are `allMm` long
 * together.
 */
function lapsTime(
  tables: readonly RunTable[],
  lapMm: number,
  allMm: number,
  lengthMm: number,
  motion: Motion,
): LaidSeconds {
  if (!(lapMm > 0 && allMm > 0)) return { cruiseS: lengthMm / motion.speedMmS, turnS: 0 }
  return timesOver(lapTime(tables, allMm / lapMm, motion), lengthMm / allMm)
}

const timesOver = ({ cruiseS, turnS }: LaidSeconds, times: number): LaidSeconds => ({
  cruiseS: cruiseS * times,
  turnS: turnS * times,
})

/**
 * Skin that others lie on, skin that shows on top, and strands. What of a layer's inside is larger
 * than the layer above shows on top: right for faces that step in, short where a part grows to one
 * side as it steps in on the other.
 */
function skinKinds({ layers, moves }: Census, { lineMm }: Bead, printer: Printer): readonly Kind[] {
  const { skinMm, skinLines } = moves.byLayer
  const { topSkinMmS, strandMmS } = moreOf(printer)
  // The census tells the layer of a strand by one or two either way; what has no skin lies higher.
  let carriedMm2 = 0
  const strand = Float64Array.from(skinMm, (_, i) => {
    const skinMm2 = layers.skinMm2[i]!
    const hereMm2 = Math.min(skinMm2, layers.strandMm2[i]! + carriedMm2)
    carriedMm2 += layers.strandMm2[i]! - hereMm2
    return skinMm2 > 0 ? hereMm2 / skinMm2 : 0
  })
  const top = Float64Array.from(skinMm, (_, i) => {
    const skinMm2 = layers.skinMm2[i]!
    const above = i + 1 < layers.count ? layers.areaMm2[i + 1]! : 0
    const bareMm2 = Math.max(0, layers.areaMm2[i]! - layers.wallMm2[i]! - above)
    return skinMm2 > 0 ? Math.min(1 - strand[i]!, bareMm2 / skinMm2) : 0
  })
  const plain = strand.map((share, i) => 1 - share - top[i]!)
  const [allMm, allLines] = [sum(skinMm), sum(skinLines)]
  const zigzags = hopCount(moves.oneWay.skin)
  const stepMm = lineMm * moves.skin.slant
  const kind = (share: Float64Array, wantedMmS: number): Kind => {
    const length = share.map((part, i) => part * skinMm[i]!)
    const number = share.map((part, i) => part * skinLines[i]!)
    const timeAt = (motion: Motion): LaidSeconds => {
      const lines = driveLines(moves.skin, lineMm, motion)
      const all = zigzagTime(lines, zigzags, lineMm, stepMm, motion)
      return {
        cruiseS: allMm > 0 ? (all.cruiseS * sum(length)) / allMm : 0,
        turnS: allLines > 0 ? (all.turnS * sum(number)) / allLines : 0,
      }
    }
    return { length, number, wantedMmS, accelMmS2: printer.accelMmS2, timeAt }
  }
  return [kind(plain, printer.skinMmS), kind(top, topSkinMmS), kind(strand, strandMmS)]
}

/** What is removed after printing. */
function extraKinds(census: Census, { lineMm }: Bead, printer: Printer): readonly Kind[] {
  const { layers } = census
  const supportMm = Float64Array.from(layers.supportMm2, (mm2) => (mm2 * SUPPORT_SHARE) / lineMm)
  const supportRunMm = Math.sqrt(most(layers.supportMm2))
  const brimMm = new Float64Array(layers.count)
  brimMm[0] = census.brimMm3 / layers.heightMm[0]! / lineMm
  return [
    {
      length: supportMm,
      number: supportMm,
      wantedMmS: printer.infillMmS,
      accelMmS2: printer.accelMmS2,
      timeAt: (motion) => evenRuns(sum(supportMm), supportRunMm, motion),
    },
    {
      length: brimMm,
      number: brimMm,
      wantedMmS: printer.wallMmS,
      accelMmS2: printer.wallAccelMmS2,
      timeAt: (motion) => evenRuns(brimMm[0]!, Math.sqrt(layers.areaMm2[0]!), motion),
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
