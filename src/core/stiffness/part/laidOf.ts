import type { Material } from '../../model/figures.ts'
import type { LaidRecipe } from '../../model/settings.ts'
import type { Laid } from './partGrid.ts'
import { plasticOf } from './tellPart.ts'

/** How a recipe and a plastic fill so many rooms: outside all zones, then each zone. */
export function laidOf(
  { pattern, infillPct, zonePcts }: Pick<LaidRecipe, 'pattern' | 'infillPct' | 'zonePcts'>,
  material: Material,
  rooms: number,
): Laid {
  const zones = Array.from({ length: rooms - 1 }, (_, i) => zonePcts?.[i] ?? infillPct)
  const infill = [infillPct, ...zones].map((pct) => pct / 100)
  return { plastic: plasticOf(material), pattern, infill }
}
