import type { RoleId } from '../model/frame.ts'
import { RECIPE_DEFAULTS } from '../model/settings.ts'
import type { Recipe } from '../model/settings.ts'

/** A starting recipe for parts that do one kind of duty. */
export interface Role {
  readonly id: RoleId
  readonly name: string
  readonly recipe: Recipe
  /** One sentence: why these settings. */
  readonly reason: string
}

/**
 * Presets by duty: 0.2 mm layers, 0.8 mm walls, dense arms and lighter plates (common practice, no
 * source).
 */
export const ROLES: Readonly<Record<RoleId, Role>> = {
  arm: {
    id: 'arm',
    name: 'Arm',
    recipe: { ...RECIPE_DEFAULTS, infillPct: 75, pattern: 'grid' },
    reason:
      'An arm is bent at every punch of the throttle and takes the crash, so it is printed dense.',
  },
  plate: {
    id: 'plate',
    name: 'Plate',
    recipe: { ...RECIPE_DEFAULTS, infillPct: 40, pattern: 'grid' },
    reason: 'A deck carries its load in the skins; the inside only has to keep them apart.',
  },
  mount: {
    id: 'mount',
    name: 'Mount',
    recipe: { ...RECIPE_DEFAULTS, walls: 3, infillPct: 30, pattern: 'gyroid' },
    reason:
      'Bolts pull at a mount from several sides: one more wall round the holes, an even inside.',
  },
  soft: {
    id: 'soft',
    name: 'Soft part',
    recipe: { ...RECIPE_DEFAULTS, infillPct: 15, pattern: 'gyroid', topSkins: 3, bottomSkins: 3 },
    reason: 'A foot or a pad has to give; little infill lets it.',
  },
  'wing-skin': {
    id: 'wing-skin',
    name: 'Wing skin',
    recipe: {
      ...RECIPE_DEFAULTS,
      walls: 1,
      topSkins: 0,
      bottomSkins: 0,
      infillPct: 0,
      pattern: 'lines',
    },
    reason:
      'A wing panel is a single wall and nothing else: every gram of skin is paid for in the air.',
  },
}
