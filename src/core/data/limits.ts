import type { Pattern, Recipe } from '../model/settings.ts'

/** Range a number of the recipe must lie in, both ends included. */
export interface Limits {
  readonly min: number
  readonly max: number
  /** Whole numbers only. */
  readonly whole: boolean
}

export type RecipeNumber = Exclude<keyof Recipe, 'pattern' | 'supports' | 'habits'>

/** What the number fields, the command line and the project file accept. Wider than sensible, narrower than absurd. */
export const RECIPE_LIMITS: Readonly<Record<RecipeNumber, Limits>> = {
  layerMm: { min: 0.02, max: 2, whole: false },
  firstLayerMm: { min: 0.02, max: 2, whole: false },
  lineMm: { min: 0.1, max: 3, whole: false },
  walls: { min: 0, max: 50, whole: true },
  topSkins: { min: 0, max: 1000, whole: true },
  bottomSkins: { min: 0, max: 1000, whole: true },
  infillPct: { min: 0, max: 100, whole: false },
  zonePct: { min: 0, max: 100, whole: false },
  supportAngleDeg: { min: 0, max: 89, whole: false },
  brimMm: { min: 0, max: 50, whole: false },
}

/** Every pattern with the word shown for it. */
export const PATTERN_NAMES: Readonly<Record<Pattern, string>> = {
  lines: 'Lines',
  grid: 'Grid',
  triangles: 'Triangles',
  honeycomb: 'Honeycomb',
  gyroid: 'Gyroid',
}
