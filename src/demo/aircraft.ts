import type { Recipe } from '../core/model/settings.ts'
import { RECIPE_DEFAULTS } from '../core/model/settings.ts'
import type { DemoManifest, DemoPart } from './manifest.ts'
import type { LengthUnit } from '../core/model/mesh.ts'
import type { DrawnJoint } from './joints.ts'
import type { Workshop } from './workshop.ts'

/** A demo part together with what draws its file. */
export interface DrawnPart extends DemoPart {
  readonly draw: (shop: Workshop) => Uint8Array
}

/** A demo aircraft as the build script knows it. */
export interface Aircraft {
  /** Name of the manifest, without `.json`. */
  readonly id: string
  readonly about: Omit<DemoManifest, 'parts' | 'labelledSample'>
  readonly parts: readonly DrawnPart[]
  readonly joints: readonly DrawnJoint[]
  /** Names of parts whose places are told; all others follow from joints. */
  readonly roots: readonly string[]
  /**
   * The unit of a part's file where neither the file nor the manifest tells it, by the part's name.
   */
  readonly drawnIn: Readonly<Record<string, LengthUnit>>
}

/**
 * The whole recipe for what differs from the defaults: a manifest must not change when a default
 * does.
 */
export function recipe(own: Partial<Recipe>): Recipe {
  const layerMm = own.layerMm ?? RECIPE_DEFAULTS.layerMm
  // 0.8 mm of skin above and below, whatever the layer height.
  const skins = Math.round(0.8 / layerMm)
  return {
    ...RECIPE_DEFAULTS,
    firstLayerMm: 0.2,
    topSkins: skins,
    bottomSkins: skins,
    ...own,
  }
}
