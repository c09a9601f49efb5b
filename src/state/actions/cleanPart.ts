import { TURN_LIMITS } from '../../core/data/limits.ts'
import type { Vec3 } from '../../core/model/mesh.ts'
import { unitToMm } from '../../core/model/units.ts'
import { times } from '../../core/model/vectors.ts'
import type { Part } from '../../core/model/frame.ts'
import type { PartPatch } from './types.ts'

/**
 * The part with the patch applied. What is out of its limits stays so, for the history to refuse
 * with its reason; mirrored copies go where the copies go.
 */
export function patchPart(part: Part, patch: PartPatch): Part {
  const { recipe: recipePatch, ...rest } = patch
  const wanted = { ...part.recipe, ...recipePatch }
  const recipe = sameFields(part.recipe, wanted) ? part.recipe : wanted
  const { quantity = part.quantity, mirrored = part.mirrored } = patch
  const next: Part = {
    ...part,
    ...inUnit(part, patch.unit),
    ...rest,
    name: patch.name === undefined || patch.name.trim() === '' ? part.name : patch.name.trim(),
    mirrored: Math.min(mirrored, quantity),
    recipe,
    // A recipe changed by hand is no longer the preset's.
    role: recipe === part.recipe ? part.role : null,
    pose:
      patch.pose === undefined
        ? part.pose
        : { ...patch.pose, rotateDeg: withinOneTurn(patch.pose.rotateDeg) },
  }
  if (sameFields(part, next)) return part
  if (recipe === part.recipe || next.ownRole === undefined) return next
  const { ownRole: _old, ...byHand } = next
  return byHand
}

/** What holes were chosen for is marked in mm, and grows with the part where its unit changes. */
function inUnit({ unit, holeUses }: Part, now = unit): Pick<Part, 'holeUses'> {
  if (now === unit || holeUses === undefined) return {}
  const by = unitToMm(now) / unitToMm(unit)
  return {
    holeUses: holeUses.map(({ centreMm, diameterMm, use }) => {
      return { centreMm: times(centreMm, by), diameterMm: diameterMm * by, use }
    }),
  }
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
