import type { CensusMoves } from './moves.ts'

/**
 * What the layers of one part hold: areas, lengths and move histograms, and nothing about money,
 * material or printer. Depends on mesh + unit + pose + geometry settings only; some 130 bytes a
 * layer and a few kilobytes of histograms, whatever the mesh.
 */
export interface Census {
  readonly layers: CensusLayers
  /** Σ |A_i|·h_i: what the layers enclose. Approaches the mesh volume. */
  readonly modelMm3: number
  /** Wall lines, those between them too narrow for a whole line with them. */
  readonly wallMm3: number
  /** The part of `wallMm3` in gap lines. */
  readonly gapMm3: number
  /** Σ |S_i|·h_i, solid skin. */
  readonly skinMm3: number
  /** The part of `skinMm3` that is laid as strands: over sparse rooms, or with nothing beneath. */
  readonly strandMm3: number
  /** Σ |P_i|·h_i, the infill rooms, empty or not. */
  readonly roomMm3: number
  /** Volume of the columns that supports would fill, before their density. */
  readonly supportMm3: number
  /** Volume of the brim on the first layer. */
  readonly brimMm3: number
  /** Printed height: the sum of the layer heights. */
  readonly heightMm: number
  /**
   * Share (0–1) of the outlines' length that the mesh leaves open and that was bridged straight.
   */
  readonly doubtfulShare: number
  /** Plastic that counting only some layers may be wrong by; 0 when all were counted. */
  readonly coarseMm3: number
  /** The same of the columns that supports would fill, before their density. */
  readonly coarseSupportMm3: number
  /** What habits that are not known may change. */
  readonly byHabit: HabitVolumes
  /** What any printer's hours are worked out from. */
  readonly moves: CensusMoves
  /**
   * For each of the part's zones the infill rooms that lie in it, as a census that holds nothing
   * else; they are then not among this one's rooms. Null for a zone that holds no room.
   */
  readonly zones: readonly (Census | null)[]
}

/** Volumes that hang on a habit, all mm³ of what the layers enclose. */
export interface HabitVolumes {
  /**
   * Skin that carries on from bare places into the room, as far as the hold and the slope band of
   * the census.
   */
  readonly heldMm3: number
  /** Skins, and rooms, that lie over the walls. */
  readonly overlapMm3: number
  readonly roomOverlapMm3: number
  /**
   * Rooms laid solid for their size though no smaller than any printer's limit, and larger ones
   * that some printer would.
   */
  readonly smallSolidMm3: number
  readonly smallSparseMm3: number
  /**
   * In places too thin for all wall lines, how far lines that are laid whole lie from filling them,
   * more or less.
   */
  readonly thinMm3: number
  /** The part of `Census.strandMm3` that lies over air, not over a sparse room. */
  readonly airMm3: number
  /** Whether the part's top lies in the middle of a layer, so that one layer less is as likely. */
  readonly tie: boolean
}

/** One value per layer, bottom first; every array has `count` entries. */
export interface CensusLayers {
  readonly count: number
  readonly heightMm: Float64Array
  /** |A_i|: inside all closed contours, overlapping bodies merged. */
  readonly areaMm2: Float64Array
  /** Wall lines: |W_i| where all N fit, and they are then |W_i| / lineMm long. */
  readonly wallMm2: Float64Array
  /** The part of it in gap lines. */
  readonly gapMm2: Float64Array
  /** |S_i|. */
  readonly skinMm2: Float64Array
  /** The part of |S_i| that is laid as strands. */
  readonly strandMm2: Float64Array
  /** |P_i|. */
  readonly roomMm2: Float64Array
  /** Support columns crossing the layer. */
  readonly supportMm2: Float64Array
  /**
   * Boundary of P_i projected across the layer's line direction (along x on even layers, along y on
   * odd ones): lines at a spacing of s mm end `roomSeenMm / s` times on it, two ends a line.
   */
  readonly roomSeenMm: Float64Array
  /**
   * Length of that boundary which a line end follows when lines are joined end to end (both ends
   * counted).
   */
  readonly roomWalkMm: Float64Array
  /** Length of all of it. */
  readonly roomEdgeMm: Float64Array
  /** Separate infill rooms. */
  readonly rooms: Uint32Array
  /** Separate outlines of A_i, outer and inner: each wall line is laid once around every one. */
  readonly contours: Uint32Array
  /** Separate regions of A_i: the nozzle travels between them. */
  readonly islands: Uint32Array
}

/**
 * From bytes to figures no part takes longer than this, unless it is asked to be counted fully.
 * Ours. s
 */
export const BUDGET_S = 10
