import { planLayers } from '../../core/census/cut/layerPlan.ts'
import type { PartSection } from '../../core/census/section/types.ts'
import { poseBounds } from '../../core/mesh/poseBounds.ts'
import type { Part } from '../../core/model/frame.ts'
import type { Bounds } from '../../core/model/mesh.ts'
import type { Lens } from '../drawing/LensDrawing.tsx'
import { cutLengthMm, type CutPlane } from './cutPlane.ts'

/** The layer a level plane lies in. */
export interface LensLayer {
  /** From 0. */
  readonly layer: number
  readonly layers: number
  /** Of its top above the bed, and its own. mm */
  readonly topMm: number
  readonly heightMm: number
  /** The plane through the middle of another layer. */
  readonly planeAt: (layer: number) => CutPlane
}

/** Null where the part has no layers, or more than are counted. */
export function lensLayer(
  { recipe, pose }: Pick<Part, 'recipe' | 'pose'>,
  boundsMm: Bounds,
  { share }: CutPlane,
): LensLayer | null {
  const { layerMm, firstLayerMm } = recipe
  const reachMm = cutLengthMm(poseBounds(boundsMm, pose), 'z')
  const layers = countOf(reachMm, layerMm, firstLayerMm)
  if (layers === 0) return null
  const topOf = (layer: number): number => firstLayerMm + layer * layerMm
  const heightOf = (layer: number): number => (layer === 0 ? firstLayerMm : layerMm)
  const above = Math.floor((share * reachMm - firstLayerMm) / layerMm + ROUNDED) + 1
  const layer = Math.min(layers - 1, Math.max(0, above))
  return {
    layer,
    layers,
    topMm: topOf(layer),
    heightMm: heightOf(layer),
    planeAt: (at) => ({
      axis: 'z',
      share: Math.min(1, (topOf(at) - heightOf(at) / 2) / reachMm),
    }),
  }
}

/** A level plane through the middle of the layer it lies in; any other as it is. */
export function inLayer(
  part: Pick<Part, 'recipe' | 'pose'>,
  boundsMm: Bounds,
  plane: CutPlane,
): CutPlane {
  const lens = plane.axis === 'z' ? lensLayer(part, boundsMm, plane) : null
  return lens === null ? plane : lens.planeAt(lens.layer)
}

/** What is drawn of it: the last level cut, until the next is there; null for upright planes. */
export function lensOf(
  { recipe, zones }: Pick<Part, 'recipe' | 'zones'>,
  { axis }: CutPlane,
  section: PartSection | null,
): Lens | null {
  if (axis !== 'z' || section?.axis !== 'z') return null
  const { infillPct, lineMm } = recipe
  return { section, infillPct, lineMm, zonePcts: zones.map((zone) => zone.infillPct) }
}

/** A plane in the face between two layers is in the upper one, whatever rounding says. */
const ROUNDED = 1e-9

function countOf(heightMm: number, layerMm: number, firstLayerMm: number): number {
  try {
    return planLayers(heightMm, layerMm, firstLayerMm).count
  } catch {
    return 0
  }
}
