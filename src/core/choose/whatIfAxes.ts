import { PATTERN_NAMES } from '../data/limits.ts'
import type { Material } from '../model/figures.ts'
import type { PartWay } from '../model/frame.ts'
import type { GeometrySettings, Pattern } from '../model/settings.ts'
import { geometriesOf, usualVariety, type Setting } from './variety.ts'

/** One value of a setting, everything else as it is. */
interface AxisWay {
  readonly value: number
  readonly way: PartWay
  /** What layers are counted anew for; null where the present count will do. */
  readonly patch: Partial<GeometrySettings> | null
}

/** One setting of a part, over the values it may take; the present one is among them. */
export interface WhatIfAxis {
  readonly key: Setting | 'pattern'
  /** Whether what lies between two values means something. */
  readonly isCurve: boolean
  readonly ways: readonly AxisWay[]
}

/** From hollow to solid. */
const INFILLS_PCT = [0, 5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100]

/** Every setting of a part by itself. */
export function whatIfAxes(way: PartWay, materials: readonly Material[]): readonly WhatIfAxis[] {
  const { recipe } = way
  const counted = (
    setting: 'walls' | 'skins' | 'layer',
    valueOf: (recipe: GeometrySettings) => number,
  ): WhatIfAxis => {
    const patches = geometriesOf(recipe, usualVariety(way, new Set([setting])))
    const ways = patches.map((patch) => {
      const then = { ...recipe, ...patch }
      const isNow = Object.keys(patch).length === 0
      return { value: valueOf(then), way: { ...way, recipe: then }, patch: isNow ? null : patch }
    })
    return { key: setting, isCurve: true, ways: ways.toSorted((a, b) => a.value - b.value) }
  }
  const infills = [...new Set([...INFILLS_PCT, recipe.infillPct])].toSorted((a, b) => a - b)
  return [
    {
      key: 'infill',
      isCurve: true,
      ways: infills.map((infillPct) => ({
        value: infillPct,
        way: { ...way, recipe: { ...recipe, infillPct } },
        patch: null,
      })),
    },
    counted('walls', ({ walls }) => walls),
    counted('skins', ({ topSkins }) => topSkins),
    counted('layer', ({ layerMm }) => layerMm),
    {
      key: 'pattern',
      isCurve: false,
      ways: (Object.keys(PATTERN_NAMES) as Pattern[]).map((pattern, value) => ({
        value,
        way: { ...way, recipe: { ...recipe, pattern } },
        patch: null,
      })),
    },
    {
      key: 'material',
      isCurve: false,
      ways: materials.map(({ id: materialId }, value) => ({
        value,
        way: { ...way, materialId },
        patch: null,
      })),
    },
  ]
}

/**
 * Plastics worth a look: the part's own and the frame's, then the lightest, the cheapest and the
 * stiffest of the others. All there are would be a wall of points.
 */
export function plasticsWorthALook(
  materials: readonly Material[],
  inUse: ReadonlySet<string>,
): readonly Material[] {
  const others = materials.filter(({ id }) => !inUse.has(id))
  const least = (of: (material: Material) => number): Material | undefined =>
    others.toSorted((a, b) => of(a) - of(b))[0]
  const picked = new Set([
    least(({ densityGCm3, flow }) => densityGCm3.value * flow),
    least(({ pricePerKg }) => pricePerKg.value),
    least(({ youngsGPa }) => -youngsGPa.value),
  ])
  return materials.filter((one) => inUse.has(one.id) || picked.has(one))
}

/** Whether a way changes nothing that these axes change. */
export function sameAs(now: PartWay, then: PartWay): boolean {
  return (
    now.materialId === then.materialId &&
    now.recipe.walls === then.recipe.walls &&
    now.recipe.topSkins === then.recipe.topSkins &&
    now.recipe.bottomSkins === then.recipe.bottomSkins &&
    now.recipe.infillPct === then.recipe.infillPct &&
    now.recipe.layerMm === then.recipe.layerMm &&
    now.recipe.pattern === then.recipe.pattern
  )
}
