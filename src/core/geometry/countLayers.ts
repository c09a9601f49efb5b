import type { Census } from '../census.ts'
import { formatNumber } from '../figures/format.ts'
import type { Mesh } from '../mesh.ts'
import { PreweighError } from '../problem.ts'
import type { GeometrySettings, Pose } from '../settings.ts'
import { placeMesh } from './pose.ts'
import { refuseTooOpen } from './refuseTooOpen.ts'
import { takeCensus } from './takeCensus.ts'

/** Longer than any printed part by far: a slip in the unit, and rows would be counted by the hundred thousand. */
const LONGEST_MM = 3000

/**
 * The census of a part from its mesh as it was read.
 *
 * @param outward faced outwards, see `orientMesh`.
 * @param onProgress called after each layer with the share done, 0–1.
 * @throws PreweighError `too-large` beyond 3 m, `too-open` where most of the outline is guessed, and as `takeCensus` does.
 */
export function countLayers(
  outward: Mesh,
  scaleToMm: number,
  pose: Pose,
  settings: GeometrySettings,
  onProgress?: (fraction: number) => void,
): Census {
  const placed = placeMesh(outward, scaleToMm, pose)
  refuseTooWide(placed)
  const census = takeCensus(placed, settings, onProgress)
  refuseTooOpen(census)
  return census
}

function refuseTooWide({ positions, indices }: Mesh): void {
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
  if (!(longest > LONGEST_MM)) return
  const size = longest < 1e9 ? formatNumber(longest, 'en') : longest.toExponential(1)
  throw new PreweighError(
    'too-large',
    `The part’s longest side is ${size} mm; ${formatNumber(LONGEST_MM, 'en')} mm is the most that is counted.`,
    'Choose the unit it was drawn in; if that is right, it has stray points far away: delete them in your drawing.',
  )
}
