import type { Range, Sourced } from '../model/figures.ts'

/**
 * Metric twist drills as sets are sold: every 0.1 mm from 1 to 14 mm, with 1.25 and 2.05 mm for
 * tapping M1.6 and M2.5 (common practice, no source: ISO 235, which lists stocked sizes, was not
 * read).
 */
export const DRILLS_MM: readonly number[] = [
  ...Array.from({ length: 131 }, (_, i) => (10 + i) / 10),
  1.25,
  2.05,
].sort((a, b) => a - b)

/**
 * How much narrower a hole comes out than its flats once plastic has shrunk: the bead is pulled
 * inwards round a bend, and the roof of a lying hole sags. 0.1 to 0.3 mm on the diameter of upright
 * ones is what builders report (a 5 mm hole near 4.8: kapycad.com holes and pegs, read in part); of
 * lying and slanted ones common practice, no source.
 */
export const HOLE_LOSS_MM: Readonly<Record<'upright' | 'level' | 'slanted', Range>> = {
  upright: { low: 0.1, mid: 0.2, high: 0.3 },
  slanted: { low: 0.05, mid: 0.25, high: 0.45 },
  level: { low: 0.1, mid: 0.3, high: 0.5 },
}

/** One deviation between holes drawn alike on one print (common practice, no source). mm */
export const HOLE_SCATTER_MM = 0.025
/** One deviation of a calliper's jaws in a small hole, and of pins that step by 0.1 mm. mm */
export const HOLE_READING_MM = 0.03
/** A pin that goes and the next that does not: the hole lies half a step above. mm */
export const PIN_STEP_MM = 0.1

/** Rubber is squeezed by so much of its neck, so that it stays (common practice, no source). */
export const NECK_SQUEEZE = { least: 0.005, usual: 0.025, most: 0.08 } as const
/**
 * Lines of plastic that have to stand round a hole once it is drilled (common practice, no source).
 */
export const LEAST_LINES = 2

/**
 * Outside of a boss for a thread cut into plastic, over the screw's diameter: 2 to 2.5
 * (celofasteners.com, 220).
 */
export const BOSS_FACTOR: Sourced = {
  value: 2,
  mark: 'read',
  source: 'celofasteners.com/en/content/220; hkymould.com',
}

export const DRILL_CAUTION =
  'Drill prints by hand or slowly in a stand, clamped and not held, with a sharp drill and eye ' +
  'protection; let it cut and not melt.'
/** Groove and plate may differ by this either way (common practice, no source). mm */
export const GROOVE_SLACK_MM = 0.2

export const FIBRE_CAUTION =
  'Fibre-filled plastic and carbon plate give dust that must not be breathed: wet it or draw it off, ' +
  'wear a mask for fine dust, gloves and glasses, and follow the maker’s sheet.'
