import type { Census } from '../model/census.ts'
import { formatPercent } from '../words/format.ts'
import { PreweighError } from '../model/problem.ts'

/** Above this share of guessed outline a figure would be the guess and not the part. Ours. */
const MOST_DOUBTFUL = 0.3

/** @throws PreweighError `too-open` when most of what the layers enclose had to be guessed. */
export function refuseTooOpen(census: Census): void {
  if (census.doubtfulShare <= MOST_DOUBTFUL) return
  const share = formatPercent(census.doubtfulShare, 'en')
  throw new PreweighError(
    'too-open',
    `The mesh leaves ${share} of its layers’ outlines open; ` +
      `above ${formatPercent(MOST_DOUBTFUL, 'en')} any weight would be a guess.`,
    'Close the gaps in your drawing, or give the surface a thickness, and export the part again as a solid.',
  )
}
