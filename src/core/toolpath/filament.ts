import type { LayerLines } from './layerLines.ts'
import { beside, isClosed, runsAlong } from './layerLines.ts'
import { planLength } from './layerMoves.ts'

/** Lines are laid no closer and, where they touch, no further apart. mm */
const CLOSEST_MM = 0.15
const FURTHEST_MM = 1.5
/** Bins of the section: steps of 2 % from 0.5 mm². */
const STEP = Math.log(1.02)
const LEAST_MM2 = 0.5
const BINS = 180
/** Bins to either side that belong to a peak. */
const REACH = 2
/** What is shorter says little of its neighbours. mm */
const LEAST_MM = 0.3
/**
 * With so many mm of skin beside skin, walls are not asked: they lie closer or further than they
 * are wide.
 */
const ENOUGH_MM = 300
/** Filaments are sold in these diameters (common practice, no source). mm */
const DIAMETERS_MM = [1.75, 2.85, 3] as const
/** Taken where lines that touch were never seen (common practice, no source). mm */
export const USUAL_MM = 1.75
/** A measured diameter this near to one of those is meant to be it, as a share. */
const NEAR = 0.04
/**
 * Dense infill looks like skin of a thicker filament: a thinner one with this share of its lengths
 * is the one.
 */
const THINNER_SHARE = 0.4
/** With less than this share of all lengths no sold diameter fits. */
const SOLD_SHARE = 0.1

/**
 * Learns how thick the filament is, which moves do not say. Lines that touch lie as far apart as
 * they are wide, and width × layer height is the filament's section × what was pushed per length.
 */
export interface FilamentSeen {
  readonly add: (layer: LayerLines) => void
  /** Section of the filament; null while no lines were seen to touch. mm² */
  readonly sectionMm2: () => number | null
}

export function filamentSeen(): FilamentSeen {
  const skin = new Float64Array(BINS)
  const any = new Float64Array(BINS)
  return {
    add(layer) {
      const { moves, heightMm } = layer
      for (const move of layer.lines) {
        const length = planLength(moves, move)
        if (length < LEAST_MM) continue
        const pushed = moves.laidMm[move]! / length / heightMm
        for (const side of [1, -1] as const) {
          const next = beside(layer, move, 0.5, side, FURTHEST_MM).find(
            (meeting) => meeting.distanceMm >= CLOSEST_MM && runsAlong(layer, move, meeting.move),
          )
          if (!next) continue
          const bin = binOf(next.distanceMm / pushed)
          if (bin < 0 || bin >= BINS) continue
          any[bin]! += length
          if (!isClosed(layer, move) && !isClosed(layer, next.move)) skin[bin]! += length
        }
      }
    },
    sectionMm2() {
      const enough = skin.reduce((a, b) => a + b, 0) >= ENOUGH_MM
      return peakOf(enough ? skin : any)
    },
  }
}

/** Middle of the peak that a sold diameter makes, or else of the highest one. */
function peakOf(lengths: Float64Array): number | null {
  const all = lengths.reduce((a, b) => a + b, 0)
  if (all === 0) return null
  const windows = lengths.map((_, i) => {
    let sum = 0
    for (let k = -REACH; k <= REACH; k++) sum += lengths[i + k] ?? 0
    return sum
  })
  const peaks = DIAMETERS_MM.map((diameterMm) => {
    const low = binOf((Math.PI * (diameterMm * (1 - NEAR)) ** 2) / 4)
    const high = binOf((Math.PI * (diameterMm * (1 + NEAR)) ** 2) / 4)
    let at = low
    for (let k = low; k <= high; k++) if (windows[k]! > windows[at]!) at = k
    return at
  })
  const best = Math.max(...peaks.map((at) => windows[at]!))
  const sold = peaks.find((at, k) => windows[at]! >= (k === 0 ? THINNER_SHARE : 1) * best)
  const at = best >= SOLD_SHARE * all ? sold! : windows.indexOf(Math.max(...windows))
  let weighted = 0
  for (let k = -REACH; k <= REACH; k++) weighted += (lengths[at + k] ?? 0) * (at + k)
  return LEAST_MM2 * Math.exp((weighted / windows[at]!) * STEP)
}

const binOf = (sectionMm2: number): number => Math.round(Math.log(sectionMm2 / LEAST_MM2) / STEP)

/** The diameter as sold that a section belongs to; null where it is near none. mm */
export function soldDiameterMm(sectionMm2: number): number | null {
  const seenMm = Math.sqrt((4 * sectionMm2) / Math.PI)
  const off = (diameterMm: number): number => Math.abs(seenMm / diameterMm - 1)
  const nearest = DIAMETERS_MM.reduce((best, each) => (off(each) < off(best) ? each : best))
  return off(nearest) <= NEAR ? nearest : null
}
