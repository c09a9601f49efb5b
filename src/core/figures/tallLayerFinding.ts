import { LAYER_TO_LINE_MOST } from '../data/limits.ts'
import type { Finding } from '../model/mesh.ts'
import type { Recipe } from '../model/settings.ts'
import { formatNumber } from '../words/format.ts'

/**
 * What to say of a layer too high for its line (common practice, no source); null where it is not.
 */
export function tallLayerFinding(
  { layerMm, firstLayerMm, lineMm }: Pick<Recipe, 'layerMm' | 'firstLayerMm' | 'lineMm'>,
  locale?: string,
): Finding | null {
  const mostMm = LAYER_TO_LINE_MOST * lineMm
  const tallestMm = Math.max(layerMm, firstLayerMm)
  if (tallestMm <= mostMm * (1 + 1e-9)) return null
  const most = `${formatNumber(mostMm, locale)}\u{A0}mm`
  const message =
    `A layer of ${formatNumber(tallestMm, locale)}\u{A0}mm is more than ${LAYER_TO_LINE_MOST} of the ` +
    `line’s width: it is hardly pressed on and may come apart. Up to ${most}, or a wider line.`
  return { code: 'tall-layer', grade: 'note', short: 'layers too high for the line', message }
}
