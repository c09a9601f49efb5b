import type { Shared } from '../../joints/clashes.ts'
import {
  CLASH_MM3,
  clashesAmong,
  clashPairs,
  type PieceClash,
  type PiecePair,
} from '../../joints/frameClashes.ts'
import { framePlaces } from '../../joints/framePlaces.ts'
import { itemPieces, sweptOf } from '../../joints/itemPieces.ts'
import { pieceKey } from '../../joints/placePieces.ts'
import { standingPieces, type StandingPiece } from '../../joints/standingPieces.ts'
import { boredPrism, roundOf, type PrismFace } from '../../mesh/boredPrism.ts'
import { flatAxes } from '../../mesh/holes/fitCircle.ts'
import { mapAxes, type RigidMap } from '../../mesh/rigidMaps.ts'
import type { Aircraft } from '../../model/aircraft.ts'
import type { Part } from '../../model/frame.ts'
import type { Mesh, Vec3 } from '../../model/mesh.ts'
import { lengthOf, minus, unit } from '../../model/vectors.ts'
import { frameHardware } from '../hardware/jointItems.ts'
import { screwSpaces, type FastenerSpace } from '../hardware/screwSpaces.ts'
import { jointWords, nameOf, pieceWords, spaceWords } from './pieceWords.ts'
import { volumeWords } from './volumeWords.ts'

/**
 * What of a frame has to be held beside each other: pieces that stand, then heads, nuts and ends of
 * screws.
 */
export interface ClashAsk {
  readonly standing: readonly StandingPiece[]
  readonly spaces: readonly FastenerSpace[]
  /** Places in both lists, one after the other. */
  readonly pairs: readonly PiecePair[]
}

/** Things that run into each other; those of one part that do so alike are told together. */
export interface ClashFinding {
  readonly code: 'clash' | 'squeeze' | 'head'
  /** What runs into each other: names of parts and bought things, or of a joint. */
  readonly a: string
  readonly b: string
  /** How often. */
  readonly count: number
  /** Of each. */
  readonly volumeMm3: number
  /** The middle of what is shared, of each, in the frame's axes. mm */
  readonly atMm: readonly Vec3[]
  /** One sentence in metric and in English numbers, see `toldWords`. */
  readonly message: string
}

type Parts = readonly Part[]

export function clashAsk(parts: Parts, aircraft: Aircraft): ClashAsk {
  const items = itemPieces(aircraft.items)
  const placed = framePlaces(parts, aircraft)
  const standing = standingPieces([...parts, ...items], placed)
  const swept = sweptOf(items)
  const spaces = screwSpaces(frameHardware({ parts, aircraft }), placed.motions)
  const bought = new Set(items.map(({ id }) => id))
  const ends = spaces.flatMap((space, k) =>
    standing.flatMap((piece, i): readonly PiecePair[] => {
      // Bodies of what is bought are told by themselves; an end that stands out of its own part
      // stands nowhere.
      if (bought.has(piece.partId)) return []
      if (space.kind !== 'head' && space.own.has(pieceKey(piece))) return []
      return [[standing.length + k, i]]
    }),
  )
  const pairs = [...clashPairs(standing, aircraft.joints, (partId) => swept.has(partId)), ...ends]
  return { standing, spaces, pairs }
}

/** The solid of a head, a nut or an end, in axes of its own, and where it goes. */
export function spaceSolid({ fromMm, toMm, radiusMm }: FastenerSpace): {
  readonly mesh: Mesh
  readonly motion: RigidMap
} {
  const along = minus(toMm, fromMm)
  const way = unit(along)
  const { right, up } = flatAxes(way)
  const outline = roundOf({ at: [0, 0], radiusMm })
  const face: PrismFace = { cells: [{ corners: outline, hole: null }], depthMm: null }
  return {
    mesh: boredPrism(outline, lengthOf(along), face, face),
    motion: mapAxes(
      [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
      [right, up, way],
      [0, 0, 0],
      fromMm,
    ),
  }
}

/** @param shared by each pair, see `clashesOf`. */
export function clashFindings(
  { standing, spaces, pairs }: ClashAsk,
  shared: readonly Shared[],
  parts: Parts,
  aircraft: Aircraft,
): readonly ClashFinding[] {
  const named = [...parts, ...itemPieces(aircraft.items)]
  const soft = new Set(parts.flatMap(({ id, role }) => (role === 'soft' ? [id] : [])))
  const groups = new Map<string, PieceClash[]>()
  for (const clash of clashesAmong(standing, pairs, shared)) {
    const key = `${clash.a.partId} ${clash.b.partId}`
    groups.set(key, [...(groups.get(key) ?? []), clash])
  }
  const ofPieces = [...groups.values()].flatMap((all): readonly ClashFinding[] => {
    const [first] = all
    if (first === undefined) return []
    const words = (end: 'a' | 'b') => {
      const own = [...new Set(all.map((clash) => pieceWords(clash[end], named)))].toSorted()
      return own.map((name) => `“${name}”`).join(', ')
    }
    const { a, b, volumeMm3 } = first
    const isSoft = [a, b].find(({ partId }) => soft.has(partId))
    const each = all.length > 1 ? ' each' : ''
    const more =
      isSoft === undefined ? '' : ` “${nameOf(isSoft, named)}” is soft: it is squeezed by that.`
    return [
      {
        code: isSoft === undefined ? 'clash' : 'squeeze',
        a: nameOf(a, named),
        b: nameOf(b, named),
        count: all.length,
        volumeMm3,
        atMm: all.map(({ atMm }) => atMm),
        message: `${words('a')} and ${words('b')} run into each other by ${volumeWords(volumeMm3)}${each}.${more}`,
      },
    ]
  })
  return [...ofPieces, ...headsIn({ standing, spaces, pairs }, shared, named)]
}

/** Joint by joint and part by part. */
function headsIn(
  { standing, spaces, pairs }: ClashAsk,
  shared: readonly Shared[],
  named: Parameters<typeof nameOf>[1],
): readonly ClashFinding[] {
  const found = new Map<
    string,
    ClashFinding & { readonly where: string; readonly kind: FastenerSpace['kind'] }
  >()
  pairs.forEach(([one, other], i) => {
    const [space, piece] = [spaces[one - standing.length], standing[other]]
    const own = shared[i]
    if (space === undefined || piece === undefined || own === undefined) return
    const { volumeMm3, atMm } = own
    if (volumeMm3 <= CLASH_MM3) return
    const where = jointWords(space.joint, named)
    const key = [where, space.kind, piece.partId].join(' ')
    const before = found.get(key)
    found.set(key, {
      code: 'head',
      a: where,
      b: nameOf(piece, named),
      where: pieceWords(piece, named),
      kind: space.kind,
      count: (before?.count ?? 0) + 1,
      volumeMm3: Math.max(volumeMm3, before?.volumeMm3 ?? 0),
      atMm: [...(before?.atMm ?? []), atMm],
      message: '',
    })
  })
  return [...found.values()].map(({ where, kind, ...each }): ClashFinding => {
    const { a, count, volumeMm3 } = each
    const who = spaceWords(kind, count)
    const stands = count === 1 ? 'stands' : 'stand'
    const by = `${volumeWords(volumeMm3)}${count === 1 ? '' : ' each'}`
    const message = `${a}: ${who} ${stands} in “${where}”, by ${by}.`
    return { ...each, message }
  })
}
