import { INSERT_HOLES_MM, SCREW_HOLES, type HoleRow } from '../data/screwHoles.ts'
import { isThrough } from '../mesh/holes/numberHoles.ts'
import type { WholeHole } from '../mesh/holes/wholeHoles.ts'
import type { HoleUse } from '../model/drill.ts'
import type { JointThread } from '../model/joints.ts'

/** A diameter is meant to be one of a table's to within this. mm */
const MEANT_MM = 0.06
/** No joint screw is thinner. */
const isThread = (size: HoleRow['size']): size is JointThread => size !== 'M1.6'

/** Inserts are set into blind holes that differ by as much from chart to chart. mm */
const INSERT_MM = 0.25
/** Deeper than so many diameters, and past any insert, a bore is a rod's or a tube's. */
const LONG = 6

/**
 * What a hole is probably for, by its shape and diameter alone. Long ones are a rod's. A blind one,
 * or the wide mouth over a bore, is an insert's where one fits; then come the clearance holes of
 * ISO 273, what an insert is set into, a tapping drill, anything between the fine and the coarse
 * clearance of a screw. A guess and no more.
 */
export function guessUse(hole: WholeHole): HoleUse {
  if (hole.shape === 'slot') return slotUse(hole)
  if (hole.shape === 'hexagon') return { kind: 'none' }
  const { diameterMm, depthMm, seats } = hole
  if (depthMm > LONG * diameterMm) return { kind: 'shaft', shaftMm: Math.floor(2 * diameterMm) / 2 }
  const wide = seats.find(({ kind }) => kind === 'counterbore')
  const kinds = isThrough(hole) || seats.length > 0 ? PASSING : BLIND
  return (
    (wide === undefined ? null : seated(wide.diameterMm, diameterMm)) ??
    kinds.map((kind) => kind(diameterMm)).find((use) => use !== null) ?? { kind: 'none' }
  )
}

/** A mouth as wide as an insert's, over a bore that lets its screw through. */
function seated(mouthMm: number, boreMm: number): HoleUse | null {
  const use = insert(mouthMm)
  if (use?.kind !== 'insert') return null
  return boreMm > Number(use.thread.slice(1)) ? use : null
}

type Guess = (diameterMm: number) => HoleUse | null

const exactly: Guess = (mm) => {
  const row = SCREW_HOLES.find(
    ({ size, clearanceMm: { fine, medium, coarse } }) =>
      isThread(size) && [fine, medium, coarse].some((each) => Math.abs(each - mm) <= MEANT_MM),
  )
  return row !== undefined && isThread(row.size) ? { kind: 'screw', thread: row.size } : null
}

const insertWithin =
  (within: number): Guess =>
  (mm) => {
    const [thread] =
      Object.entries(INSERT_HOLES_MM).find(([, each]) => Math.abs(each - mm) <= within) ?? []
    return thread === undefined ? null : { kind: 'insert', thread: thread as JointThread }
  }

const insert = insertWithin(INSERT_MM)

const tapped: Guess = (mm) => {
  // An M5 thread wants what an M3 insert is often set into, and is far rarer (common practice, no
  // source).
  const row = SCREW_HOLES.find(
    ({ size, tappingMm }) => size !== 'M5' && Math.abs(tappingMm - mm) <= MEANT_MM,
  )
  return row !== undefined && isThread(row.size) ? { kind: 'tapped', thread: row.size } : null
}

const between: Guess = (mm) => {
  const row = SCREW_HOLES.find(
    ({ clearanceMm: { fine, coarse } }) => mm > fine - 2 * MEANT_MM && mm < coarse + MEANT_MM,
  )
  return row !== undefined && isThread(row.size) ? { kind: 'screw', thread: row.size } : null
}

const PASSING: readonly Guess[] = [exactly, tapped, insertWithin(MEANT_MM), between]
const BLIND: readonly Guess[] = [tapped, insert, exactly, between]

/** Slots that are as wide as a screw's clearance let it slide; others hold straps and wires. */
function slotUse({ diameterMm, stretchMm }: WholeHole): HoleUse {
  return stretchMm > 4 * diameterMm ? { kind: 'none' } : (exactly(diameterMm) ?? { kind: 'none' })
}
