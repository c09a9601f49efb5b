import type { LayerMoves } from './layerMoves.ts'
import { planLength } from './layerMoves.ts'
import { spread, type Spread } from './spread.ts'

/** Layers that take about as long are one, as a share. */
const TIME_STEP = 1.05
/** Of all layers so many take less: a tip, a scrap. */
const SCRAPS = 0.03
/**
 * Layers that take no longer than this, as a share of the shortest that are no scraps, may have
 * been slowed.
 */
const MAYBE_SLOWED = 1.3
/**
 * Speeds of layers that were surely not slowed count where they have this share of a kind's
 * lengths.
 */
const ENOUGH = 0.1

const binOf = (timeS: number): number => Math.round(Math.log(timeS) / Math.log(TIME_STEP))

/** How long a layer takes at the speeds it writes, ramps left out. s */
export function layerSeconds(moves: LayerMoves): number {
  let timeS = 0
  for (let i = 0; i < moves.count; i++) {
    if (moves.speedMmS[i]! > 0) timeS += planLength(moves, i) / moves.speedMmS[i]!
  }
  return timeS
}

/**
 * Tells which layers were slowed so that they can set: those that take no longer than the shortest
 * ones.
 */
export function layerTimes() {
  const counts = new Map<number, number>()
  let layers = 0
  return {
    /** The bin of a layer, by which `fullSpeed` is told of it. */
    add(timeS: number): number {
      const bin = timeS > 0 ? binOf(timeS) : 0
      counts.set(bin, (counts.get(bin) ?? 0) + 1)
      layers++
      return bin
    },
    /** The last bin of those that may have been slowed. */
    slowedUpTo(): number {
      let left = SCRAPS * layers
      for (const [bin, count] of [...counts].toSorted(([a], [b]) => a - b)) {
        left -= count
        if (left < 0) return bin + binOf(MAYBE_SLOWED)
      }
      return -Infinity
    },
  }
}

/**
 * The speed that lines of a kind are meant to have: the middle of those in layers that were not
 * slowed, where there are such lines; else of all. Lengths by time of the layer and speed, so that
 * no list of lines is kept.
 */
export function fullSpeed() {
  const byTime = new Map<number, Spread>()
  const among = (isMeant: (timeBin: number) => boolean): Spread => {
    const pool = spread()
    for (const [time, own] of byTime) if (isMeant(time)) own.pourInto(pool)
    return pool
  }
  return {
    add(timeBin: number, speedMmS: number, lengthMm: number): void {
      const own = byTime.get(timeBin) ?? spread()
      byTime.set(timeBin, own)
      own.add(speedMmS, lengthMm)
    },
    /** Null where nothing was laid. mm/s */
    told(slowedUpTo: number): number | null {
      const all = among(() => true)
      const full = among((time) => time > slowedUpTo)
      return (full.weight() >= ENOUGH * all.weight() ? full : all).quantile(0.5)
    },
  }
}
