import { chanceBelow, rangeOf } from '../doubt/bell.ts'
import type { Bell } from '../doubt/belief.ts'
import type { Lesson } from '../doubt/lessons.ts'
import { scaleNoiseG } from '../doubt/readings.ts'
import { STRAY_OFF } from '../doubt/strays.ts'
import type { Range } from '../model/figures.ts'
import { frameDoubt, readingId, type FrameDoubt, type WeighedPieces } from './frameDoubt.ts'

/** What lies on the scale, before it was read. */
export interface OnScaleNow {
  readonly partId: string
  readonly pieces: number
  /** The smallest step the scale shows, g. */
  readonly stepG: number
  readonly tareG: number
}

/** A reading as it is looked at, not yet taken. */
export interface LookedAt {
  /** Chance of one as far off or further, 0–1. */
  readonly chance: number
  /** So far off that it would not be believed without asking. */
  readonly isFar: boolean
  /** Printed mass of the frame with it, g. */
  readonly frameG: number
}

export interface ForetoldPieces {
  /** Net, of all pieces on the scale, the scale's own step in it. g */
  readonly netG: Range
  readonly lookAt: (netG: number) => LookedAt
}

/**
 * What the scale should show of some pieces of a part, by all that is known but an earlier weighing
 * of themselves, and what a reading of them would do. Null for a part without figures.
 */
export function foretellPieces(
  doubt: FrameDoubt,
  { partId, pieces, stepG, tareG }: OnScaleNow,
  lessons: readonly Lesson[] = [],
): ForetoldPieces | null {
  const own = doubt.parts.find(({ id }) => id === partId)
  if (own === undefined || own.byScale === true) return null
  const ofParts = new Set(doubt.parts.map(({ id }) => readingId(id)))
  const others = doubt.readings.filter(({ id }) => !ofParts.has(id))
  const doubtWith = (weighed: WeighedPieces | null): FrameDoubt => {
    const parts = doubt.parts.map((part) => (part === own ? { ...part, weighed } : part))
    return frameDoubt(parts, doubt.items, others, lessons)
  }
  const before = doubtWith(null)
  const { mean, sigma } = before.known.bell(before.known.spare(partId, pieces))
  const noiseOf = (netG: number): number => scaleNoiseG(netG, stepG, tareG > 0)
  const bell: Bell = { mean, sigma: Math.hypot(sigma, noiseOf(mean)) }
  return {
    netG: rangeOf(bell),
    lookAt(netG) {
      const off = Math.abs(netG - mean)
      const weighed = {
        eachG: netG / pieces,
        pieces,
        noiseG: noiseOf(netG) / pieces,
        trusted: false,
      }
      const ids = doubt.parts.map(({ id }) => id)
      return {
        chance: 2 * chanceBelow(bell, mean - off),
        isFar: off > STRAY_OFF * bell.sigma,
        frameG: doubtWith(weighed).bell('mass', 'flying', ids).mean,
      }
    },
  }
}
