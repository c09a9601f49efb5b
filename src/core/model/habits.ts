/**
 * What line width means. With `square` ends a line fills its width × height and lies one width from
 * the next. With `round` ends it holds (1 − π/4) × height² less, and lies that much closer: 0.357
 * instead of 0.4 at 0.2 mm.
 */
export type Bead = 'square' | 'round'

/** What round ends lack of a square of the line's height: 1 − π/4. */
export const ROUND_LACK = 1 - Math.PI / 4

/**
 * How a toolpath lays what geometry leaves open. Every one may differ from printer to printer; see
 * data/habits.ts.
 */
export interface Habits {
  readonly bead: Bead
  /** Widths by kind, × the recipe's line width. */
  readonly outerWidthShare: number
  readonly innerWidthShare: number
  readonly skinWidthShare: number
  readonly infillWidthShare: number
  /** Of all lines of the first layer. */
  readonly firstWidthShare: number
  /**
   * `whole` lines in thin walls, too many or too few for their thickness; or lines whose widths
   * vary to fill it.
   */
  readonly thinWalls: 'whole' | 'varied'
  /** Walls thinner than so many lines get one whole line, thicker ones two. */
  readonly oneLineBelow: number
  /** Whether what is left too narrow for a line gets one of its own width. */
  readonly gapLines: boolean
  /** How far skins and infill reach over the innermost wall line, × the line width. */
  readonly overlapShare: number
  /** Rooms smaller than this are laid solid. */
  readonly smallRoomMm2: number
  /** How far a skin that reaches inside the walls is carried on into the room. */
  readonly holdMm: number
  /** Least width of the solid bands under slopes and inner steps. */
  readonly slopeBandMm: number
  /** Plastic in the first solid layer over sparse rooms, × that of a plain one. */
  readonly strandShare: number
  /**
   * Skins over undersides in the air: as many as on the `bottom`, or as the `most` of top and
   * bottom.
   */
  readonly undersides: 'bottom' | 'most'
  /** Share of the boundary that lines end on which joins follow from one line to the next. */
  readonly joinedShare: number
}

/** A habit that is a number, so that it has a range. */
export type HabitNumber = Exclude<keyof Habits, 'bead' | 'thinWalls' | 'gapLines' | 'undersides'>

/** What is known of a printer's habits; all else is as `HABIT_DEFAULTS` has it. */
export type KnownHabits = Partial<Habits>

/** Round figures of our own inside the ranges of data/habits.ts (common practice, no source). */
export const HABIT_DEFAULTS: Habits = {
  bead: 'square',
  outerWidthShare: 1,
  innerWidthShare: 1,
  skinWidthShare: 1,
  infillWidthShare: 1,
  firstWidthShare: 1,
  thinWalls: 'whole',
  oneLineBelow: 1.6,
  gapLines: true,
  overlapShare: 0.1,
  smallRoomMm2: 25,
  holdMm: 3.5,
  slopeBandMm: 3.5,
  undersides: 'most',
  strandShare: 1.3,
  joinedShare: 0.45,
}

/** All habits, what is known of them over what is usual. */
export const habitsOf = ({ habits }: { readonly habits?: KnownHabits | undefined }): Habits =>
  habits ? { ...HABIT_DEFAULTS, ...habits } : HABIT_DEFAULTS
