import type { BodyKind } from '../../model/aircraft.ts'
import type { JointFastener } from '../../model/joints.ts'
import { INSERTS, NUTS, THREADS } from './data.ts'
import { insertSeat, shortestInsertMm } from './insert.ts'
import { hundredths, isBlind, type Column } from './screwColumn.ts'
import type { InsertPrint, StackAnswer, StackEnd } from './stack.ts'
import { stackUp } from './stackUp.ts'
import type { NutStandard } from './types.ts'
import { mm } from '../../words/mm.ts'

/** More washers than this under one head are a wrong screw. */
const MOST_WASHERS = 3

/** One length for all screws of a joint. */
export interface ChosenScrew {
  /** The longest way from under the head to where it bites, washers not counted. mm */
  readonly gripMm: number
  /** Shortest stocked ISO 4762 that does for every hole; null where none does. mm */
  readonly lengthMm: number | null
  /** Under each head, so that a stocked length fits. */
  readonly washers: number
  /** Of the insert that each bites in; null where it bites in something else. mm */
  readonly insertMm: number | null
  readonly warnings: readonly string[]
}

/**
 * Long enough for the longest way, too short to meet the nearest bottom. Where no stocked length
 * does both, as few washers go under the heads as bring one there.
 *
 * @param print how the part that the screws bite in is printed; undefined where nobody said.
 * @param bought what the screws bite in, where that is bought and has threads of its own.
 */
export function chooseScrew(
  columns: readonly Column[],
  { thread, end }: JointFastener,
  print?: InsertPrint,
  bought?: BodyKind,
): ChosenScrew {
  const gripMm = Math.max(0, ...columns.map((column) => column.gripMm))
  const nearestMm = nearestBottomMm(columns, end, gripMm)
  const insertMm = end === 'insert' ? insertLengthMm(columns, thread) : null
  const refused = end === 'tapped' ? noThread(columns, thread) : null
  if (refused !== null) return { gripMm, lengthMm: null, washers: 0, insertMm, warnings: [refused] }
  const answerWith = (washers: number) =>
    stackUp({
      standard: 'ISO 4762',
      size: thread,
      layers: [{ name: 'What it clamps', thicknessMm: gripMm }],
      washers,
      end: stackEnd({ thread, end }, nearestMm, insertMm, print, bought),
      lengthMm: null,
    })
  const bare = answerWith(0)
  const shallow = tooShallow(columns, thread, nearestMm, bare)
  if (shallow !== null) return { gripMm, lengthMm: null, washers: 0, insertMm, warnings: [shallow] }
  let [washers, answer] = [0, bare]
  while (answer.lengthMm === null && answer.mostMm !== null && washers < MOST_WASHERS) {
    washers++
    answer = answerWith(washers)
  }
  const found = answer.lengthMm === null ? bare : answer
  return {
    gripMm,
    lengthMm: found.lengthMm,
    washers: found === bare ? 0 : washers,
    insertMm,
    warnings: found.warnings.map(({ text }) => text),
  }
}

/** A nut is a locknut where its size has one. */
export function nutStandardOf(thread: JointFastener['thread']): NutStandard {
  return NUTS['ISO 7040'][thread] === undefined ? 'ISO 4032' : 'ISO 7040'
}

/**
 * Past the longest grip; null where the screws meet no bottom. Screws of a post have half of it
 * each. mm
 */
function nearestBottomMm(
  columns: readonly Column[],
  end: JointFastener['end'],
  gripMm: number,
): number | null {
  const bottoms = columns.flatMap((column) => {
    if (end === 'post') return [column.gripMm + column.hole.joint.gapMm / 2]
    const { bitten } = column
    if (bitten === null || !isBlind(bitten)) return []
    return [column.gripMm + hundredths(bitten.mark.depthMm)]
  })
  return bottoms.length === 0 ? null : Math.max(0, hundredths(Math.min(...bottoms) - gripMm))
}

/** The longest that every seat is deep enough for; the shortest where none is. mm */
function insertLengthMm(columns: readonly Column[], thread: JointFastener['thread']): number {
  const { lengthMm } = INSERTS[thread]
  const isDeepEnough = (insertMm: number): boolean =>
    columns.every(({ bitten }) => {
      if (bitten === null) return true
      const wantedMm = isBlind(bitten) ? insertSeat(thread, insertMm).depthMm : insertMm
      return hundredths(bitten.mark.depthMm) >= wantedMm
    })
  return isDeepEnough(lengthMm) ? lengthMm : shortestInsertMm(thread)
}

function noThread(columns: readonly Column[], thread: JointFastener['thread']): string | null {
  const wideMm = Math.max(...columns.map(({ bitten }) => bitten?.mark.diameterMm ?? 0))
  const { diameterMm } = THREADS[thread]
  if (wideMm < diameterMm) return null
  return (
    `No thread to bite in: the bore is ${mm(wideMm)} mm wide, an ${thread} screw cuts into less than ` +
    `${mm(diameterMm)} mm. Where a threaded post fills the gap, join them by a post: it takes a ` +
    'screw at each end.'
  )
}

function tooShallow(
  columns: readonly Column[],
  thread: JointFastener['thread'],
  nearestMm: number | null,
  { leastMm, gripMm }: StackAnswer,
): string | null {
  const biteMm = hundredths(leastMm - gripMm)
  const haveMm = Math.min(
    nearestMm ?? Infinity,
    ...columns.map(({ bitten }) => (bitten === null ? Infinity : hundredths(bitten.mark.depthMm))),
  )
  if (haveMm >= biteMm) return null
  return (
    `Bore too shallow to hold: an ${thread} screw wants ${mm(biteMm)} mm to bite in, ` +
    `it has ${mm(haveMm)} mm.`
  )
}

function stackEnd(
  { thread, end }: JointFastener,
  depthMm: number | null,
  insertMm: number | null,
  print: InsertPrint | undefined,
  bought: BodyKind | undefined,
): StackEnd {
  if (end === 'tapped' && bought !== undefined && depthMm !== null) {
    return { kind: bought === 'motor' ? 'motor' : 'post', depthMm }
  }
  if (end === 'insert') {
    return {
      kind: 'insert',
      insertMm: insertMm ?? INSERTS[thread].lengthMm,
      bossMm: null,
      holeDepthMm: depthMm,
      ...(print === undefined ? {} : { print }),
    }
  }
  if (end === 'tapped') return { kind: 'plastic', bossMm: null, holeDepthMm: depthMm }
  if (end === 'post') return { kind: 'post', depthMm: depthMm ?? 0 }
  return { kind: 'nut', standard: nutStandardOf(thread) }
}
