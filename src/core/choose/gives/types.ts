import type { CountedWay } from '../layerStiffness.ts'

/** How a part gives and rings when it is printed one way, under the load it has. */
export interface Gives {
  readonly deflectionMm: number
  /** First tone; null without a mass. Hz */
  readonly firstHz: number | null
}

/** A way with the mass of one piece, supports off. */
export interface WeighedWay extends Pick<CountedWay, 'recipe' | 'material'> {
  readonly massG: number
}

/**
 * Null where nothing is known of it: a geometry that was not looked at, a part that falls apart.
 */
export type GivesOf = (way: WeighedWay) => Gives | null

/** What a part is asked for: at most so far, at least so high. */
export interface GivesLimit {
  readonly deflectionMm?: number
  readonly firstHz?: number
}

/** The load of one part. */
export interface GivesLoad {
  readonly loadN: number
  readonly tipG: number
}

/** Which model tells it. */
export type GivesBy = 'beam' | 'solid'
