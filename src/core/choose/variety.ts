import { LAYER_TO_LINE_MOST, RECIPE_LIMITS, isWithin } from '../data/limits.ts'
import type { GeometrySettings, Recipe } from '../model/settings.ts'
import type { PartWay } from '../model/frame.ts'

/** Settings that a search may change. */
export type Setting = 'walls' | 'infill' | 'skins' | 'layer' | 'material'

/**
 * What a search tries of one part, each setting with each; the part as it stands is always one of
 * them.
 */
export interface Variety {
  readonly walls: readonly number[]
  readonly infillPct: readonly number[]
  /** Top skins; those of the bottom go along. */
  readonly skins: readonly number[]
  readonly layerMm: readonly number[]
  readonly materialIds: readonly string[]
}

const INFILLS_PCT = [5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100]
const LAYERS_MM = [0.12, 0.16, 0.2, 0.24, 0.28, 0.32]
/** So many steps either way. */
const COUNT_STEPS = 2

/**
 * What is tried where nothing is said: two steps either way of walls and skins, but never none
 * where there is one, and every usual infill. Layer height and plastic stay unless they are given
 * free: a thick layer shows, and a spool is not always there.
 */
export function usualVariety(
  { recipe, materialId }: PartWay,
  free: ReadonlySet<Setting>,
  materialIds: readonly string[] = [],
): Variety {
  const { walls, topSkins, infillPct, layerMm } = recipe
  const either = (setting: Setting, now: number, others: readonly number[]): readonly number[] =>
    free.has(setting) ? sorted([now, ...others]) : [now]
  return {
    walls: either('walls', walls, around(walls)),
    infillPct: either('infill', infillPct, INFILLS_PCT),
    skins: either('skins', topSkins, around(topSkins)),
    layerMm: either('layer', layerMm, LAYERS_MM),
    materialIds: free.has('material') ? [...new Set([materialId, ...materialIds])] : [materialId],
  }
}

function around(now: number): readonly number[] {
  const least = Math.min(now, 1)
  return Array.from({ length: 2 * COUNT_STEPS + 1 }, (_, i) => now + i - COUNT_STEPS).filter(
    (count) => count >= least,
  )
}

const sorted = (values: readonly number[]): readonly number[] =>
  [...new Set(values)].toSorted((a, b) => a - b)

/** A change of what layers are counted of; nothing in it where the present count will do. */
export type GeometryPatch = Partial<
  Pick<GeometrySettings, 'walls' | 'topSkins' | 'bottomSkins' | 'layerMm'>
>

/**
 * Everything of a part's variety that its layers are to be counted for, the part as it stands
 * first. What cannot be printed or stored is left out: a layer too high for the line, or less
 * bottom skin than none.
 */
export function geometriesOf(recipe: Recipe, variety: Variety): readonly GeometryPatch[] {
  const patches: GeometryPatch[] = [{}]
  for (const layerMm of variety.layerMm) {
    for (const walls of variety.walls) {
      for (const topSkins of variety.skins) {
        const bottomSkins = Math.max(0, recipe.bottomSkins + topSkins - recipe.topSkins)
        const patch = changed(recipe, { layerMm, walls, topSkins, bottomSkins })
        if (Object.keys(patch).length > 0 && isPrintable({ ...recipe, ...patch }))
          patches.push(patch)
      }
    }
  }
  return patches
}

function changed(recipe: Recipe, all: Required<GeometryPatch>): GeometryPatch {
  return Object.fromEntries(
    Object.entries(all).filter(([key, value]) => recipe[key as keyof GeometryPatch] !== value),
  )
}

function isPrintable({ layerMm, lineMm, walls, topSkins, bottomSkins }: Recipe): boolean {
  return (
    isWithin(RECIPE_LIMITS.layerMm, layerMm) &&
    layerMm <= LAYER_TO_LINE_MOST * lineMm &&
    isWithin(RECIPE_LIMITS.walls, walls) &&
    isWithin(RECIPE_LIMITS.topSkins, topSkins) &&
    isWithin(RECIPE_LIMITS.bottomSkins, bottomSkins) &&
    walls + topSkins + bottomSkins > 0
  )
}

/** The part's ways with layers counted so, its own infill and plastic first. */
export function waysWith(way: PartWay, patch: GeometryPatch, variety: Variety): readonly PartWay[] {
  const first = <T>(own: T, all: readonly T[]): readonly T[] => [
    own,
    ...all.filter((one) => one !== own),
  ]
  return first(way.materialId, variety.materialIds).flatMap((materialId) =>
    first(way.recipe.infillPct, variety.infillPct).map((infillPct) => ({
      recipe: { ...way.recipe, ...patch, infillPct },
      materialId,
    })),
  )
}
