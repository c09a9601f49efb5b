import type { Mesh } from '../../model/mesh.ts'
import type { GeometrySettings } from '../../model/settings.ts'
import type { CutLayer, Grids } from './cutLayer.ts'
import { createLayerCutter } from './cutLayer.ts'
import type { LayerPlan } from './layerPlan.ts'
import { planLayers } from './layerPlan.ts'
import { planGrid, SCAN_TILT_DEG } from '../rows/scanGrid.ts'
import type { LayerCut, ScanFrame } from './planeCutter.ts'
import { createPlaneCutter } from './planeCutter.ts'

const TILT = (SCAN_TILT_DEG * Math.PI) / 180
const FRAME: ScanFrame = { cos: Math.cos(TILT), sin: Math.sin(TILT) }

/** A part ready to be counted. */
export interface Prepared {
  readonly plan: LayerPlan
  readonly grids: Grids
  /** Cuts a layer; only ever further down. */
  readonly cut: (layer: number) => CutLayer
  /** Cuts another mesh, lying in the same place, by the same plan. */
  readonly cutOther: (other: Mesh) => (layer: number) => LayerCut
  /** Sideways step, mm of overhang per mm of height, that holds itself. */
  readonly overhang: number
}

export function prepare(mesh: Mesh, settings: GeometrySettings): Prepared {
  const extent = extentInFrame(mesh)
  const plan = planLayers(extent.heightMm, settings.layerMm, settings.firstLayerMm)
  const overhang = Math.tan((settings.supportAngleDeg * Math.PI) / 180)
  const margin = Math.max(settings.brimMm, settings.supports ? settings.layerMm * overhang : 0)
  const grids: Grids = [
    planGrid(0, extent.vLow, extent.vHigh, margin, settings.lineMm),
    planGrid(1, extent.uLow, extent.uHigh, margin, settings.lineMm),
  ]
  const slice = createPlaneCutter(mesh, plan, FRAME)
  const cutLayer = createLayerCutter(grids)
  return {
    plan,
    grids,
    cut: (layer) => cutLayer(slice(layer)),
    cutOther: (other) => createPlaneCutter(other, plan, FRAME),
    overhang,
  }
}

/**
 * Of the vertices that triangles use: a surface that was left out still has its own among the
 * positions.
 */
function extentInFrame({ positions, indices }: Mesh): {
  uLow: number
  uHigh: number
  vLow: number
  vHigh: number
  heightMm: number
} {
  let uLow = Infinity
  let uHigh = -Infinity
  let vLow = Infinity
  let vHigh = -Infinity
  let zHigh = 0
  for (const index of indices) {
    const i = 3 * index
    const u = positions[i]! * FRAME.cos + positions[i + 1]! * FRAME.sin
    const v = positions[i + 1]! * FRAME.cos - positions[i]! * FRAME.sin
    if (u < uLow) uLow = u
    if (u > uHigh) uHigh = u
    if (v < vLow) vLow = v
    if (v > vHigh) vHigh = v
    if (positions[i + 2]! > zHigh) zHigh = positions[i + 2]!
  }
  return { uLow, uHigh, vLow, vHigh, heightMm: zHigh }
}
