import type { KnownHabits } from './habits.ts'
import type { Vec3 } from './mesh.ts'

/**
 * Infill patterns. They differ here in how many line directions a layer lays and how lines turn;
 * see figures/infill.ts.
 */
export type Pattern = 'lines' | 'grid' | 'triangles' | 'honeycomb' | 'gyroid'

/** Everything the layer census depends on, besides the mesh. All lengths mm. */
export interface GeometrySettings {
  readonly layerMm: number
  readonly firstLayerMm: number
  readonly lineMm: number
  /** Whole number of wall lines, 0 or more. */
  readonly walls: number
  readonly topSkins: number
  readonly bottomSkins: number
  readonly supports: boolean
  /** Steepest overhang that holds itself, degrees from vertical, 0–89. */
  readonly supportAngleDeg: number
  /** Width of the one-layer rim around the first layer; 0 for none. */
  readonly brimMm: number
  /** What is known of how the printer lays it; usual habits where nothing is. */
  readonly habits?: KnownHabits
}

/** A part's print settings. */
export interface Recipe extends GeometrySettings {
  /** 0–100. */
  readonly infillPct: number
  readonly pattern: Pattern
}

/** A recipe with all that a part's figures need besides it; see figures/laidRecipe.ts. */
export interface LaidRecipe extends Recipe {
  /**
   * Infill of each zone, 0–100, in the order of the part's zones; left out, that of the recipe
   * holds in every one.
   */
  readonly zonePcts?: readonly number[]
}

/**
 * How a part lies on the bed: rotations about x, then y, then z, in degrees. [0, 0, 0] is as drawn.
 */
export interface Pose {
  readonly rotateDeg: Vec3
}

export const POSE_AS_DRAWN: Pose = { rotateDeg: [0, 0, 0] }

/** The common starting point: 0.2 mm layers and 0.8 mm of wall (common practice, no source). */
export const RECIPE_DEFAULTS: Recipe = {
  layerMm: 0.2,
  firstLayerMm: 0.2,
  lineMm: 0.4,
  walls: 2,
  topSkins: 4,
  bottomSkins: 4,
  infillPct: 30,
  pattern: 'grid',
  supports: false,
  supportAngleDeg: 50,
  brimMm: 0,
}
