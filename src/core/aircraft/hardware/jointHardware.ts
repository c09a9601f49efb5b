import { mapPoint } from '../../mesh/rigidMaps.ts'
import { jointMotion } from '../../joints/jointMotion.ts'
import type { ItemBody } from '../../model/aircraft.ts'
import type { Joint, JointEnd, JointFastener } from '../../model/joints.ts'
import type { Vec3 } from '../../model/mesh.ts'
import { plus, times } from '../../model/vectors.ts'
import type { CatalogueChoice } from './catalogue.ts'
import { chooseScrew, nutStandardOf, type ChosenScrew } from './chooseScrew.ts'
import { addedBy, columnsOf, hundredths, meeting, type Column, type Hole } from './screwColumn.ts'
import type { InsertPrint } from './stack.ts'

/** What is bought to hold one joint. */
export interface JointScrews {
  readonly jointId: string
  /** Bores of a that meet a bore of b. */
  readonly holes: number
  /**
   * From under the head to where the screw bites, the longest of its holes; of a joint that ends no
   * screw, what it adds to one. mm
   */
  readonly gripMm: number
  /**
   * `M3 × 16`: shortest stocked ISO 4762 that does for every hole. Null where none fits, or where
   * no screw ends.
   */
  readonly screw: string | null
  /** Screws that end here, whether a stocked one fits or not: one a hole, two a post. */
  readonly count: number
  /** What is wrong, each in a sentence. */
  readonly warnings: readonly string[]
}

/** A point of a piece, in its part's own axes. mm */
export interface Site {
  readonly at: Pick<JointEnd, 'partId' | 'piece'>
  readonly pointMm: Vec3
}

/** Some of one thing out of the catalogue, and where each sits, to within half a screw's length. */
export interface Fixing {
  readonly choice: CatalogueChoice
  readonly sites: readonly Site[]
}

export interface JointHardware {
  readonly told: JointScrews
  /** The way of each screw that ends here; none where none does. */
  readonly columns: readonly Column[]
  readonly chosen: ChosenScrew | null
  /** Without screws where no stocked one fits, which `told` warns of. */
  readonly bought: readonly Fixing[]
}

/**
 * What each joint takes, in the order given. A bore of a `through` joint hands its screw on to the
 * joint that shares a bore with it and ends the screw, which counts it. A head let into its part is
 * not seen, nor what fills a gap that no post stands in: both are taken as clamped. All is steel
 * but inserts of brass and posts of aluminium.
 *
 * @param printOf how a part is printed, for inserts in it; undefined where nobody said.
 * @param bodyOf of a bought thing that joints hold; undefined of printed parts.
 */
export function jointHardware(
  joints: readonly Joint[],
  printOf: (partId: string) => InsertPrint | undefined = () => undefined,
  bodyOf: (itemId: string) => ItemBody | undefined = () => undefined,
): readonly JointHardware[] {
  const holesOf = new Map(joints.map((joint) => [joint, meeting(joint)]))
  const handing = [...holesOf.values()].flat().filter(({ joint }) => isThrough(joint.fastener))
  const handedOn = new Set<Hole>()
  const ended = new Map<Joint, readonly Column[]>()
  for (const [joint, holes] of holesOf) {
    const { fastener } = joint
    if (fastener === null || isThrough(fastener)) continue
    ended.set(
      joint,
      holes.flatMap((hole) => columnsOf(hole, fastener, handing, handedOn)),
    )
  }
  return joints.map((joint): JointHardware => {
    const holes = holesOf.get(joint) ?? []
    const columns = ended.get(joint) ?? []
    const { id: jointId, fastener } = joint
    const [first] = columns
    if (first !== undefined && fastener !== null) {
      const bitten = first.bitten?.at.partId ?? ''
      const chosen = chooseScrew(columns, fastener, printOf(bitten), bodyOf(bitten)?.kind)
      const { gripMm, lengthMm, warnings } = chosen
      const screw = lengthMm === null ? null : `${fastener.thread} × ${lengthMm}`
      return {
        told: { jointId, holes: holes.length, gripMm, screw, count: columns.length, warnings },
        bought: fixings(columns, fastener, chosen),
        columns,
        chosen,
      }
    }
    const gripMm = hundredths(Math.max(0, ...holes.map(({ a, b }) => addedBy(joint, a, b))))
    const warnings = endless(fastener, holes, handedOn)
    return {
      told: { jointId, holes: holes.length, gripMm, screw: null, count: 0, warnings },
      bought: [],
      columns: [],
      chosen: null,
    }
  })
}

/** The screws of each joint, in the order given. */
export function screwsOf(
  joints: readonly Joint[],
  printOf?: (partId: string) => InsertPrint | undefined,
  bodyOf?: (itemId: string) => ItemBody | undefined,
): readonly JointScrews[] {
  return jointHardware(joints, printOf, bodyOf).map(({ told }) => told)
}

function isThrough(fastener: JointFastener | null): boolean {
  return fastener?.end === 'through'
}

function fixings(
  columns: readonly Column[],
  { thread: size, end }: JointFastener,
  { lengthMm, washers, insertMm }: ChosenScrew,
): readonly Fixing[] {
  const bought: Fixing[] = []
  const steel = { size, material: 'steel' } as const
  const onWay = columns.map((column): Site => {
    return end === 'post'
      ? { at: column.last.at, pointMm: column.last.mark.centreMm }
      : middle(column.hole)
  })
  if (lengthMm !== null) {
    bought.push({
      choice: { kind: 'screw', standard: 'ISO 4762', lengthMm, ...steel },
      sites: onWay,
    })
    for (let n = 0; n < washers; n++) {
      bought.push({ choice: { kind: 'washer', ...steel }, sites: onWay })
    }
  }
  const under = (column: Column): Site => ({
    at: (column.bitten ?? column.last).at,
    pointMm: (column.bitten ?? column.last).mark.centreMm,
  })
  if (end === 'nut') {
    const choice = { kind: 'nut', standard: nutStandardOf(size), ...steel } as const
    bought.push({ choice, sites: columns.map(under) })
  }
  if (insertMm !== null) {
    const choice = { kind: 'insert', size, lengthMm: insertMm } as const
    bought.push({ choice, sites: columns.map(under) })
  }
  const posts = end === 'post' ? new Set(columns.map(({ hole }) => hole)) : []
  for (const hole of posts) {
    const { gapMm } = hole.joint
    if (!(gapMm > 0)) continue
    const post = { kind: 'standoff', shape: 'round', size, material: 'aluminium' } as const
    bought.push({ choice: { ...post, lengthMm: gapMm }, sites: [middle(hole)] })
  }
  return bought
}

/** Half-way between the middles of the two bores, in a's axes. */
function middle({ joint, a, b }: Hole): Site {
  const other = mapPoint(jointMotion(joint), b.mark.centreMm)
  return { at: a.at, pointMm: times(plus(a.mark.centreMm, other), 0.5) }
}

/** Why a fastener ends no screw. */
function endless(
  fastener: JointFastener | null,
  holes: readonly Hole[],
  handedOn: ReadonlySet<Hole>,
): readonly string[] {
  if (fastener === null) return []
  if (holes.length === 0) return ['No bores meet here, so no screw is counted.']
  const lost = holes.filter((hole) => !handedOn.has(hole)).length
  if (lost === 0) return []
  return [
    `${lost} of ${holes.length} screws end nowhere: no joint with an ${fastener.thread} nut, ` +
      'insert or thread shares the bore.',
  ]
}
