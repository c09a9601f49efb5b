import { countLayers, type CountWatch } from './census/countLayers.ts'
import { carryFindings } from './formats/carryFindings.ts'
import { readMesh } from './formats/read.ts'
import { inspectMesh, type Inspection } from './mesh/inspect.ts'
import { outwardMesh, type MeshTaking } from './mesh/outwardMesh.ts'
import { takeApart, type Apart } from './mesh/takeApart.ts'
import type { Census } from './model/census.ts'
import type { LengthUnit, Mesh, ReadMesh } from './model/mesh.ts'
import type { GeometrySettings, Pose } from './model/settings.ts'
import { unitToMm } from './model/units.ts'

/** How a part's file is taken. */
export interface PartTaking {
  /** Of the file, for what is said of it. */
  readonly name: string
  readonly unit: LengthUnit
  /** Loose bodies thinner than a line stay in. */
  readonly keepsHairs: boolean
}

/** How a part is counted. */
export interface PartCount {
  readonly pose: Pose
  readonly geometry: GeometrySettings
}

/** See `outwardMesh`; `apart` where that is at hand. */
export type FaceMesh = (read: ReadMesh, taking: MeshTaking, apart?: Apart) => Mesh

/**
 * Faces meshes outwards, and remembers of each how it was faced last: looking and counting need the
 * same.
 */
export function createFacing(): FaceMesh {
  const known = new WeakMap<ReadMesh, { readonly taking: MeshTaking; readonly mesh: Mesh }>()
  return (read, taking, apart) => {
    const last = known.get(read)
    if (last && isSame(last.taking, taking)) return last.mesh
    const mesh = outwardMesh(read.mesh, taking, apart)
    known.set(read, { taking, mesh })
    return mesh
  }
}

/**
 * The first step behind reading: what the mesh is, whatever it is printed with. Throws
 * PreweighError.
 */
export function inspectPart(read: ReadMesh, part: PartTaking, face: FaceMesh): Inspection {
  return carryFindings(read, part.name, () => {
    const apart = takeApart(read.mesh)
    const outward = face(read, meshTaking(part), apart)
    return inspectMesh(read, outward, part.unit, apart, part.keepsHairs)
  })
}

/**
 * The second step: what its layers hold. Zones lie in the part's own place and unit. Throws
 * PreweighError as `countLayers` does.
 */
export function countPart(
  read: ReadMesh,
  zones: readonly ReadMesh[],
  part: PartTaking,
  { pose, geometry }: PartCount,
  face: FaceMesh,
  watch?: CountWatch,
): Census {
  const taking = meshTaking(part)
  const zoneMeshes = zones.map((zone) => face(zone, { ...taking, keepsHairs: true }))
  return carryFindings(read, part.name, () => {
    const meshes = { part: face(read, taking), zones: zoneMeshes }
    return countLayers(meshes, taking.scaleToMm, pose, geometry, watch)
  })
}

/** The bytes of a mesh file; `name` is for what is said of it. */
export interface NamedBytes {
  readonly name: string
  readonly bytes: Uint8Array
}

export interface WeighedPart {
  readonly read: ReadMesh
  readonly inspection: Inspection
  readonly census: Census
  /** Facing outwards, as drawn. */
  readonly outward: Mesh
  /** What the file was taken as. */
  readonly unit: LengthUnit
}

/** All steps at once, from a part's bytes to its census. Throws PreweighError. */
export function weighPart(
  file: NamedBytes,
  zones: readonly NamedBytes[],
  how: PartCount & {
    /** From the unit that the file states, null where it states none. */
    readonly unitOf: (stated: LengthUnit | null) => LengthUnit
    readonly keepsHairs: boolean
  },
  watch?: CountWatch,
): WeighedPart {
  const face = createFacing()
  const read = readMesh(file.bytes, file.name)
  const part = { name: file.name, unit: how.unitOf(read.unit), keepsHairs: how.keepsHairs }
  const inspection = inspectPart(read, part, face)
  const zonesRead = zones.map(({ bytes, name }) => readMesh(bytes, name))
  const census = countPart(read, zonesRead, part, how, face, watch)
  return { read, inspection, census, outward: face(read, meshTaking(part)), unit: part.unit }
}

function meshTaking({ unit, keepsHairs }: PartTaking): MeshTaking {
  return { scaleToMm: unitToMm(unit), keepsHairs }
}

function isSame(a: MeshTaking, b: MeshTaking): boolean {
  return a.scaleToMm === b.scaleToMm && a.keepsHairs === b.keepsHairs
}
