import {
  PIECES_LIMITS,
  RECIPE_LIMITS,
  TURN_LIMITS,
  type RecipeNumber,
} from '../../core/data/limits.ts'
import type { Vec3 } from '../../core/model/mesh.ts'
import type { Part } from '../../core/model/frame.ts'
import type { Recipe } from '../../core/model/settings.ts'
import type { PartPatch } from '../store/types.ts'

const MAX_PIECES = PIECES_LIMITS.quantity.max

/** The part with the patch applied and every number brought inside its limits. A number that is none is left out. */
export function patchPart(part: Part, patch: PartPatch): Part {
  const { recipe: recipePatch, ...rest } = patch
  const recipe = recipePatch === undefined ? part.recipe : patchRecipe(part.recipe, recipePatch)
  const quantity = whole(patch.quantity, part.quantity, 1, MAX_PIECES)
  const next: Part = {
    ...part,
    ...rest,
    name: patch.name === undefined || patch.name.trim() === '' ? part.name : patch.name.trim(),
    quantity,
    spares: whole(patch.spares, part.spares, 0, MAX_PIECES),
    mirrored: Math.min(whole(patch.mirrored, part.mirrored, 0, MAX_PIECES), quantity),
    recipe,
    // A recipe changed by hand is no longer the preset's.
    role: recipe === part.recipe ? part.role : null,
    pose:
      patch.pose !== undefined && patch.pose.rotateDeg.every(Number.isFinite)
        ? { ...patch.pose, rotateDeg: withinOneTurn(patch.pose.rotateDeg) }
        : part.pose,
  }
  if (sameFields(part, next)) return part
  if (recipe === part.recipe || next.ownRole === undefined) return next
  const { ownRole: _old, ...byHand } = next
  return byHand
}

function patchRecipe(recipe: Recipe, patch: Partial<Recipe>): Recipe {
  const next: { -readonly [K in keyof Recipe]: Recipe[K] } = { ...recipe, ...patch }
  for (const key of Object.keys(RECIPE_LIMITS) as RecipeNumber[]) {
    const { min, max, whole: isWhole } = RECIPE_LIMITS[key]
    const wanted = Number.isFinite(next[key]) ? next[key] : recipe[key]
    next[key] = Math.min(max, Math.max(min, isWhole ? Math.round(wanted) : wanted))
  }
  return sameFields(recipe, next) ? recipe : next
}

function whole(wanted: number | undefined, present: number, min: number, max: number): number {
  if (wanted === undefined || !Number.isFinite(wanted)) return present
  return Math.min(max, Math.max(min, Math.round(wanted)))
}

function sameFields<T extends object>(a: T, b: T): boolean {
  return (Object.keys(b) as (keyof T)[]).every((key) => Object.is(a[key], b[key]))
}

/** The same turn, at most once round. */
function withinOneTurn(rotateDeg: Vec3): Vec3 {
  if (rotateDeg.every((angle) => Math.abs(angle) <= TURN_LIMITS.max)) return rotateDeg
  const [x, y, z] = rotateDeg
  return [x % TURN_LIMITS.max, y % TURN_LIMITS.max, z % TURN_LIMITS.max]
}
