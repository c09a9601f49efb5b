import { framePlaces } from '../../joints/framePlaces.ts'
import { itemPieces } from '../../joints/itemPieces.ts'
import { pieceKey, type PlacedPieces } from '../../joints/placePieces.ts'
import { TEXT_LIMITS } from '../../data/limits.ts'
import { hardwarePriceIn } from '../../data/prices.ts'
import { mapPoint } from '../../mesh/rigidMaps.ts'
import type { Aircraft, Item, ItemBody } from '../../model/aircraft.ts'
import type { Frame } from '../../model/frame.ts'
import { JOINT_THREADS, type Joint } from '../../model/joints.ts'
import type { Vec3 } from '../../model/mesh.ts'
import { plus, times } from '../../model/vectors.ts'
import { catalogueEntry, catalogueItem, type CatalogueChoice } from './catalogue.ts'
import { insertPrint } from './insertPrint.ts'
import { jointHardware, type JointHardware, type Site } from './jointHardware.ts'
import type { InsertPrint } from './stack.ts'

/** What of a frame its screws follow from. */
export type BoltedFrame = Pick<Frame, 'parts' | 'aircraft' | 'prices'>

interface Known {
  readonly placed: PlacedPieces
  readonly currency: string
  readonly made: Aircraft
}

const known = new WeakMap<Aircraft, Known>()

/**
 * The aircraft with all that is bought: the items as typed, then the screws, nuts, inserts, washers
 * and posts of its joints, one line each thing. The one list: ledger, balance, page, files and
 * command read it. The same object while nothing it rests on has changed; the aircraft itself where
 * joints add nothing. Never kept.
 */
export function withJointItems({ parts, aircraft, prices }: BoltedFrame): Aircraft {
  if (aircraft.joints.every(({ fastener }) => fastener === null)) return aircraft
  // The same object while parts are as many and where they were; how they are printed only warns.
  const placed = framePlaces(parts, aircraft)
  const { currency } = prices
  const before = known.get(aircraft)
  if (before?.placed === placed && before.currency === currency) return before.made
  const hardware = jointHardware(flyingJoints(parts, aircraft), undefined, bodiesOf(aircraft))
  const lines = jointItems(hardware, placed, currency)
  const made = { ...aircraft, items: [...aircraft.items, ...lines] }
  known.set(aircraft, { placed, currency, made })
  return made
}

/**
 * What each joint takes whose pieces both fly, in the order of the frame, and what is wrong with
 * it.
 */
export function frameHardware({ parts, aircraft }: Pick<Frame, 'parts' | 'aircraft'>) {
  const joints = flyingJoints(parts, aircraft)
  const prints = new Map(parts.map((part) => [part.id, insertPrint(part)]))
  const printOf = (partId: string): InsertPrint | undefined => prints.get(partId)
  const hardware = jointHardware(joints, printOf, bodiesOf(aircraft))
  return joints.map((joint, i): JointHardware & { readonly joint: Joint } => ({
    joint,
    told: hardware[i]?.told ?? NOTHING,
    bought: hardware[i]?.bought ?? [],
    columns: hardware[i]?.columns ?? [],
    chosen: hardware[i]?.chosen ?? null,
  }))
}

const NOTHING = { jointId: '', holes: 0, gripMm: 0, screw: null, count: 0, warnings: [] }

/** What a bought thing is to the screws that end in it; undefined of one without a body. */
function bodiesOf({ items }: Pick<Aircraft, 'items'>) {
  const bodies = new Map(items.map(({ id, body }) => [id, body]))
  return (itemId: string): ItemBody | undefined => bodies.get(itemId)
}

function flyingJoints(
  parts: Frame['parts'],
  { joints, items }: Pick<Aircraft, 'joints' | 'items'>,
): readonly Joint[] {
  const pieces = new Map([...parts, ...itemPieces(items)].map(({ id, quantity }) => [id, quantity]))
  return joints.filter(({ a, b }) =>
    [a, b].every(({ partId, piece }) => piece < (pieces.get(partId) ?? 0)),
  )
}

function jointItems(
  hardware: readonly JointHardware[],
  { motions }: PlacedPieces,
  currency: string,
): readonly Item[] {
  const lines = new Map<string, { readonly choice: CatalogueChoice; readonly sites: Site[] }>()
  for (const { choice, sites } of hardware.flatMap(({ bought }) => bought)) {
    const { name } = catalogueEntry(choice)
    const line = lines.get(name)
    if (line === undefined) lines.set(name, { choice, sites: [...sites] })
    else line.sites.push(...sites)
  }
  const inFrame = ({ at, pointMm }: Site): readonly Vec3[] => {
    const motion = motions.get(pieceKey(at))
    return motion === undefined ? [] : [mapPoint(motion, pointMm)]
  }
  return [...lines]
    .toSorted(([, one], [, other]) => rankOf(one.choice) - rankOf(other.choice))
    .map(([name, { choice, sites }]): Item => {
      const item = catalogueItem(choice, {
        id: `joints ${name}`.slice(0, TEXT_LIMITS.id),
        quantity: sites.length,
        costEach: choice.kind === 'tube' ? 0 : hardwarePriceIn(choice.kind, currency),
      })
      const sitesMm = sites.flatMap(inFrame)
      return { ...item, positionMm: middleOf(sitesMm), sitesMm }
    })
}

const KINDS: readonly CatalogueChoice['kind'][] = ['screw', 'nut', 'washer', 'insert', 'standoff']

/** Screws first, the thickest and then the shortest of them. */
function rankOf(choice: CatalogueChoice): number {
  if (choice.kind === 'tube') return Infinity
  const lengthMm = 'lengthMm' in choice ? choice.lengthMm : 0
  return (
    1e6 * KINDS.indexOf(choice.kind) + 1e4 * (9 - JOINT_THREADS.indexOf(choice.size)) + lengthMm
  )
}

function middleOf(points: readonly Vec3[]): Vec3 | null {
  return points.length === 0 ? null : times(points.reduce(plus), 1 / points.length)
}
