import {
  clashAsk,
  clashFindings,
  spaceSolid,
  type ClashFinding,
} from '../core/aircraft/report/clashFindings.ts'
import { clashesOf, type LaidSolid } from '../core/joints/clashes.ts'
import { itemMesh } from '../core/joints/itemMesh.ts'
import { bodiedItems } from '../core/joints/itemPieces.ts'
import { inMm } from '../core/mesh/inMm.ts'
import type { Frame } from '../core/model/frame.ts'
import type { Mesh } from '../core/model/mesh.ts'
import type { BedPart } from './frameRuns.ts'

const NONE: Mesh = { positions: new Float64Array(), indices: new Uint32Array() }

/**
 * What of a frame runs into each other where it is put together; of parts that could not be read,
 * nothing.
 */
export function clashReports(
  counted: readonly Pick<BedPart, 'part' | 'outward'>[],
  { parts, aircraft }: Pick<Frame, 'parts' | 'aircraft'>,
): readonly ClashFinding[] {
  const ask = clashAsk(parts, aircraft)
  const meshes = new Map<string, Mesh>([
    ...counted.map(({ part, outward }) => [part.id, inMm(outward, part.unit)] as const),
    ...bodiedItems(aircraft.items).map(({ id, body }) => [id, itemMesh(body)] as const),
  ])
  const solids = [
    ...ask.standing.map(({ partId, motion }): LaidSolid => ({
      mesh: meshes.get(partId) ?? NONE,
      motion,
    })),
    ...ask.spaces.map(spaceSolid),
  ]
  return clashFindings(ask, clashesOf(solids, ask.pairs), parts, aircraft)
}
