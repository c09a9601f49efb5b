import type { HabitNumber, Habits } from '../model/habits.ts'
import { HABIT_DEFAULTS } from '../model/habits.ts'
import { HABIT_LIMITS, isWithin } from './limits.ts'

/**
 * A habit as it is shown and how far it may lie from its default while it is not known. What is
 * accepted stands in `limits.ts`.
 */
export interface HabitRange {
  readonly name: string
  /** One sentence: what is laid. */
  readonly what: string
  readonly unit: 'mm' | 'mm²' | '×' | 'lines' | 'share'
  /** Where printers' habits lie (common practice, no source). */
  readonly low: number
  readonly high: number
}

const WIDTH = { unit: '×', low: 0.8, high: 1.3 } as const

/** Every habit that is a number. */
export const HABIT_RANGES: Readonly<Record<HabitNumber, HabitRange>> = {
  outerWidthShare: {
    ...WIDTH,
    name: 'Outer wall width',
    what: 'The line along the outline, against the line width.',
  },
  innerWidthShare: {
    ...WIDTH,
    name: 'Inner wall width',
    what: 'Every further wall line, against the line width.',
  },
  skinWidthShare: {
    ...WIDTH,
    name: 'Skin width',
    what: 'Lines of solid skin, against the line width.',
  },
  infillWidthShare: {
    ...WIDTH,
    name: 'Infill width',
    what: 'Lines of infill, against the line width; the spacing keeps the infill share.',
  },
  firstWidthShare: {
    ...WIDTH,
    name: 'First layer width',
    what: 'All lines of the first layer, against the line width.',
  },
  oneLineBelow: {
    name: 'One line below',
    what: 'A wall thinner than this gets one line, a thicker one two.',
    unit: 'lines',
    low: 1.2,
    high: 2,
  },
  overlapShare: {
    name: 'Overlap',
    what: 'Skins and infill reach so far over the innermost wall line, against the line width.',
    unit: '×',
    low: 0,
    high: 0.5,
  },
  smallRoomMm2: {
    name: 'Small rooms',
    what: 'A room inside the walls smaller than this is laid solid.',
    unit: 'mm²',
    low: 10,
    high: 100,
  },
  holdMm: {
    name: 'Hold',
    what: 'A skin that reaches inside the walls is carried on so far into the room.',
    unit: 'mm',
    low: 0.5,
    high: 6,
  },
  slopeBandMm: {
    name: 'Slope band',
    what: 'Solid bands under slopes and inner steps are at least so wide.',
    unit: 'mm',
    low: 0.5,
    high: 6,
  },
  strandShare: {
    name: 'Strands',
    what:
      'The first solid layer over a sparse room, and an underside in the air, is laid in round ' +
      'strands, so much thicker.',
    unit: '×',
    low: 1,
    high: 1.5,
  },
  joinedShare: {
    name: 'Joined ends',
    what: 'Infill lines are joined along this share of the wall they end on.',
    unit: 'share',
    low: 0,
    high: 0.5,
  },
}

/** A habit that is one of a few. */
interface HabitChoice<T> {
  readonly name: string
  /** See `HabitRange`. */
  readonly what: string
  readonly choices: readonly T[]
  /** Each choice as it is shown, in the same order. */
  readonly words: readonly string[]
}

type ChoiceKey = Exclude<keyof Habits, HabitNumber>

/** Every habit that is no number. */
const HABIT_CHOICES: { readonly [K in ChoiceKey]: HabitChoice<Habits[K]> } = {
  bead: {
    name: 'Line shape',
    what: 'Lines have square sides and lie one width apart, or round ones and lie a little closer.',
    choices: ['square', 'round'],
    words: ['Square', 'Round'],
  },
  thinWalls: {
    name: 'Thin walls',
    what: 'A thin wall gets whole lines, too many or too few, or lines whose widths vary to fill it.',
    choices: ['whole', 'varied'],
    words: ['Whole lines', 'Varied widths'],
  },
  undersides: {
    name: 'Undersides',
    what: 'An underside in the air gets as many skins as the bottom, or as the more of top and bottom.',
    choices: ['bottom', 'most'],
    words: ['As the bottom', 'The more of both'],
  },
  gapLines: {
    name: 'Gap lines',
    what: 'What is left too narrow for a line gets one of its own width, or stays open.',
    choices: [true, false],
    words: ['Laid', 'Left open'],
  },
}

/** Every habit, in the order they are shown. */
export const HABIT_FIELDS: {
  readonly [K in keyof Habits]: K extends HabitNumber ? HabitRange : HabitChoice<Habits[K]>
} = { ...HABIT_CHOICES, ...HABIT_RANGES }

/** What is wrong with habits told from outside; null where nothing is. */
export function refuseHabits(told: Readonly<Record<string, unknown>>): string | null {
  for (const [key, value] of Object.entries(told)) {
    if (!(key in HABIT_DEFAULTS)) {
      return `There is no habit “${key}”; there are ${Object.keys(HABIT_DEFAULTS).join(', ')}.`
    }
    if (isChoice(key)) {
      const choices: readonly unknown[] = HABIT_CHOICES[key].choices
      if (!choices.some((one) => one === value)) return `“${key}” must be ${choices.join(' or ')}.`
      continue
    }
    const limits = HABIT_LIMITS[key as HabitNumber]
    if (typeof value !== 'number' || !isWithin(limits, value)) {
      return `“${key}” must be a number from ${limits.min} to ${limits.max}.`
    }
  }
  return null
}

function isChoice(key: string): key is ChoiceKey {
  return key in HABIT_CHOICES
}
