import { extentOf } from '../cut/extentOf.ts'
import type { LayerPlan } from '../cut/layerPlan.ts'
import { firstCutAbove } from '../cut/planeCutter.ts'
import type { Mesh } from '../../model/mesh.ts'
import { planGrid } from '../rows/scanGrid.ts'
import type { LayerProfile } from './layerProfile.ts'

/** How a coarse count of a crowded mesh goes about it. */
export interface Crowd {
  /** One in so many layers is counted. */
  readonly every: number
  /** Rows lie so many times as far apart as usual. */
  readonly pitchTimes: number
}

/** Triangles below which no layer is crowded. */
const FEW_TRIANGLES = 10_000

/** Joining, thinning and following a point of an outline takes as long as so many crossings. */
const POINT = 20

/**
 * Looks that all layers together may take: of a crowd 0.3 µs each with all that follows, so that
 * more is never counted within the budget. Of 45 real and demo parts the most crowded takes 10
 * million (0.07 µs each), 5,000 bodies that cut one another everywhere 220.
 */
const MOST_OF_ALL = 80e6

/** Crossings of the most crowded layer above which rows lie wider apart, and at most so wide. */
const MOST_CROSSINGS = 1e6
const MOST_TIMES = 8

/** Looks that a coarse count may take, with two neighbours to each layer. */
const MOST_OF_COARSE = 12e6
const CUT_FOR_ONE = 3
/** Of any part so many layers are counted at least. */
const FEWEST = 4

/**
 * Bodies by the ten thousand that cut one another have kilometres of outline in a layer, though
 * next to none of it bounds what they make together, and every crossing of a row with it and every
 * point is looked at. How many there are the triangles tell before any layer is cut; a count and
 * not a time, so that a file ends the same way on every machine.
 *
 * @param mesh placed, as `plan` has its layers.
 * @param profile of its layers, asked for where it may be crowded.
 * @returns null where all layers may be counted.
 */
export function findCrowd(
  mesh: Mesh,
  plan: LayerPlan,
  lineMm: number,
  profile: () => LayerProfile,
): Crowd | null {
  if (mesh.indices.length < 3 * FEW_TRIANGLES) return null
  const { lengthMm } = profile()
  const { vLow, vHigh } = extentOf(mesh)
  const { pitchMm } = planGrid(0, vLow, vHigh, 0, lineMm)
  const points = countSegments(mesh, plan)
  // Each mm of outline is met by 4/π ÷ pitch rows, both ways.
  const crossings = lengthMm.map((mm) => ((4 / Math.PI) * mm) / pitchMm)
  const all = sumOf(crossings) + POINT * sumOf(points)
  if (all <= MOST_OF_ALL) return null
  const most = crossings.reduce((max, one) => Math.max(max, one), 0)
  const pitchTimes = Math.min(MOST_TIMES, Math.max(1, most / MOST_CROSSINGS))
  const layerLooks = (sumOf(crossings) / pitchTimes + POINT * sumOf(points)) / plan.count
  const counted = Math.max(FEWEST, Math.floor(MOST_OF_COARSE / (CUT_FOR_ONE * layerLooks)))
  return { every: Math.ceil(plan.count / counted), pitchTimes }
}

const sumOf = (values: Float64Array): number => values.reduce((sum, one) => sum + one, 0)

/** Of each layer how many triangles it cuts. */
function countSegments({ positions, indices }: Mesh, plan: LayerPlan): Float64Array {
  const steps = new Float64Array(plan.count + 1)
  for (let i = 0; i < indices.length; i += 3) {
    const a = positions[3 * indices[i]! + 2]!
    const b = positions[3 * indices[i + 1]! + 2]!
    const c = positions[3 * indices[i + 2]! + 2]!
    steps[firstCutAbove(plan, Math.min(a, b, c))]!++
    steps[firstCutAbove(plan, Math.max(a, b, c))]!--
  }
  let open = 0
  return steps.subarray(0, plan.count).map((step) => (open += step))
}
