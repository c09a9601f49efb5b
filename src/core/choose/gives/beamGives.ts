import type { LaidRecipe, Recipe } from '../../model/settings.ts'
import { beamOf } from '../../stiffness/part/beam.ts'
import type { PartSections } from '../../stiffness/part/sections.ts'
import { laidOf } from '../../stiffness/part/laidOf.ts'
import type { Gives, GivesLoad, GivesOf } from './types.ts'

/** Settings that sections hang on and that steps and searches change. */
export function geometryKey({
  walls,
  topSkins,
  bottomSkins,
  layerMm,
  lineMm,
}: Pick<Recipe, 'walls' | 'topSkins' | 'bottomSkins' | 'layerMm' | 'lineMm'>): string {
  return [walls, topSkins, bottomSkins, layerMm, lineMm].join(' ')
}

/**
 * What the beam of the part as it stands is to be multiplied by to tell what the solid model tells.
 */
export interface BeamScale {
  readonly deflection: number
  readonly tone: number
}

const AS_IT_IS: BeamScale = { deflection: 1, tone: 1 }
/** A beam that misses the solid model by more than so many times, either way, is none (ours). */
const BEAM_MISSES = 1.5

/** From both of the part as it stands; null where the beam should not be used, or says nothing. */
export function beamScale(solid: Gives, beam: Gives | null): BeamScale | null {
  if (beam === null) return null
  const deflection = solid.deflectionMm / beam.deflectionMm
  if (!(Math.max(deflection, 1 / deflection) <= BEAM_MISSES)) return null
  const hasTones = solid.firstHz !== null && beam.firstHz !== null
  return { deflection, tone: hasTones ? solid.firstHz / beam.firstHz : 1 }
}

/** By sections of each geometry: exact in infill and plastic, at no cost. */
export function beamGives(
  sections: ReadonlyMap<string, PartSections>,
  lay: (recipe: Recipe) => LaidRecipe,
  { loadN, tipG }: GivesLoad,
  scale: BeamScale = AS_IT_IS,
): GivesOf {
  return ({ recipe, material, massG }) => {
    const own = sections.get(geometryKey(recipe))
    if (own === undefined) return null
    const rooms = (own.slices[0]?.parts.length ?? 2) - 1
    const says = beamOf(own, laidOf(lay(recipe), material, rooms), { loadN, tipG, massG })
    if (says.kind === 'no') return null
    const { deflectionMm, firstHz } = says
    return {
      deflectionMm: deflectionMm * scale.deflection,
      firstHz: firstHz === null ? null : firstHz * scale.tone,
    }
  }
}
