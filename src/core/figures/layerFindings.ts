import { counted } from '../words/counts.ts'
import type { Census } from '../model/census.ts'
import { BUDGET_S } from '../model/census.ts'
import { heaviestFirst } from '../model/grades.ts'
import type { Finding } from '../model/mesh.ts'
import { formatPercent } from '../words/format.ts'

/** Bridged outline below this share is lost in the other uncertainties. */
const WORTH_SAYING = 0.002

/**
 * What is odd about a mesh once its layers are counted, heaviest first: only they tell whether a
 * gap in the skin reaches the figures. Without a census the mesh's own findings, as they are.
 */
export function layerFindings(
  measured: readonly Finding[],
  census: Pick<Census, 'doubtfulShare' | 'coarseMm3'> | null,
  locale?: string,
): readonly Finding[] {
  if (census === null) return heaviestFirst(measured)
  const coarse = census.coarseMm3 > 0 ? [COARSE] : []
  if (census.doubtfulShare <= WORTH_SAYING) {
    return heaviestFirst([...coarse, ...measured.map(unnoticed)])
  }
  const share = formatPercent(census.doubtfulShare, locale)
  const place = measured.find(({ code }) => code === 'open-edges')?.place
  const doubt: Finding = {
    code: 'doubtful-layers',
    grade: 'changes the grams',
    short: `${share} of its outlines open`,
    message:
      `The mesh leaves ${share} of its layers’ outlines open; they were closed straight, ` +
      'and the range of grams and hours is wider by as much. ' +
      'Close the gaps in your drawing for firmer figures.',
    ...(place === undefined ? {} : { place }),
  }
  return heaviestFirst([...coarse, doubt, ...measured])
}

const COARSE: Finding = {
  code: 'counted-coarsely',
  grade: 'changes the grams',
  short: 'not all layers counted',
  message:
    `Counting all its layers takes longer than ${BUDGET_S} s, so the figures are those of some of ` +
    'them, and their range is wider by what the others may hold. ' +
    'It can be counted fully when you ask for it.',
}

function unnoticed(finding: Finding): Finding {
  if (finding.code !== 'open-edges') return finding
  const count = finding.count ?? 1
  const edges = counted(count, 'edge has', 'edges have')
  return {
    ...finding,
    message: `${edges} a triangle on one side only, and no layer notices the gap: the figures hold; nothing to do.`,
  }
}
