import { nearestMiss } from '../../core/joints/nearestMiss.ts'
import type { Repeat } from '../../core/joints/repeatWay.ts'
import type { Way } from '../../core/joints/waysFor.ts'
import { showLength } from '../show.ts'
import { formatNumber } from '../../core/words/format.ts'
import { meetingWords, screwSaid, sideWords } from './jointWords.ts'
import { bodyIn, labelOf, pieceName } from './pieces.ts'
import type { Assembling, ShownWay } from './useAssembling.ts'

type Parts = Parameters<typeof pieceName>[0]

/** How many pieces are loose. */
export function looseCount({ kinds }: Assembling): string {
  const count = kinds.reduce((sum, { pieces }) => sum + pieces.length, 0)
  return `${count} ${count === 1 ? 'piece' : 'pieces'}`
}

/** What stands above the cards: whose ways they are, or why there are none. */
export function offersHead({ offers, isLooking, kind, ways }: Assembling, parts: Parts): string {
  if (kind === null) return 'Nothing is loose'
  const name = pieceName(parts, kind.pieces[0] ?? { partId: '', piece: 0 })
  if (isLooking) return `${name}: looking at every hole…`
  if (offers.kind === 'failed') return `${name}: the meshes could not be looked at`
  if (ways.length === 0) return `${name}: no two holes and no equal face meet; join it by hand`
  return `${name}: ${ways.length} ${ways.length === 1 ? 'way' : 'ways'} it fits`
}

/**
 * Where nothing fits: the holes that come nearest, and by how much they miss; null where none do.
 */
export function missWords(
  { offers, isLooking, kind, ways, standing }: Assembling,
  parts: Parts,
): string | null {
  if (offers.kind !== 'found' || isLooking || kind === null || ways.length > 0) return null
  const { shapes } = offers
  const loose = shapes[kind.part.id]
  if (loose === undefined) return null
  const miss = nearestMiss(
    loose,
    standing.flatMap(({ partId }) => {
      const part = shapes[partId]
      return part === undefined ? [] : [{ partId, part }]
    }),
  )
  if (miss === null) return null
  const { partId, holes, diameterMm, apartMm, otherMm, offMm } = miss
  const name = parts.find(({ id }) => id === partId)?.name ?? ''
  return (
    `Nearest: ${holes} holes of ${showLength(diameterMm, 1)}, ${showLength(apartMm, 2)} apart here and ` +
    `${showLength(otherMm, 2)} on ${name}: ${showLength(offMm, 2)} off.`
  )
}

/** One way a piece fits, as the sentence that is read out. */
export function wayWords(
  parts: Parts,
  way: Way,
  at: number,
  { ways }: Assembling,
  repeat: Repeat | undefined,
): string {
  const { joint, also } = way
  const more =
    also.length > 0
      ? `, and at once on ${also.map(({ a }) => pieceName(parts, a)).join(' and ')}`
      : ''
  const again = repeat === undefined || repeat.kind === 'once' ? '' : `, ${repeatWords(repeat)}`
  return (
    `${pieceName(parts, joint.b)} on ${pieceName(parts, joint.a)}, ${sideWords(way)}, ` +
    `${meetingWords(joint)}, ` +
    `${screwSaid(joint, (id) => bodyIn(parts, id))}${more}${again}, offer ${at + 1} of ${ways.length}`
  )
}

/** What a piece at that place runs into, or nothing. */
export function clashWords(
  parts: Parts,
  clashes: ShownWay['clashes'],
  { standing }: Assembling,
): string {
  return clashes
    .map(({ at, mm3 }) => {
      const stands = standing[at]
      const number = stands === undefined ? '–' : labelOf(parts, stands)
      return `runs into ${number} by ${formatNumber(mm3, undefined, 0)} mm³`
    })
    .join(', ')
}

/** How often a way is taken, and what is short for it. */
export function repeatWords({ kind, wanted, placed, missing }: Repeat): string {
  const lacks = wanted - placed.length
  const short =
    missing === null ? '' : `, ${lacks} without ${missing === 'holes' ? 'holes' : 'a piece'}`
  if (kind === 'once') return 'once'
  if (kind === 'mirror') return `mirrored${short}`
  if (kind === 'all') return `all ${wanted} that are left`
  return wanted === 2 ? `opposite too${short}` : `ring of ${wanted}${short}`
}
