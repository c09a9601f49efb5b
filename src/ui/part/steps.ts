import { PATTERN_NAMES, RECIPE_LIMITS } from '../../core/data/limits.ts'
import type { Material } from '../../core/model/figures.ts'
import type { GeometrySettings, Pattern, Recipe } from '../../core/model/settings.ts'
import { showNumber, showLength } from '../show.ts'

/** The settings that move the grams most, in the order of the strip. */
export type StepKey = 'walls' | 'infill' | 'skins' | 'layer' | 'line' | 'pattern' | 'plastic'

/** One step of one setting, not made yet. */
export interface Step {
  readonly key: StepKey
  /** "one less", "gyroid". */
  readonly words: string
  readonly recipe: Partial<Recipe>
  readonly material?: Material
  /** What of it the layers have to be counted anew for; null when the present count will do. */
  readonly geometry: Partial<GeometrySettings> | null
}

const INFILL_STEP = 10
const LAYER_STEP_MM = 0.04
const LINE_STEP_MM = 0.05

/** One step down and one up of what the layers have to be counted anew for. */
export function countedSteps(recipe: GeometrySettings): readonly Step[] {
  const steps: Step[] = []
  const add = (key: StepKey, words: string, geometry: Partial<GeometrySettings>) => {
    steps.push({ key, words, recipe: geometry, geometry })
  }
  for (const by of [-1, 1]) {
    const words = by < 0 ? 'one less' : 'one more'
    const walls = recipe.walls + by
    // With neither walls nor skins nothing but infill would be left, and often nothing at all.
    const isSomething = walls + recipe.topSkins + recipe.bottomSkins > 0
    if (isSomething && isWithin(walls, RECIPE_LIMITS.walls)) add('walls', words, { walls })
    const topSkins = recipe.topSkins + by
    const bottomSkins = recipe.bottomSkins + by
    const skins = [topSkins, bottomSkins]
    if (skins.every((count) => isWithin(count, RECIPE_LIMITS.topSkins)))
      add('skins', words, { topSkins, bottomSkins })
    const layerMm = rounded(recipe.layerMm + by * LAYER_STEP_MM)
    if (isWithin(layerMm, RECIPE_LIMITS.layerMm) && layerMm <= 0.8 * recipe.lineMm)
      add('layer', showLength(layerMm, 2), { layerMm })
    const lineMm = rounded(recipe.lineMm + by * LINE_STEP_MM)
    if (isWithin(lineMm, RECIPE_LIMITS.lineMm)) add('line', showLength(lineMm, 2), { lineMm })
  }
  return steps
}

/** Steps that the present count will do for: infill, and the other patterns. */
export function freeSteps({ infillPct: now, pattern: present }: Recipe): readonly Step[] {
  const shares = [Math.max(0, now - INFILL_STEP), Math.min(100, now + INFILL_STEP)]
  return [
    ...shares
      .filter((infillPct) => infillPct !== now)
      .map((infillPct): Step => {
        const by = showNumber(Math.abs(infillPct - now), 0)
        const words = `${by} ${infillPct < now ? 'less' : 'more'}`
        return { key: 'infill', words, recipe: { infillPct }, geometry: null }
      }),
    ...(Object.keys(PATTERN_NAMES) as Pattern[])
      .filter((pattern) => pattern !== present)
      .map((pattern): Step => {
        const words = PATTERN_NAMES[pattern].toLowerCase()
        return { key: 'pattern', words, recipe: { pattern }, geometry: null }
      }),
  ]
}

function isWithin(value: number, { min, max }: { readonly min: number; readonly max: number }) {
  return value >= min && value <= max
}

function rounded(mm: number): number {
  return Math.round(mm * 1000) / 1000
}
