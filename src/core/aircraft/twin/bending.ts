import type { CensusLayers } from '../../model/census.ts'
import type { Recipe } from '../../model/settings.ts'
import { infillStiffnessAlong } from '../../stiffness/moduli/infillStiffness.ts'
import type { PlateOutline } from './outline.ts'

/** What of the census a bending stiffness is made of. */
export type BendingLayers = Pick<
  CensusLayers,
  'count' | 'heightMm' | 'wallMm2' | 'skinMm2' | 'roomMm2'
>

/**
 * Infill lines lie at this angle to the bed's sides, and across it (common practice, no source).
 */
const LINES_DEG = 45

/**
 * Bending stiffness of a printed part that lies flat, loaded from above, in N·m² per metre of width
 * (GPa·mm³ is the same), its width being the mean width of the outline, bent along the outline's
 * longer side.
 *
 * Each layer is a strip as wide as its plastic: walls and skins count whole, infill by its own
 * stiffness. The strips are summed about their common neutral axis (transformed section; Gere and
 * Timoshenko, Mechanics of Materials). For a box with empty rooms this is the hollow box exactly.
 * It takes the section as the same along the part and every wall as running along it; walls round
 * holes and ends do not, so it is a little high. Good to about 30 % (ours): printed plastic is.
 */
export function printedBendingNm(
  layers: BendingLayers,
  recipe: Pick<Recipe, 'pattern' | 'infillPct'>,
  youngsGPa: number,
  { areaMm2: outlineAreaMm2, longDeg }: Pick<PlateOutline, 'areaMm2' | 'longDeg'>,
): number {
  const core = infillStiffnessAlong(recipe.pattern, recipe.infillPct / 100, longDeg - LINES_DEG)
  let area = 0
  let first = 0
  let second = 0
  let floor = 0
  for (let i = 0; i < layers.count; i++) {
    const height = layers.heightMm[i] ?? 0
    const plastic =
      (layers.wallMm2[i] ?? 0) + (layers.skinMm2[i] ?? 0) + core * (layers.roomMm2[i] ?? 0)
    const middle = floor + height / 2
    area += plastic * height
    first += plastic * height * middle
    second += plastic * (height * middle * middle + height ** 3 / 12)
    floor += height
  }
  if (!(area > 0) || !(outlineAreaMm2 > 0)) return 0
  return (youngsGPa * (second - (first * first) / area)) / outlineAreaMm2
}

/** Bending stiffness of a plate, N·m² per metre of width: E t³ / 12. */
export function plateBendingNm(youngsGPa: number, thicknessMm: number): number {
  return (youngsGPa * thicknessMm ** 3) / 12
}

/** Thickness of a plate with that bending stiffness, mm. */
export function thicknessForBendingMm(bendingNm: number, youngsGPa: number): number {
  return Math.cbrt((12 * bendingNm) / youngsGPa)
}
