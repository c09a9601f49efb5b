import { LEAST_LINES } from '../data/drills.ts'
import { numberHoles } from '../mesh/holes/numberHoles.ts'
import { isOneAxis, offAxis } from '../mesh/holes/oneAxis.ts'
import { mapDirection, mapPoint } from '../mesh/rigidMaps.ts'
import { turnMatrix } from '../mesh/pose.ts'
import type { ChosenUse, HoleReading, HoleUse } from '../model/drill.ts'
import type { Range } from '../model/figures.ts'
import type { BoreMark, Joint } from '../model/joints.ts'
import { dot, lengthOf, minus } from '../model/vectors.ts'
import { guessUse } from './guessUse.ts'
import { holeLoss, shrunkMm, type HoleLoss } from './holeLoss.ts'
import { jointUses, type JointUse } from './jointUses.ts'
import type { DrillPart, DrillRow, UseKnown, WalledHole } from './types.ts'
import { drillTold, drillNotes } from './drillNotes.ts'
import { drillFor, wantedSize } from './wantedSize.ts'

/** Two that lie this near are one hole. mm */
const SAME_MM = 0.05

/**
 * Every hole of every piece: what it is for, what the print gives of it, and the drill to fetch.
 */
export function drillList(
  parts: readonly DrillPart[],
  joints: readonly Joint[],
  printerId: string,
  readings: readonly HoleReading[],
): readonly DrillRow[] {
  const necks = new Map(parts.map(({ part, found }) => [part.id, found.necks]))
  const flying = new Map(parts.map(({ part }) => [part.id, part.quantity]))
  const sound = joints.filter(({ a, b }) =>
    [a, b].every(({ partId, piece }) => piece < (flying.get(partId) ?? 0)),
  )
  const told = jointUses(sound, (partId) => necks.get(partId) ?? [])
  return parts.flatMap((one) => {
    const loss = holeLoss(one.material, printerId, readings)
    const turn = { matrix: turnMatrix(one.part.pose), move: [0, 0, 0] } as const
    const numbered = numberHoles(one.found.holes, ({ axis, centreMm }) => ({
      axis: mapDirection(turn, axis),
      centreMm: mapPoint(turn, centreMm),
    }))
    return numbered.flatMap(({ group, lies, holes }) =>
      holes.map(({ number, hole }): DrillRow => {
        const { use, known, also } = useFor(one, hole, told)
        return { ...rowOf(one, hole, lies, use, known, also, loss), number, group }
      }),
    )
  })
}

interface KnownUse {
  readonly use: HoleUse
  readonly known: UseKnown
  /** What other pieces of the part have it for. */
  readonly also: readonly HoleUse[]
}

/** A choice goes before a joint, a joint before a guess. */
function useFor({ part }: DrillPart, hole: WalledHole, told: readonly JointUse[]): KnownUse {
  const chosen = part.holeUses?.find((each) => isChoiceOf(each, hole))
  if (chosen !== undefined) return { use: chosen.use, known: 'chosen', also: [] }
  const own = told.filter(({ partId, bore }) => partId === part.id && isIn(bore, hole))
  const uses = [...new Map(own.map(({ use }) => [JSON.stringify(use), use])).values()]
  const [use, ...also] = uses
  if (use !== undefined) return { use, known: 'joint', also }
  return { use: guessUse(hole), known: 'guess', also: [] }
}

/** Whether a bore is the hole, or one of the steps of it. */
function isIn({ axis, centreMm }: BoreMark, hole: WalledHole): boolean {
  if (!isOneAxis(axis, hole.axis)) return false
  const between = minus(centreMm, hole.centreMm)
  const deepMm = hole.seats.reduce((sum, { depthMm }) => sum + depthMm, hole.depthMm / 2)
  return (
    Math.abs(dot(between, hole.axis)) <= deepMm + SAME_MM && offAxis(between, hole.axis) <= SAME_MM
  )
}

/** Whether something was chosen for this very hole. */
function isChoiceOf({ centreMm, diameterMm }: ChosenUse, hole: WalledHole): boolean {
  return (
    lengthOf(minus(centreMm, hole.centreMm)) <= SAME_MM &&
    Math.abs(diameterMm - hole.diameterMm) <= SAME_MM
  )
}

function rowOf(
  { part, material }: DrillPart,
  hole: WalledHole,
  lies: DrillRow['lies'],
  use: HoleUse,
  known: UseKnown,
  also: readonly HoleUse[],
  loss: HoleLoss,
): Omit<DrillRow, 'number' | 'group'> {
  const bore = boreFor(use, hole)
  const { diameterMm, depthMm } = bore
  const comesOutMm = comesOut(shrunkMm(bore.clearMm, material.shrinkagePct.value), loss.of(lies))
  const wanted = wantedSize(use, diameterMm)
  const needs = wanted.mm !== null && comesOutMm.low < wanted.mm - 0.005
  const drillMm = needs && wanted.mm !== null && hole.shape === 'round' ? drillFor(wanted.mm) : null
  const finalMm = Math.max(drillMm ?? 0, comesOutMm.mid)
  const leftMm = Math.max(0, hole.wallMm + (hole.diameterMm - finalMm) / 2)
  const leftLines = leftMm / part.recipe.lineMm
  const stands = leftLines >= LEAST_LINES
  const reckoned = {
    use,
    known,
    wanted,
    hole,
    diameterMm,
    depthMm,
    recipe: part.recipe,
    comesOutMm,
    needs,
    drillMm,
    finalMm,
    leftMm,
    lossMm: loss.of(lies).mid,
    isShared: also.length > 0,
  }
  return {
    partId: part.id,
    part: part.name,
    hole,
    diameterMm,
    depthMm,
    lies,
    use,
    known,
    comesOutMm,
    wantedMm: wanted.mm,
    drillMm,
    leftMm,
    leftLines,
    stands,
    told: drillTold(reckoned),
    notes: drillNotes(reckoned),
  }
}

/** An insert sits in the wide mouth of a stepped bore where that is nearer to its size. */
function boreFor(
  use: HoleUse,
  hole: WalledHole,
): Pick<WalledHole, 'diameterMm' | 'clearMm' | 'depthMm'> {
  if (use.kind !== 'insert') return hole
  const wantedMm = wantedSize(use, hole.diameterMm).mm ?? 0
  const off = ({ diameterMm }: { readonly diameterMm: number }): number =>
    Math.abs(diameterMm - wantedMm)
  const mouths = hole.seats.filter(({ kind }) => kind === 'counterbore')
  return mouths.reduce<Pick<WalledHole, 'diameterMm' | 'clearMm' | 'depthMm'>>(
    (best, mouth) => (off(mouth) < off(best) ? mouth : best),
    hole,
  )
}

function comesOut(flatsMm: number, { low, mid, high }: Range): Range {
  return {
    low: Math.max(0, flatsMm - high),
    mid: Math.max(0, flatsMm - mid),
    high: Math.max(0, flatsMm - low),
  }
}
