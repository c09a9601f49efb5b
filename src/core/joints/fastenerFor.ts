import { INSERT_HOLES_MM, SCREW_HOLES, type HoleRow } from '../data/screwHoles.ts'
import type { BoreMark, JointFastener, JointThread } from '../model/joints.ts'
import { purposeOf } from './boresFit.ts'

/**
 * What most likely holds bores that meet, by their widths: the thread whose holes of ISO 273,
 * tapping drills and inserts they are nearest to. Null for pegs, tubes, and bores that no one screw
 * goes through.
 *
 * @param ends only these are thought of.
 */
export function fastenerFor(
  a: readonly BoreMark[],
  b: readonly BoreMark[],
  ends: readonly End[] = ENDS,
): JointFastener | null {
  const pairs = a.flatMap((one, i) => (b[i] === undefined ? [] : [[one, b[i]] as const]))
  if (pairs.length === 0 || pairs.flat().some(({ kind }) => kind === 'peg')) return null
  let best: JointFastener | null = null
  let least = Infinity
  SCREW_HOLES.forEach((row, place) => {
    if (row.size === 'M1.6') return
    for (const end of ends) {
      const off = pairs.reduce((sum, pair) => sum + offOf(pair, row, place, end), 0)
      if (off >= least) continue
      least = off
      best = { thread: row.size satisfies JointThread, end }
    }
  })
  return best
}

const ENDS = ['nut', 'insert', 'tapped'] as const
type End = (typeof ENDS)[number]

/**
 * How far both bores are off what they would be drilled for; infinite where they cannot be that. mm
 */
function offOf([a, b]: readonly [BoreMark, BoreMark], row: HoleRow, place: number, end: End) {
  if (end === 'nut') return passing(a, row, place) + passing(b, row, place)
  return Math.min(
    passing(a, row, place) + holding(b, row, place, end),
    passing(b, row, place) + holding(a, row, place, end),
  )
}

function passing(mark: BoreMark, { clearanceMm }: HoleRow, place: number): number {
  const isThrough = mark.openLow && mark.openHigh
  if (!isThrough || (purposeOf(mark).passes & (1 << place)) === 0) return Infinity
  return Math.abs(mark.diameterMm - clearanceMm.medium)
}

function holding(mark: BoreMark, row: HoleRow, place: number, end: End): number {
  const isWide = mark.diameterMm >= row.nominalMm
  if ((purposeOf(mark).holds & (1 << place)) === 0 || isWide !== (end === 'insert')) return Infinity
  const wanted = isWide && row.size !== 'M1.6' ? INSERT_HOLES_MM[row.size] : row.tappingMm
  return Math.abs(mark.diameterMm - wanted)
}
