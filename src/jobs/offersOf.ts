import { clashesOf } from '../core/joints/clashes.ts'
import type { JoinablePart } from '../core/joints/equalPatterns.ts'
import { keepShapes, offerJoints, type MeetingPart } from '../core/joints/offerJoints.ts'
import type { Shape } from '../core/joints/shapeOf.ts'
import type { LengthUnit, Mesh } from '../core/model/mesh.ts'
import { meshInMm } from './meshInMm.ts'
import type { MeshShelf } from './meshShelf.ts'
import type { ClashesAnswer, ClashesAsk, OffersAnswer, OffersAsk } from './asks/frameAsks.ts'
import type { MeshSource } from './asks/fileAsks.ts'

/**
 * Looks for joints among the parts of a frame; a part whose mesh cannot be read is told and left
 * out.
 */
export async function offersOf({ parts }: OffersAsk, shelf: MeshShelf): Promise<OffersAnswer> {
  const left: string[] = []
  const meeting: MeetingPart[] = []
  const meshFor = createMeshes(shelf)
  for (const { partId, source, unit, pieces, mirrored, body } of parts) {
    try {
      const mesh = await meshFor(source, unit)
      meeting.push({ partId, mesh, pieces, mirrored, ...(body === undefined ? {} : { body }) })
    } catch {
      left.push(partId)
    }
  }
  const shapeFor = keepShapes()
  const offers = offerJoints(meeting, shapeFor)
  const shapes = Object.fromEntries(
    meeting.map(({ partId, mesh }) => [partId, joinable(shapeFor(mesh))]),
  )
  return { offers, shapes, left }
}

/** How much of pieces is in each other; of one whose mesh cannot be read, nothing. */
export async function clashesIn(
  { pieces, pairs }: ClashesAsk,
  shelf: MeshShelf,
): Promise<ClashesAnswer> {
  const meshFor = createMeshes(shelf)
  const none: Mesh = { positions: new Float64Array(), indices: new Uint32Array() }
  const solids = []
  for (const { source, unit, motion } of pieces) {
    solids.push({ mesh: await meshFor(source, unit).catch(() => none), motion })
  }
  return { shared: clashesOf(solids, pairs) }
}

function joinable({ mouths, faces, centreMm, moments }: Shape): JoinablePart {
  return { mouths, faces, centresMm: [centreMm, moments.centreMm, [0, 0, 0]] }
}

/** Rows of one file share what is found on it. */
function createMeshes(shelf: MeshShelf) {
  const kept = new Map<string, Mesh>()
  return async (source: MeshSource, unit: LengthUnit): Promise<Mesh> => {
    const key = `${source.hash} ${unit} ${source.keepsHairs === true}`
    const known = kept.get(key)
    if (known !== undefined) return known
    const mesh = await meshInMm(source, unit, shelf)
    kept.set(key, mesh)
    return mesh
  }
}
