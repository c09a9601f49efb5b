import type { Bead } from './habits.ts'
import type { Finding } from './mesh.ts'
import type { Pattern } from './settings.ts'

/** One straight move of the head. Lengths mm, plastic in mm of filament, speed mm/s. */
export interface Move {
  readonly fromX: number
  readonly fromY: number
  readonly fromZ: number
  readonly toX: number
  readonly toY: number
  readonly toZ: number
  /** Pushed (above 0) or drawn back (below 0). */
  readonly filamentMm: number
  /** Of `filamentMm` what comes out, once what was drawn back has been pushed forward again. */
  readonly laidMm: number
  /** As written. */
  readonly speedMmS: number
  /** As the file states it for this move; 0 where it does not. */
  readonly accelMmS2: number
}

/** What a line of a toolpath is for. */
export type LineKind = 'outer' | 'inner' | 'skin' | 'infill' | 'gap'

/** What was measured on the lines of one kind; a skirt on the first layer counts as a wall. */
export interface LineMeasure {
  readonly volumeMm3: number
  readonly lengthM: number
  /**
   * Plastic per length ÷ layer height above the first layer, the middle by length. null where no
   * such line is.
   */
  readonly widthMm: number | null
  /** As written above the first layer, the middle by length. */
  readonly speedMmS: number | null
}

/**
 * The recipe a toolpath was made with, as its moves tell. null where they do not: a part that is
 * solid all through shows neither skins nor infill.
 */
export interface SeenRecipe {
  readonly layerMm: number | null
  readonly firstLayerMm: number | null
  readonly lineMm: number | null
  readonly walls: number | null
  readonly topSkins: number | null
  readonly bottomSkins: number | null
  readonly infillPct: number | null
  readonly pattern: Pattern | null
}

/** Habits as the moves tell; names as in `Habits`. Left out where they do not. */
export interface SeenHabits {
  readonly bead?: Bead
  readonly outerWidthShare?: number
  readonly innerWidthShare?: number
  readonly skinWidthShare?: number
  readonly infillWidthShare?: number
  readonly firstWidthShare?: number
  readonly overlapShare?: number
  readonly strandShare?: number
  readonly smallRoomMm2?: number
  readonly holdMm?: number
  readonly slopeBandMm?: number
  readonly gapLines?: boolean
  readonly undersides?: 'bottom' | 'most'
}

/** Plastic at one height. */
export interface SeenLayer {
  readonly topMm: number
  readonly heightMm: number
  readonly depositMm3: number
}

/** What the moves of one toolpath come to. */
export interface ToolpathFigures {
  /** Pushed through the nozzle, drawn-back filament not counted twice. */
  readonly filamentM: number
  /** The diameter reckoned with. */
  readonly diameterMm: number
  /** All plastic, priming and skirt too. */
  readonly depositMm3: number
  /** What lies in layers: without priming and purge lines. */
  readonly layersMm3: number
  /** By the motion model; heat-up and start routine not in it. */
  readonly timeS: number
  readonly pathM: number
  readonly travelM: number
  readonly retracts: number
  readonly layers: readonly SeenLayer[]
  /**
   * What walls, skins and infill enclose; skirt and brim in it. About as much as the part's own
   * volume.
   */
  readonly envelopeMm3: number
  /**
   * Widths of the plan without skirt and brim, in directions over half a turn; see
   * toolpath/girth.ts. mm
   */
  readonly girthMm: Float64Array
  readonly kinds: Readonly<Record<LineKind, LineMeasure>>
  readonly recipe: SeenRecipe
  readonly habits: SeenHabits
  /** What was odd about the file, and what could not be told, in plain words. */
  readonly findings: readonly Finding[]
}
