import type { Printer, PrinterMore } from '../model/figures.ts'
import type { HabitNumber } from '../model/habits.ts'
import type { Pattern, Recipe } from '../model/settings.ts'

/*
 * The one table of what may be typed, passed to the command, stored and opened again. Wider than
 * sensible, narrower than absurd, and small enough that sums and powers of such numbers stay
 * numbers. `tests/core/data/limits.test.ts` holds every row against all four places.
 */

declare const ofTheTable: unique symbol

/** Range a number must lie in, both ends included. Only this file makes one. */
export interface Limits {
  readonly min: number
  readonly max: number
  /** Whole numbers only. */
  readonly whole: boolean
  /** Never there; without it the compiler refuses limits that are written down elsewhere. */
  readonly [ofTheTable]: true
}

type LimitTable = Readonly<Record<string, Limits>>

export type RecipeNumber = Exclude<keyof Recipe, 'pattern' | 'supports' | 'habits'>

const real = (min: number, max: number) => ({ min, max, whole: false }) as Limits
const whole = (min: number, max: number) => ({ min, max, whole: true }) as Limits
const share = real(0, 1)
const money = real(0, 1_000_000)

export const RECIPE_LIMITS: Readonly<Record<RecipeNumber, Limits>> = {
  layerMm: real(0.02, 2),
  firstLayerMm: real(0.02, 2),
  lineMm: real(0.1, 3),
  walls: whole(0, 50),
  topSkins: whole(0, 1000),
  bottomSkins: whole(0, 1000),
  infillPct: real(0, 100),
  supportAngleDeg: real(0, 89),
  brimMm: real(0, 50),
}

/**
 * A layer higher than this share of the line's width is squeezed too little to hold (common
 * practice, no source).
 */
export const LAYER_TO_LINE_MOST = 0.8

/** A zone's own infill, per cent. */
export const ZONE_PCT_LIMITS: Limits = real(0, 100)
/** Zones of one part. */
export const ZONES_MOST = 20
/**
 * Infill of a zone that nobody gave one: a zone is drawn for strength more often than for
 * lightness.
 */
export const ZONE_PCT_DEFAULT = 100

/** Pieces of one part: on the frame, in the bag, on the scale or in one print. */
export const PIECES_LIMITS = {
  quantity: whole(1, 100_000),
  spares: whole(0, 100_000),
} as const satisfies LimitTable

export const MATERIAL_LIMITS = {
  densityGCm3: real(0.05, 25),
  pricePerKg: money,
  diameterMm: real(0.5, 5),
  flow: real(0.05, 2),
  youngsGPa: real(0.001, 500),
  strengthMPa: real(0, 2000),
  heatLimitC: real(0, 500),
  shrinkagePct: real(0, 100),
  nozzleC: real(100, 500),
  bedC: real(0, 200),
} as const satisfies LimitTable

export type PrinterNumber = Exclude<keyof Printer, 'id' | 'name' | 'habits' | keyof PrinterMore>

const speed = real(1, 1000)
const accel = real(50, 50_000)

/** Of the printer; the words for them stand in `printers.ts`. */
export const PRINTER_LIMITS: Readonly<Record<PrinterNumber, Limits>> = {
  wallMmS: speed,
  skinMmS: speed,
  infillMmS: speed,
  firstLayerMmS: speed,
  travelMmS: real(1, 2000),
  accelMmS2: accel,
  wallAccelMmS2: accel,
  travelAccelMmS2: accel,
  cornerMmS: real(0.1, 200),
  flowMm3S: real(0.1, 200),
  layerChangeS: real(0, 600),
  retractS: real(0, 10),
  leastLayerS: real(0, 120),
  startS: real(0, 7200),
  powerW: real(0, 5000),
  bedMm: real(10, 5000),
  clockFactor: real(0.2, 5),
}

/** Of what may be left out of a printer; the words for them stand in `printerMore.ts`. */
export const PRINTER_MORE_LIMITS: Readonly<Record<keyof PrinterMore, Limits>> = {
  outerWallMmS: speed,
  smallLoopMmS: speed,
  gapMmS: speed,
  topSkinMmS: speed,
  strandMmS: speed,
  floorMmS: real(1, 100),
}

const widthShare = real(0.5, 2)

/** What is accepted of a printer's habits; where they commonly lie stands in `habits.ts`. */
export const HABIT_LIMITS: Readonly<Record<HabitNumber, Limits>> = {
  outerWidthShare: widthShare,
  innerWidthShare: widthShare,
  skinWidthShare: widthShare,
  infillWidthShare: widthShare,
  firstWidthShare: widthShare,
  oneLineBelow: real(1, 2),
  overlapShare: real(0, 1),
  smallRoomMm2: real(0, 1000),
  holdMm: real(0, 20),
  slopeBandMm: real(0, 20),
  strandShare: real(0.5, 2),
  joinedShare: real(0, 1),
}

export const PRICE_LIMITS = {
  electricityPerKwh: real(0, 1000),
  wearPerHour: real(0, 1000),
  wastePct: real(0, 100),
  failurePctPerHour: real(0, 90),
} as const satisfies LimitTable

export const CARBON_LIMITS = { massG: real(0, 100_000), price: money } as const satisfies LimitTable

/** Scale and clock. */
export const READING_LIMITS = {
  scaleG: real(0.01, 1_000_000),
  tareG: real(0, 100_000),
  clockMin: real(1, 100_000),
} as const satisfies LimitTable

export const ITEM_LIMITS = {
  quantity: whole(0, 100_000),
  massG: real(0, 100_000),
  costEach: money,
} as const satisfies LimitTable

export const GROWTH_LIMITS = real(0, 100)

/** What sits in a hole, and what a pin or a calliper said of a printed one. */
export const DRILL_LIMITS = {
  neckMm: real(0.5, 100),
  grooveMm: real(0.2, 50),
  shaftMm: real(0.2, 100),
  measuredMm: real(0.2, 100),
} as const satisfies LimitTable
/** Holes of one part that something is chosen for. */
export const HOLE_USES_MOST = 500

/** How pieces are laid into print runs. */
export const RUN_LIMITS = {
  gapMm: real(0, 200),
  marginMm: real(0, 200),
  eveningH: real(0.1, 100),
  headMm: real(0, 500),
  underHeadMm: real(0, 1000),
  /** Where the origin of a mesh lies on a bed; it need not lie in its piece. */
  spotMm: real(-10_000, 10_000),
  turnDeg: real(-360, 360),
} as const satisfies LimitTable

/** Beside the frame's own. */
export const PRINTERS_MOST = 5

/** Spools on the shelf. */
export const SPOOL_LIMITS = {
  grossG: real(0, 20_000),
  emptyG: real(0, 5000),
} as const satisfies LimitTable

/** The builder's own limits, and the masses at which rules change. */
export const MASS_LIMITS = {
  limitG: real(0.1, 1_000_000),
  thresholdG: real(0.01, 10_000_000),
} as const satisfies LimitTable

/** What a search of recipes is to keep to; grams as those of the builder's own limits. */
export const FIND_LIMITS = {
  lessG: real(0.1, 1_000_000),
  hours: real(0.1, 100_000),
  cost: real(0.01, 1_000_000),
  /** Over that of a part as it stands. */
  stiffness: real(0.01, 100),
  /** Of one part under its load. */
  deflectionMm: real(0.001, 1000),
  firstHz: real(0.1, 100_000),
  /** Solutions listed. */
  most: whole(1, 100_000),
} as const satisfies LimitTable

export const PLACE_LIMITS = {
  positionMm: real(-1_000_000, 1_000_000),
  radiusMm: real(0, 1_000_000),
} as const satisfies LimitTable

/** The simple body of something bought, and the holes it is held by. */
export const BODY_LIMITS = {
  sizeMm: real(0.5, 2000),
  patternMm: real(0.5, 500),
  depthMm: real(0.2, 100),
  shaftMm: real(0, 50),
} as const satisfies LimitTable

/**
 * Where pieces meet; points lie where places may. Numbers of a face's or bore's direction are those
 * of a unit vector.
 */
export const JOINT_LIMITS = {
  piece: whole(0, 99_999),
  direction: real(-1, 1),
  diameterMm: real(0.01, 10_000),
  depthMm: real(0, 100_000),
  slideMm: real(-10_000, 10_000),
  gapMm: real(0, 1000),
} as const satisfies LimitTable
/** Holes by which two pieces meet in one joint. */
export const JOINT_BORES_MOST = 6

/** What a part is pushed with when its stiffness is reckoned. */
export const LOAD_LIMITS = {
  loadN: real(0.01, 100_000),
} as const satisfies LimitTable

/** One turn either way. */
export const TURN_LIMITS = real(-360, 360)

export const FLIGHT_LIMITS = {
  motors: whole(1, 16),
  motorThrustG: real(1, 100_000),
  propDiameterMm: real(10, 2000),
  packCells: whole(1, 24),
  packMah: real(1, 1_000_000),
  voltsPerCell: real(0.5, 5),
  usableShare: real(0.01, 1),
  avionicsW: real(0, 10_000),
  motorRadiusMm: real(0, 5000),
  flownMin: real(0.1, 1000),
  /** Of the pack, in a hover that was timed. */
  usedShare: real(0.01, 1),
} as const satisfies LimitTable

export const WING_LIMITS = {
  areaDm2: real(0.1, 100_000),
  spanMm: real(10, 20_000),
  cruiseMS: real(0.5, 150),
  dragCoefficient: real(0.005, 1),
  meanChordMm: real(1, 10_000),
  leadingEdgeMm: real(-100_000, 100_000),
} as const satisfies LimitTable

export const TWIN_LIMITS = {
  thicknessMm: real(0.05, 100),
  freeMm: real(1, 5000),
  platePricePerDm2: money,
  cutPricePerM: money,
  deliveryDays: real(0, 1000),
} as const satisfies LimitTable

export const SEASON_LIMITS = {
  flights: whole(0, 1000),
  crashesPerFlight: share,
  breakShare: share,
  carbonLeadDays: real(0, 1000),
  carbonPartPrice: money,
  carbonBreakFactor: share,
} as const satisfies LimitTable

/** Screws, tubes and what they go through; what is made of them is an item. */
export const HARDWARE_LIMITS = {
  washers: whole(0, 20),
  bossMm: real(0, 100),
  depthMm: real(0, 100),
  layerMm: real(0, 200),
  outerMm: real(0.1, 1000),
  innerMm: real(0, 1000),
  lengthMm: real(0.5, 5000),
} as const satisfies LimitTable

/** A line of a propeller table; what is kept of it is the thrust. */
export const PROP_LIMITS = {
  thrustCoefficient: real(0.001, 1),
  rpm: real(0, 200_000),
} as const satisfies LimitTable

/** Variants kept beside a frame. */
export const VARIANTS_MOST = 4

/** Letters at most. */
export const TEXT_LIMITS = {
  name: 200,
  words: 2000,
  note: 10_000,
  path: 1000,
  id: 200,
  lessonId: 400,
} as const

/** Things at most in what one lesson names. */
export const LESSON_LIMITS = { errors: 1000, spools: 100 } as const

export function isWithin({ min, max, whole: isWhole }: Limits, value: number): boolean {
  return value >= min && value <= max && (!isWhole || Number.isInteger(value))
}

/** The limits of a number that is typed or kept in another unit, `by` to one of the table's. */
export function times({ min, max }: Limits, by: number): Limits {
  return real(min * by, max * by)
}

/** The limits of a share where it is typed in per cent. */
export function inPercent(limits: Limits): Limits {
  return times(limits, 100)
}

/** Where something else leaves less room than the table does; never more. */
export function narrowed(
  limits: Limits,
  { min = limits.min, max = limits.max }: { readonly min?: number; readonly max?: number },
): Limits {
  const least = Math.max(limits.min, min)
  return { ...limits, min: least, max: Math.max(least, Math.min(limits.max, max)) }
}

/** Every pattern with the word shown for it. */
export const PATTERN_NAMES: Readonly<Record<Pattern, string>> = {
  lines: 'Lines',
  grid: 'Grid',
  triangles: 'Triangles',
  honeycomb: 'Honeycomb',
  gyroid: 'Gyroid',
}
