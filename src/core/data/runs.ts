import type { RunSettings } from '../model/runs.ts'

/** Distances and evenings as people start with (common practice, no source). */
export const RUNS_DEFAULTS: RunSettings = {
  way: 'fewest beds',
  order: 'together',
  gapMm: 2,
  marginMm: 3,
  eveningH: 4,
  headMm: 40,
  underHeadMm: 25,
}

/**
 * A run longer than an evening is left alone until morning; more than this is added to none (common
 * practice, no source).
 */
export const NIGHT_H = 10

/** Pieces laid at most; a frame of more is not divided into runs. */
export const MOST_RUN_PIECES = 150
