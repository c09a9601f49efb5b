import type { Census } from '../model/census.ts'
import type { Mesh } from '../model/mesh.ts'
import type { GeometrySettings } from '../model/settings.ts'
import { brimAreaMm2 } from './areas/brim.ts'
import type { CutLayer } from './cut/cutLayer.ts'
import type { LayerAreas } from './areas/layerAreas.ts'
import { measureLayer } from './areas/layerAreas.ts'
import { createHabitTally } from './areas/habitTally.ts'
import { layingOf } from './areas/laying.ts'
import { coveringLayers, skinReachOf } from './areas/skinReach.ts'
import { emptyLayers, sumUp, writeLayer } from './areas/layerTable.ts'
import { createMoveTally } from './moves/moveTally.ts'
import { strandsInAir, strandsOver } from './habits/strands.ts'
import { prepare } from './cut/prepare.ts'
import { createSupportColumns } from './areas/support.ts'
import { createZoneCounts } from './areas/zone.ts'

/**
 * Counts what the layers of a placed mesh (mm, lowest z at 0) hold.
 *
 * Regions are kept as stretches on parallel rows: along a row every boundary is exact, across rows
 * it is sampled, with an error that falls with the square of the pitch. Booleans on sorted
 * stretches need no tolerance and cannot fail on a mesh that crosses itself. Even layers are
 * scanned along x, odd ones along y. Layers of equal shape share their scan, and a layer whose
 * whole neighbourhood repeats is copied.
 *
 * Tried instead, and not kept: time of a whole count ÷ ours (processor time, in turns, middle and
 * least of 5 to 61 each; of the 13 parts of the Sandpiper and of 27 real meshes in sum, 11 each):
 *
 * | on          | polygons, no habits | rows in WASM, asked ≤ 0.5 | rows kept, asked ≤ 0.9 |
 * |-------------|---------------------|---------------------------|------------------------|
 * | a wavy ball | 6                   | 0.79 and 0.73             | 0.91 and 1.18          |
 * | a plate     | 20                  | 0.94 and 1.00             | 1.08 and 1.09          |
 * | an arm      | 3                   | 0.77 and 0.87             | 1.06 and 0.91          |
 * | 13 parts    |                     | 0.68 and 0.74             | 1.10 and 1.01          |
 * | 27 meshes   |                     | 0.77 and 0.76             | 1.02 and 1.11          |
 *
 * - Polygons: manifold-3d, itself WASM, against a count without habits (`npm run bench`).
 * - Rows in WASM with SIMD, written in a dialect of TypeScript: scans, insets, intersections and
 *   boundaries, copied in and out; same figures within 4e-14. The rows alone take 0.28 to 0.61 of
 *   our time, scans and insets with nothing copied 0.27 to 0.36; but they are a third of a count of
 *   the ball, a tenth of the plate's and half of the arm's: taking no time at all they would bring
 *   it to 0.66, 0.9 and 0.55. It would ship 4 kB gzipped, start in 2 ms, and need a compiler of
 *   100 MB to build.
 * - Rows kept from the layer above where no edge changed (scans and insets; same figures bit for
 *   bit): 0, 32 and 22 % of rows of the three stayed, 12 to 50 % of the 13 parts', none of 9 of the
 *   27 meshes' and 1 to 77 % of the others'. Finding and copying them took as long as scanning.
 *
 * @param onProgress called after each layer with the share done, 0–1.
 * @param zones meshes, placed with the part, whose insides get infills of their own; see
 *   `Census.zones`.
 * @throws PreweighError `no-volume` when no layer encloses anything, `too-many-layers`,
 *   `bad-settings`.
 */
export function countAllLayers(
  mesh: Mesh,
  settings: GeometrySettings,
  onProgress?: (fraction: number) => void,
  zones: readonly Mesh[] = [],
): Census {
  const { plan, grids, cut, cutOther, overhang } = prepare(mesh, settings)
  const zoneCounts = createZoneCounts(zones.map(cutOther), plan, grids, settings)
  const lowerColumns = createSupportColumns(grids)
  const moves = createMoveTally(settings)
  const byHabit = createHabitTally(plan.tie)
  const layers = emptyLayers(plan.count, plan.heightMm)
  const reach = skinReachOf(settings)
  const below = Math.max(reach.under, settings.supports ? 1 : 0)
  const laying = layingOf(settings, settings.layerMm, false)
  const layingFirst = layingOf(settings, settings.firstLayerMm, true)
  const kept = new Map<number, CutLayer>()
  const done: [Remembered | null, Remembered | null] = [null, null]
  let brimMm3 = 0
  let bridged = 0
  let length = 0

  for (let top = plan.count - 1 + below; top >= 0; top--) {
    // Layer `cut` is new; layer `top − …` now has every neighbour it needs.
    const cutIndex = top - below
    if (cutIndex >= 0) {
      const fresh = cut(cutIndex)
      kept.set(cutIndex, fresh)
      bridged += fresh.bridgedMm * plan.heightMm[cutIndex]!
      length += fresh.lengthMm * plan.heightMm[cutIndex]!
    }
    kept.delete(top + reach.above + 1)
    const layer = kept.get(top)
    if (!layer) continue
    const along = (top & 1) as 0 | 1
    const neighbours = coveringLayers(kept, top, reach)
    const known = done[along]
    const same =
      known && known.layer === layer && sameList(known.neighbours, neighbours) ? known : null
    const areas =
      same?.areas ?? measureLayer(layer, neighbours, along, top === 0 ? layingFirst : laying, grids)
    const beneath = kept.get(top - 1)
    // Supports hold what lies on them as the bed does.
    const inAir = settings.bottomSkins > 0 && !settings.supports && beneath && beneath !== layer
    const airMm2 = inAir ? (same?.airMm2 ?? strandsInAir(areas, along, beneath)) : 0
    layers.strandMm2[top]! += airMm2
    byHabit.addAir(airMm2 * plan.heightMm[top]!)
    if (known) {
      const strandMm2 = strandsOver(areas, known.areas)
      layers.strandMm2[top + 1]! += strandMm2
      if (top + 2 < plan.count) layers.strandMm2[top + 2]! += strandMm2
    }
    done[along] = { layer, neighbours, areas, airMm2 }
    const outside = zoneCounts.partOff(top, areas)
    writeLayer(layers, top, outside)
    byHabit.add(areas, plan.heightMm[top]!)
    moves.add(layer, outside)
    if (settings.supports && beneath) {
      const stepMm = plan.heightMm[top]! * overhang
      layers.supportMm2[top - 1] = lowerColumns(layer, beneath, stepMm)
    }
    if (top === 0) brimMm3 = brimAreaMm2(layer, settings.brimMm, grids) * plan.heightMm[0]!
    onProgress?.((plan.count - top) / plan.count)
  }
  const doubtful = length > 0 ? bridged / length : 0
  const census = sumUp(layers, moves.finish(), brimMm3, doubtful, byHabit.finish())
  return { ...census, zones: zoneCounts.finish() }
}

interface Remembered {
  readonly layer: CutLayer
  readonly neighbours: readonly (CutLayer | null)[]
  readonly areas: LayerAreas
  readonly airMm2: number
}

function sameList<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i])
}
