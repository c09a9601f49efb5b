import { boresOf } from '../core/joints/boresOf.ts'
import { boxInMm } from '../core/mesh/boxOfMesh.ts'
import { partMoments } from '../core/aircraft/balance/partMoments.ts'
import { shownMesh } from '../core/mesh/outwardMesh.ts'
import { originOf, placeMesh } from '../core/mesh/pose.ts'
import { poseOptions, type PoseOption } from '../core/mesh/poseOptions.ts'
import type { Outcome } from '../core/model/problem.ts'
import { plateOutline } from '../core/aircraft/twin/outline.ts'
import { POSE_AS_DRAWN } from '../core/model/settings.ts'
import { unitToMm } from '../core/model/units.ts'
import { analyse } from './analyse.ts'
import { askName } from './askName.ts'
import { packEntries, unpackEntries } from './archive.ts'
import { drawFrame } from './drawFrame.ts'
import { holesOf } from './holesOf.ts'
import { layRuns } from './layRuns.ts'
import { cutPart, lookAt } from './lookAt.ts'
import { createMeshShelf, readBytes, takingOf, type MeshShelf } from './meshShelf.ts'
import { clashesIn, offersOf } from './offersOf.ts'
import { openFile } from './openFile.ts'
import { problemOf } from './problemOf.ts'
import type { Answer, Ask, JobEvent } from './protocol.ts'
import type { MeshAsk, PartShape, PlacedMesh, ShapeAsk, PosesAsk } from './asks/partAsks.ts'
import { readToolpath } from './readToolpath.ts'
import { splitFile } from './splitFile.ts'
import { findSections, stiffen } from './stiffen.ts'
import { createWaySearch, type WaySearch } from './waysIn.ts'

/** Meshes kept for the drawing: a large frame's, at some 20 bytes a triangle. */
const DRAWN_PLACES = 100
const DRAWN_TRIANGLES = 4_000_000

/** Does one job. Never rejects. */
export type Handler = (ask: Ask, tell: (event: JobEvent) => void) => Promise<Outcome<Answer>>

/** Jobs that look at every mesh of a frame. */
const NEEDS_ALL: ReadonlySet<Ask['kind']> = new Set(['draw', 'runs', 'offers', 'clashes', 'holes'])

/**
 * What runs inside each worker, and right here in tests and in Node. Keeps the meshes it read last;
 * `now` tells ms.
 */
export function createHandler(now: () => number = () => performance.now()): Handler {
  const shelf = createMeshShelf()
  // Every view and every look for joints needs all of them, so they are kept apart from those that
  // are counted.
  const drawn = createMeshShelf(DRAWN_PLACES, DRAWN_TRIANGLES)
  const search = createWaySearch()
  return async (ask, tell) => {
    try {
      return {
        ok: true,
        value: await answerTo(ask, NEEDS_ALL.has(ask.kind) ? drawn : shelf, search, tell, now),
      }
    } catch (error) {
      return { ok: false, problem: problemOf(error, askName(ask)) }
    }
  }
}

function answerTo(
  ask: Ask,
  shelf: MeshShelf,
  search: WaySearch,
  tell: (event: JobEvent) => void,
  now: () => number,
): Promise<Answer> {
  switch (ask.kind) {
    case 'open':
      return openFile(ask, shelf)
    case 'analyse':
      return analyse(ask, shelf, tell, now)
    case 'mesh':
      return place(ask, shelf)
    case 'shape':
      return measureShape(ask, shelf)
    case 'draw':
      return drawFrame(ask, shelf)
    case 'offers':
      return offersOf(ask, shelf)
    case 'clashes':
      return clashesIn(ask, shelf)
    case 'ways':
      return search.ways(ask)
    case 'repeats':
      return search.repeats(ask)
    case 'holes':
      return holesOf(ask, shelf)
    case 'look':
      return lookAt(ask, shelf)
    case 'runs':
      return layRuns(ask, shelf)
    case 'cut':
      return cutPart(ask, shelf)
    case 'stiff':
      return stiffen(ask, shelf, tell)
    case 'sections':
      return findSections(ask, shelf)
    case 'split':
      return splitFile(ask, shelf)
    case 'poses':
      return findPoses(ask, shelf)
    case 'toolpath':
      return readToolpath(ask, shelf, tell)
    case 'pack':
      return packEntries(ask.entries)
    case 'unpack':
      return unpack(ask)
  }
}

async function place({ source, unit, pose }: MeshAsk, shelf: MeshShelf): Promise<PlacedMesh> {
  const { mesh } = await shelf.read(source)
  const shown = shownMesh(mesh, takingOf(source, unit))
  const { positions, indices } = placeMesh(shown, unitToMm(unit), pose)
  // The answer is handed over for good, so it must not share memory with the mesh on the shelf.
  return {
    positions: positions === mesh.positions ? positions.slice() : positions,
    indices: indices === mesh.indices ? indices.slice() : indices,
    originMm: originOf(shown, { positions, indices }, unitToMm(unit), pose),
  }
}

async function measureShape(
  { source, unit, pose }: ShapeAsk,
  shelf: MeshShelf,
): Promise<PartShape> {
  const outward = shelf.outward(await shelf.read(source), takingOf(source, unit))
  const mm = unitToMm(unit)
  return {
    moments: partMoments(outward, mm),
    bores: boresOf(outward, mm),
    boxMm: boxInMm(outward, mm),
    outline: plateOutline(placeMesh(outward, mm, pose)),
  }
}

async function findPoses(
  { source, unit, supportAngleDeg }: PosesAsk,
  shelf: MeshShelf,
): Promise<readonly PoseOption[]> {
  const read = await shelf.read(source)
  const mesh = placeMesh(shelf.outward(read, takingOf(source, unit)), unitToMm(unit), POSE_AS_DRAWN)
  return poseOptions(mesh, supportAngleDeg)
}

async function unpack({
  blob,
}: Extract<Ask, { kind: 'unpack' }>): ReturnType<typeof unpackEntries> {
  const name = 'project file'
  return unpackEntries(await readBytes(blob, name), name)
}
