import type { Mesh } from '../../model/mesh.ts'
import type { GeometrySettings } from '../../model/settings.ts'
import type { CutLayer, Grids } from './cutLayer.ts'
import { createLayerCutter } from './cutLayer.ts'
import type { LayerPlan } from './layerPlan.ts'
import { planLayers } from './layerPlan.ts'
import { planGrid } from '../rows/scanGrid.ts'
import { extentOf, FRAME } from './extentOf.ts'
import type { LayerCut } from './planeCutter.ts'
import { createPlaneCutter } from './planeCutter.ts'

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

/** @param pitchTimes rows lie so many times as far apart as a count of all layers has them. */
export function prepare(mesh: Mesh, settings: GeometrySettings, pitchTimes = 1): Prepared {
  const extent = extentOf(mesh)
  const plan = planLayers(extent.heightMm, settings.layerMm, settings.firstLayerMm)
  const overhang = Math.tan((settings.supportAngleDeg * Math.PI) / 180)
  const margin = Math.max(settings.brimMm, settings.supports ? settings.layerMm * overhang : 0)
  const grids: Grids = [
    planGrid(0, extent.vLow, extent.vHigh, margin, settings.lineMm, pitchTimes),
    planGrid(1, extent.uLow, extent.uHigh, margin, settings.lineMm, pitchTimes),
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
