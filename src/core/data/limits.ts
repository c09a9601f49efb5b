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

/** Numbers of flight and wing that may be left out. */
export const FLIGHT_LIMITS = {
  flownMin: { min: 0.1, max: 1000, whole: false },
  spanMm: { min: 10, max: 20_000, whole: false },
  cruiseMS: { min: 0.5, max: 150, whole: false },
  dragCoefficient: { min: 0.005, max: 1, whole: false },
} as const satisfies Readonly<Record<string, Limits>>

export const PRICE_LIMITS = {
  failurePctPerHour: { min: 0, max: 90, whole: false },
} as const satisfies Readonly<Record<string, Limits>>

export const MATERIAL_LIMITS = {
  nozzleC: { min: 100, max: 500, whole: false },
  bedC: { min: 0, max: 200, whole: false },
} as const satisfies Readonly<Record<string, Limits>>

/** Every pattern with the word shown for it. */
export const PATTERN_NAMES: Readonly<Record<Pattern, string>> = {
  lines: 'Lines',
  grid: 'Grid',
  triangles: 'Triangles',
  honeycomb: 'Honeycomb',
  gyroid: 'Gyroid',
}
