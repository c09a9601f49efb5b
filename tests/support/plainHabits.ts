import type { Habits } from '../../src/core/model/habits.ts'

/**
 * Geometry and nothing else: walls, skins and rooms as regions, nothing carried on, widened or laid
 * over. For checks against closed forms and polygons.
 */
export const PLAIN_HABITS: Habits = {
  bead: 'square',
  outerWidthShare: 1,
  innerWidthShare: 1,
  skinWidthShare: 1,
  infillWidthShare: 1,
  firstWidthShare: 1,
  thinWalls: 'varied',
  oneLineBelow: 1.6,
  gapLines: true,
  overlapShare: 0,
  // 16 lines of 0.4 mm squared.
  smallRoomMm2: 2.56,
  holdMm: 0,
  slopeBandMm: 0,
  undersides: 'bottom',
  strandShare: 1,
  joinedShare: 0.5,
}
