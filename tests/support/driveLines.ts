import { moreOf } from '../../src/core/data/printerMore.ts'
import type { Printer } from '../../src/core/model/figures.ts'
import type { DrawnLine, Laid, LineKind, SpeedKind } from './drawnLine.ts'

/** Seconds of driving the lines, start-up left out. */
interface Driven {
  readonly timeS: number
  readonly laidS: Readonly<Record<LineKind, number>>
  readonly hopS: Readonly<Record<LineKind, number>>
  readonly hops: Readonly<Record<LineKind, number>>
  readonly retracts: Readonly<Record<LineKind, number>>
}

/**
 * The slow oracle, last third: drives each path with full look-ahead — forward and backward over
 * every single move, so that no corner is taken faster than its limit and no ramp is steeper than
 * the acceleration — and each layer for as long as it must take at least, or as its slowest speed
 * makes of it.
 */
export function driveLines(laid: Laid, printer: Printer): Driven {
  const kinds = { wall: 0, skin: 0, infill: 0 }
  const total = {
    laidS: { ...kinds },
    hopS: { ...kinds },
    hops: { ...kinds },
    retracts: { ...kinds },
  }
  const { outerWallMmS, smallLoopMmS, topSkinMmS, strandMmS, floorMmS } = moreOf(printer)
  const wanted: Readonly<Record<SpeedKind, number>> = {
    outer: outerWallMmS,
    inner: printer.wallMmS,
    small: smallLoopMmS,
    skin: printer.skinMmS,
    top: topSkinMmS,
    strand: strandMmS,
    infill: printer.infillMmS,
  }
  let timeS = 0
  laid.layers.forEach(({ heightMm, lines }, i) => {
    let layerS = 0
    let restS = printer.layerChangeS
    let pathMm = 0
    const limit = i === 0 ? printer.firstLayerMmS : Infinity
    const melt = printer.flowMm3S / (laid.lineMm * heightMm)
    for (const { kind, line, hopMm } of lines) {
      const accel = kind === 'wall' ? printer.wallAccelMmS2 : printer.accelMmS2
      const laidS =
        line.seconds.get(printer) ??
        driveSeconds(
          line,
          line.speeds.map((speed) => Math.min(wanted[speed], limit, melt)),
          accel,
          printer.cornerMmS,
          kind === 'infill',
        )
      line.seconds.set(printer, laidS)
      const hopS = travelSeconds(hopMm, printer)
      layerS += laidS
      restS += hopS
      pathMm += line.lengthMm
      total.laidS[kind] += laidS
      total.hopS[kind] += hopS
      total.hops[kind]++
      if (hopMm > RETRACT_BEYOND_MM) total.retracts[kind]++
    }
    timeS += restS + Math.max(layerS, Math.min(printer.leastLayerS - restS, pathMm / floorMmS))
  })
  return { timeS, ...total }
}

/** Common practice, no source. */
const RETRACT_BEYOND_MM = 1.5

function travelSeconds(mm: number, printer: Printer): number {
  const { travelMmS: v, travelAccelMmS2: a } = printer
  const moving = mm >= (v * v) / a ? mm / v + v / a : 2 * Math.sqrt(mm / a)
  return moving + (mm > RETRACT_BEYOND_MM ? printer.retractS : 0)
}

/**
 * Look-ahead over one path: entry speeds from the corner rule, and where facets stand for a curve
 * no more sideways than it accelerates (v²/r ≤ a); then no ramp steeper than the acceleration,
 * either way.
 */
function driveSeconds(
  { lengthsMm: lengths, turns }: DrawnLine,
  speeds: readonly number[],
  a: number,
  cornerMmS: number,
  curved: boolean,
): number {
  const at = turns.map((turn, i) => {
    if (i === 0 || i === turns.length - 1) return 0
    const speed = Math.min(speeds[i - 1]!, speeds[i]!)
    const corner = Math.min(speed, turn > 0 ? (cornerMmS * Math.SQRT1_2) / turn : speed)
    if (!curved || turn > FACET_TURN || turn === 0) return corner
    const radius = (lengths[i - 1]! + lengths[i]!) / 2 / (2 * Math.asin(turn))
    return Math.min(corner, Math.sqrt(a * radius))
  })
  for (let i = 1; i < at.length; i++)
    at[i] = Math.min(at[i]!, Math.sqrt(at[i - 1]! ** 2 + 2 * a * lengths[i - 1]!))
  for (let i = at.length - 2; i >= 0; i--)
    at[i] = Math.min(at[i]!, Math.sqrt(at[i + 1]! ** 2 + 2 * a * lengths[i]!))
  return lengths.reduce(
    (seconds, mm, i) => seconds + rampSeconds(mm, at[i]!, at[i + 1]!, speeds[i]!, a),
    0,
  )
}

/** sin(half the turn) up to which a corner is one of a curve's facets: 25°. */
const FACET_TURN = 0.216

function rampSeconds(mm: number, from: number, to: number, speed: number, a: number): number {
  const peak = Math.min(speed, Math.sqrt((2 * a * mm + from * from + to * to) / 2))
  const ramps = (2 * peak * peak - from * from - to * to) / (2 * a)
  return (2 * peak - from - to) / a + Math.max(0, mm - ramps) / speed
}
