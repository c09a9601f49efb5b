import type { StoreApi } from 'zustand/vanilla'
import { laidRecipe } from '../../core/figures/laidRecipe.ts'
import type { Part } from '../../core/model/frame.ts'
import { geometryOf } from '../../jobs/keys.ts'
import type { LookAsk } from '../../jobs/asks/partAsks.ts'
import type { MeshSource } from '../../jobs/asks/fileAsks.ts'
import type { Runner } from '../../jobs/runner.ts'
import type { Actions, LaidOtherwise } from './types.ts'
import type { AppState } from '../store/types.ts'
import { materialOf } from '../store/materialOf.ts'
import { takenAs } from './analysis.ts'
import type { Meshes } from '../storage/meshes.ts'

/** From where a part is looked at, on what, and which points of its drawing to find. */
export type PartView = Pick<LookAsk, 'view' | 'sheet' | 'pointsMm'>

/** Draws one part and cuts it, as it lies and by its present settings. */
export function createPartLooks(
  store: StoreApi<AppState>,
  runner: Runner,
  meshes: Meshes,
): Pick<Actions, 'lookAtPart' | 'cutPart' | 'stiffenPart' | 'sectionPart'> {
  async function meshesOf(id: string) {
    const part = store.getState().frame.parts.find((each) => each.id === id)
    if (part === undefined) return null
    const source = await meshes.find(part.meshHash, part.fileName)
    if (source === null) return null
    const { unit, pose } = part
    const zones = await zonesOf(part)
    return { part, common: { source: takenAs(source, part), zones, unit, pose } }
  }

  /** A zone whose mesh is gone is told of where the layers are counted. */
  async function zonesOf({ zones }: Part): Promise<readonly MeshSource[]> {
    const found = await Promise.all(
      zones.map(({ meshHash, fileName }) => meshes.find(meshHash, fileName)),
    )
    return found.includes(null) ? [] : found.filter((zone) => zone !== null)
  }

  function laidOtherwise(part: Part, { pose, recipe = {}, material }: LaidOtherwise = {}) {
    const { frame } = store.getState()
    return {
      pose: pose ?? part.pose,
      recipe: laidRecipe({ ...part, recipe: { ...part.recipe, ...recipe } }, frame.printer),
      material: material ?? materialOf(frame, part.materialId),
    }
  }

  return {
    async lookAtPart(id, wanted) {
      const found = await meshesOf(id)
      if (found === null) return null
      const { supportAngleDeg } = found.part.recipe
      const ask = { ...found.common, ...wanted, supportAngleDeg }
      const outcome = await runner.run({ kind: 'look', ...ask })
      return outcome.ok ? outcome.value : null
    },
    async cutPart(id, axis, share) {
      const found = await meshesOf(id)
      if (found === null) return null
      const geometry = geometryOf(laidRecipe(found.part, store.getState().frame.printer))
      const outcome = await runner.run({ kind: 'cut', ...found.common, geometry, axis, share })
      return outcome.ok ? outcome.value : null
    },
    async stiffenPart(id, wanted, options, other) {
      const found = await meshesOf(id)
      if (found === null) return null
      const laid = laidOtherwise(found.part, other)
      return runner.run({ kind: 'stiff', ...wanted, ...found.common, ...laid }, options)
    },
    async sectionPart(id, wanted, signal, other) {
      const found = await meshesOf(id)
      if (found === null) return null
      const { pose, recipe } = laidOtherwise(found.part, other)
      const laid = { pose, geometry: geometryOf(recipe) }
      return runner.run({ kind: 'sections', ...wanted, ...found.common, ...laid }, { signal })
    },
  }
}
