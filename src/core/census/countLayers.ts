import type { Census } from '../model/census.ts'
import { formatNumber } from '../words/format.ts'
import type { Mesh } from '../model/mesh.ts'
import { PreweighError } from '../model/problem.ts'
import type { GeometrySettings, Pose } from '../model/settings.ts'
import type { Budget } from './budget.ts'
import { affordableStride, isSpent } from './budget.ts'
import { findCrowd } from './coarse/crowding.ts'
import { profileLayers, type LayerProfile } from './coarse/layerProfile.ts'
import { planLayers } from './cut/layerPlan.ts'
import { prepare } from './cut/prepare.ts'
import { placeTogether } from '../mesh/pose.ts'
import { refuseHopeless, refuseTooOpen } from './refuseTooOpen.ts'
import { countAllLayers } from './countAllLayers.ts'
import { countSomeLayers } from './countSomeLayers.ts'

/**
 * Longer than any printed part by far: a slip in the unit, and rows would be counted by the hundred
 * thousand.
 */
const LONGEST_MM = 3000

/**
 * A part of up to so many layers is counted before a first look at a few of them would be worth its
 * time.
 */
const SOON_COUNTED = 60

/**
 * Meshes as they were read, faced outwards (see `orientMesh`); zones lie in the part's own place
 * and unit.
 */
export interface PartMeshes {
  readonly part: Mesh
  readonly zones: readonly Mesh[]
}

export interface CountWatch {
  /** Called once, before the count, where it takes a while. */
  readonly onCoarse?: (census: Census) => void
  /** Called after each layer with the share done, 0–1. */
  readonly onProgress?: (fraction: number) => void
  /**
   * Past it a coarse count is all there is; without it all layers are counted, however long that
   * takes.
   */
  readonly budget?: Budget
}

/**
 * The census of a part from its mesh as it was read; past its budget a coarse one, which
 * `coarseMm3` tells.
 *
 * @throws PreweighError `too-large` beyond 3 m, `too-open` where most of the outline is guessed,
 *   and as `countAllLayers` does.
 */
export function countLayers(
  { part, zones }: PartMeshes,
  scaleToMm: number,
  pose: Pose,
  settings: GeometrySettings,
  { onCoarse, onProgress, budget }: CountWatch = {},
): Census {
  const { placed, others } = placeTogether(part, zones, scaleToMm, pose)
  const { heightMm } = refuseTooWide(placed)
  const plan = planLayers(heightMm, settings.layerMm, settings.firstLayerMm)
  const { count } = plan
  refuseHopeless(placed, plan)
  let known: LayerProfile | null = null
  const profile = (): LayerProfile => (known ??= profileLayers(placed, plan))
  const crowd = budget ? findCrowd(placed, plan, settings.lineMm, profile) : null
  let coarse: Census | null = null
  if (onCoarse && count > SOON_COUNTED && !isSpent(budget)) {
    coarse = tryCoarse(() => countSome(strideAhead()))
    if (coarse !== null) onCoarse(coarse)
  }
  const beganS = budget?.spentS() ?? 0
  let share = 0
  const census =
    countAllLayersWhile(() => crowd === null && !isSpent(budget)) ??
    coarse ??
    countSome(strideNow())
  refuseTooOpen(census)
  return census

  function countSome(every: number | undefined): Census {
    return countSomeLayers(placed, settings, others, every, crowd?.pitchTimes, profile())
  }

  /** Null where it had to be given up. */
  function countAllLayersWhile(mayGoOn: () => boolean): Census | null {
    if (!mayGoOn()) return null
    try {
      return countAllLayers(
        placed,
        settings,
        (fraction) => {
          share = fraction
          onProgress?.(fraction)
          if (fraction < 1 && !mayGoOn()) throw new GivenUp()
        },
        others,
      )
    } catch (error) {
      if (error instanceof GivenUp) return null
      throw error
    }
  }

  /** Undefined as long as nothing is known against the usual one. */
  function strideAhead(): number | undefined {
    if (crowd) return crowd.every
    const isLarge = placed.indices.length >= 3 * LARGE
    return budget && isLarge
      ? affordableStride(count, COUNTED_PER_CUT * cutS(() => budget.spentS()))
      : undefined
  }

  function strideNow(): number {
    if (share === 0) return strideAhead() ?? affordableStride(count, UNKNOWN_LAYER_S)
    return affordableStride(count, ((budget?.spentS() ?? 0) - beganS) / (share * count))
  }

  /** How long it takes to cut the layer halfway up. s */
  function cutS(spentS: () => number): number {
    const { cut } = prepare(placed, settings)
    const from = spentS()
    cut(Math.floor(count / 2))
    return spentS() - from
  }
}

/** Triangles from which on a layer may take so long that it is tried before any is counted. */
const LARGE = 100_000
/** Taken of smaller meshes where not one layer was counted before the budget was spent. s */
const UNKNOWN_LAYER_S = 0.03
/**
 * A layer is counted in so many times what it takes to cut it: 2.0 and 2.4 with 400,000 and 50,000
 * bodies that cut one another everywhere, with its share of neighbours.
 */
const COUNTED_PER_CUT = 2.5

/** Unwinds a count whose time is over. */
class GivenUp extends Error {}

/** Null where the few layers looked at hold nothing; all of them may still. */
function tryCoarse(count: () => Census): Census | null {
  try {
    return count()
  } catch (error) {
    if (error instanceof PreweighError) return null
    throw error
  }
}

function refuseTooWide({ positions, indices }: Mesh): { readonly heightMm: number } {
  const low = [Infinity, Infinity, Infinity]
  const high = [-Infinity, -Infinity, -Infinity]
  for (const index of indices) {
    for (let k = 0; k < 3; k++) {
      const value = positions[3 * index + k]!
      if (value < low[k]!) low[k] = value
      if (value > high[k]!) high[k] = value
    }
  }
  const longest = Math.max(...high.map((value, k) => value - low[k]!))
  if (!(longest > LONGEST_MM)) return { heightMm: high[2]! - low[2]! }
  const size = longest < 1e9 ? formatNumber(longest, 'en') : longest.toExponential(1)
  throw new PreweighError(
    'too-large',
    `The part’s longest side is ${size} mm; ${formatNumber(LONGEST_MM, 'en')} mm is the most that is counted.`,
    'Choose the unit it was drawn in; if that is right, it has stray points far away: delete them in your drawing.',
  )
}
