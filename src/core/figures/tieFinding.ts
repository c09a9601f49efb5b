import type { Census } from '../model/census.ts'
import type { Finding } from '../model/mesh.ts'
import type { Recipe } from '../model/settings.ts'
import { formatNumber } from '../words/format.ts'

/** Half a layer below this share of the height is lost in the other uncertainties. */
const WORTH_SAYING = 0.01

/**
 * Where a part's top lies in the middle of a layer: what is counted, what it may be as well, and
 * layer heights that divide it.
 */
export function tieFinding(
  { byHabit, heightMm, layers }: Pick<Census, 'byHabit' | 'heightMm' | 'layers'>,
  { layerMm, firstLayerMm }: Recipe,
  locale?: string,
): Finding | null {
  const tallMm = heightMm - layerMm / 2
  if (!byHabit.tie || layerMm / 2 < WORTH_SAYING * tallMm) return null
  const { count } = layers
  const millimetres = (mm: number): string => formatNumber(mm, locale, 3)
  const dividing = [count - 2, count - 1]
    .filter((above) => above > 0)
    .map((above) => `${millimetres((tallMm - firstLayerMm) / above)} mm`)
    .join(' or ')
  return {
    code: 'layer-tie',
    grade: 'changes the grams',
    short: `${count - 1} or ${count} layers`,
    message:
      `At ${millimetres(tallMm)} mm its top lies in the middle of a layer of ` +
      `${millimetres(layerMm)} mm: some printers lay ${count - 1} layers, some ${count}, ` +
      `and ${count} are counted. Layers of ${dividing} would divide it.`,
  }
}
