import type { Census } from '../model/census.ts'
import type { Mesh } from '../model/mesh.ts'
import { PreweighError } from '../model/problem.ts'
import { formatPercent } from '../words/format.ts'
import { joinContours } from './cut/contours.ts'
import type { LayerPlan } from './cut/layerPlan.ts'
import { createPlaneCutter } from './cut/planeCutter.ts'

/** Above this share of guessed outline a figure would be the guess and not the part. Ours. */
const MOST_DOUBTFUL = 0.3

/** Of meshes larger than this a few layers are looked at before all are counted. Triangles */
const LARGE = 200_000
/** So many layers, spread over the height. */
const LOOKED_AT = 16
/**
 * Twice too open in all of them together, and too open in most: then no count will say otherwise.
 */
const HOPELESS = 2 * MOST_DOUBTFUL
const MOST_OF = 0.75

/** @throws PreweighError `too-open` when most of what the layers enclose had to be guessed. */
export function refuseTooOpen({ doubtfulShare }: Pick<Census, 'doubtfulShare'>): void {
  if (doubtfulShare > MOST_DOUBTFUL) refuse(formatPercent(doubtfulShare, 'en'))
}

/**
 * The same of a large mesh from a few of its layers, whose outlines are cut and joined and nothing
 * more: of a soup of a million triangles every layer would take seconds to count, and all of it
 * would be refused in the end.
 *
 * @param mesh placed, as `plan` has its layers.
 */
export function refuseHopeless(mesh: Mesh, plan: LayerPlan): void {
  if (mesh.indices.length / 3 < LARGE) return
  const cut = createPlaneCutter(mesh, plan, { cos: 1, sin: 0 })
  let [guessedMm, lengthMm, open, all] = [0, 0, 0, 0]
  // Once too many are sound no others will say otherwise.
  for (let i = LOOKED_AT - 1; i >= 0 && all - open <= (1 - MOST_OF) * LOOKED_AT; i--) {
    const own = joinContours(cut(Math.floor(((i + 0.5) * plan.count) / LOOKED_AT)))
    if (!(own.lengthMm > 0)) continue
    guessedMm += own.bridgedMm
    lengthMm += own.lengthMm
    all++
    if (own.bridgedMm > MOST_DOUBTFUL * own.lengthMm) open++
  }
  if (guessedMm > HOPELESS * lengthMm && open >= MOST_OF * all) {
    refuse(`about ${formatPercent(guessedMm / lengthMm, 'en')}`)
  }
}

function refuse(share: string): never {
  throw new PreweighError(
    'too-open',
    `The mesh leaves ${share} of its layers’ outlines open; ` +
      `above ${formatPercent(MOST_DOUBTFUL, 'en')} any weight would be a guess.`,
    'Close the gaps in your drawing, or give the surface a thickness, and export the part again as a solid.',
  )
}
