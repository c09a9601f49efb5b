import { writeStl } from '../../core/formats/writeStl.ts'
import { spaceSolid } from '../../core/aircraft/report/clashFindings.ts'
import type { FastenerSpace } from '../../core/aircraft/hardware/screwSpaces.ts'
import { itemMesh } from '../../core/joints/itemMesh.ts'
import type { RigidMap } from '../../core/mesh/rigidMaps.ts'
import type { ItemBody } from '../../core/model/aircraft.ts'
import type { Mesh } from '../../core/model/mesh.ts'
import { lengthOf, minus } from '../../core/model/vectors.ts'
import type { MeshSource } from '../../jobs/asks/fileAsks.ts'

/** Of bodies and screws drawn before, the sources that workers keep their meshes by. */
const known = new Map<string, MeshSource>()
/** More than these are of another frame. */
const MOST_KNOWN = 200

/** A body as the file that a worker would read of a printed part. */
export function bodySource({ kind, sizeMm, holes, shaftMm }: ItemBody): MeshSource {
  const body = { kind, sizeMm, holes, shaftMm }
  return sourceOf(`body ${JSON.stringify(body)}`, () => itemMesh(body))
}

/** The room of a head, a nut or a screw's end as such a file, and where it goes. */
export function spaceSource(space: FastenerSpace): {
  readonly source: MeshSource
  readonly motion: RigidMap
} {
  const longMm = lengthOf(minus(space.toMm, space.fromMm))
  const { mesh, motion } = spaceSolid(space)
  return {
    source: sourceOf(`screw ${longMm.toFixed(4)} ${space.radiusMm.toFixed(4)}`, () => mesh),
    motion,
  }
}

function sourceOf(key: string, meshOf: () => Mesh): MeshSource {
  const before = known.get(key)
  if (before !== undefined) return before
  if (known.size >= MOST_KNOWN) known.clear()
  // Its key serves as its hash: no file of the user's can have it.
  const made = { hash: key, name: 'body.stl', blob: new Blob([writeStl(meshOf())]) }
  known.set(key, made)
  return made
}
