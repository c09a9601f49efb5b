import { COUNTERSINKS, HEADS, NUTS, THREADS } from '../aircraft/hardware/data.ts'
import {
  INSERT_INFILL_PCT,
  INSERT_WALL_MM,
  insertSeat,
  shortestInsertMm,
} from '../aircraft/hardware/insert.ts'
import { BOSS_FACTOR, LEAST_LINES } from '../data/drills.ts'
import type { Seat } from '../mesh/holes/wholeHoles.ts'
import type { HoleUse } from '../model/drill.ts'
import type { Range } from '../model/figures.ts'
import type { JointThread } from '../model/joints.ts'
import type { Recipe } from '../model/settings.ts'
import type { UseKnown, WalledHole } from './types.ts'
import { mm } from '../words/mm.ts'
import type { Wanted } from './wantedSize.ts'

/** A hole as far as it is reckoned, before it is told. */
interface Reckoned {
  readonly use: HoleUse
  readonly known: UseKnown
  readonly wanted: Wanted
  readonly hole: WalledHole
  /** What is drilled of it. */
  readonly diameterMm: number
  readonly depthMm: number
  readonly recipe: Recipe
  readonly comesOutMm: Range
  /** It may come out narrower than wanted. */
  readonly needs: boolean
  readonly drillMm: number | null
  /** Once it is drilled. */
  readonly finalMm: number
  readonly leftMm: number
  /** How much narrower holes like it come out. */
  readonly lossMm: number
  /** Other pieces of its part have it for something else. */
  readonly isShared: boolean
}

/** How a hole is known and what it is like, each in a sentence. */
export function drillTold(one: Reckoned): readonly string[] {
  const { known, wanted, needs, comesOutMm } = one
  const told = [knownWords(known)]
  if (wanted.fit !== null) told.push(`ISO 273 ${wanted.fit}.`)
  if (wanted.mm !== null && !needs) {
    const { low, high } = comesOutMm
    told.push(`Comes out wide enough: ${mm(low)} to ${mm(high)} mm for ${mm(wanted.mm)} mm.`)
  }
  for (const { kind, diameterMm, depthMm } of otherSeats(one)) {
    told.push(`${SEAT_NAMES[kind]} ${mm(diameterMm)} mm, ${mm(depthMm)} mm deep.`)
  }
  return told
}

/** What is to be minded at the drill, each in a sentence. */
export function drillNotes(one: Reckoned): readonly string[] {
  return [
    ...fitWords(one),
    ...seatWords(one),
    ...webWords(one.hole),
    ...wallWords(one),
    ...(one.isShared ? ['Other pieces of this part have it for something else.'] : []),
  ]
}

/** The mouth that an insert is set into is drilled itself. */
function otherSeats({ hole: { seats }, diameterMm: drilledMm }: Reckoned): readonly Seat[] {
  return seats.filter(({ diameterMm }) => diameterMm !== drilledMm)
}

const SEAT_NAMES: Readonly<Record<Seat['kind'], string>> = {
  countersink: 'Countersink',
  counterbore: 'Counterbore',
  'nut pocket': 'Nut pocket',
}

function knownWords(known: UseKnown): string {
  if (known === 'joint') return 'Known from its joint.'
  return known === 'chosen' ? 'As chosen.' : 'A guess by its diameter.'
}

function fitWords({
  use,
  wanted: { mm: wantedMm },
  hole: { shape },
  diameterMm,
  comesOutMm,
  needs,
  drillMm,
}: Reckoned): readonly string[] {
  if (wantedMm === null) return []
  const notes: string[] = []
  if (needs && shape !== 'round') notes.push(`File it to ${mm(wantedMm)} mm.`)
  else if (needs && drillMm === null) {
    notes.push(`No drill of a common set is ${mm(wantedMm)} mm wide.`)
  }
  const isLoose =
    (use.kind === 'tapped' || use.kind === 'insert' || use.kind === 'damper') &&
    comesOutMm.mid > wantedMm * 1.04
  if (isLoose) {
    notes.push(`Drawn too wide: ${mm(diameterMm)} mm where ${mm(wantedMm)} mm is wanted.`)
  }
  return notes
}

function seatWords(one: Reckoned): readonly string[] {
  const { use, hole, depthMm, lossMm } = one
  if (!('thread' in use)) return []
  const notes = otherSeats(one).flatMap(
    ({ kind, diameterMm, depthMm: deepMm }) =>
      seatFit(kind, diameterMm - lossMm, deepMm, use.thread) ?? [],
  )
  const isInMouth = otherSeats(one).length < hole.seats.length
  if (use.kind === 'insert' && !isInMouth && !(hole.openLow && hole.openHigh)) {
    const insertMm = shortestInsertMm(use.thread)
    const leastMm = insertSeat(use.thread, insertMm).depthMm
    if (depthMm < leastMm - 0.05) {
      notes.push(
        `Blind and ${mm(depthMm)} mm deep; an insert of ${mm(insertMm)} mm wants ${mm(leastMm)} mm.`,
      )
    }
  }
  return notes
}

/** Why head or nut does not go into the seat as it comes out; null where it does. */
function seatFit(
  kind: Seat['kind'],
  printedMm: number,
  deepMm: number,
  size: JointThread,
): string | null {
  const name = SEAT_NAMES[kind]
  if (kind === 'nut pocket') {
    const [acrossMm] = NUTS['ISO 4032'][size] ?? []
    if (acrossMm === undefined) return null
    const nut = `an ${size} nut of ${mm(acrossMm)} mm`
    if (printedMm < acrossMm)
      return `${name} comes out near ${mm(printedMm)} mm: ${nut} is pressed in.`
    return printedMm > 1.1 * acrossMm ? `${name} of ${mm(printedMm)} mm: ${nut} turns in it.` : null
  }
  if (kind === 'countersink') {
    const sink = COUNTERSINKS[size]
    if (sink === undefined) return null
    const isFull = printedMm >= sink.widthMm[0] && deepMm >= 0.5 * sink.depthMm
    const head = `an ${size} countersunk head of ${mm(sink.widthMm[1])} mm`
    return isFull ? null : `${name} comes out near ${mm(printedMm)} mm: ${head} stands out.`
  }
  const widthMm = HEADS['ISO 4762'][size]?.widthMm ?? 0
  return printedMm < widthMm
    ? `${name} comes out near ${mm(printedMm)} mm: an ${size} socket head is ${mm(widthMm)} mm wide.`
    : null
}

function webWords({ webMm }: WalledHole): readonly string[] {
  return webMm === null ? [] : [`A web of ${mm(webMm)} mm closes it: drill it through.`]
}

function wallWords({
  recipe: { lineMm, walls, infillPct },
  leftMm,
  use,
  finalMm,
  comesOutMm,
}: Reckoned): readonly string[] {
  const notes: string[] = []
  const leftLines = leftMm / lineMm
  const round = `${mm(leftMm)} mm, ${Number(leftLines.toFixed(1))} lines`
  if (leftLines < LEAST_LINES) {
    notes.push(`Too little stands round it: ${round}, where ${LEAST_LINES} lines are the least.`)
  }
  const cutLines = Math.max(0, finalMm - comesOutMm.mid) / 2 / lineMm
  if (walls > 0 && cutLines > 0.75 * walls && infillPct < 100) {
    notes.push(
      `The drill goes through its ${walls} walls into the infill: print it with more walls.`,
    )
  }
  if (use.kind === 'insert') {
    const packed = Math.min(leftMm, walls * lineMm)
    if (leftMm < INSERT_WALL_MM || (packed < INSERT_WALL_MM && infillPct < INSERT_INFILL_PCT)) {
      notes.push(
        `An insert holds fully with ${mm(INSERT_WALL_MM)} mm of plastic round it, ` +
          `${INSERT_INFILL_PCT} % full; here are ${mm(leftMm)} mm, ${mm(packed)} mm of it walls.`,
      )
    }
  }
  if (use.kind === 'tapped') {
    const bossMm = finalMm + 2 * leftMm
    const wantedMm = BOSS_FACTOR.value * THREADS[use.thread].diameterMm
    if (bossMm < wantedMm) {
      notes.push(
        `A thread in plastic wants a boss of ${mm(wantedMm)} mm; here it is ${mm(bossMm)} mm.`,
      )
    }
  }
  return notes
}
