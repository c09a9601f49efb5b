import type { LoadNow } from '../core/aircraft/twin/loadOf.ts'
import { solidBendingNm } from '../core/aircraft/report/twinEntry.ts'
import { laidRecipe } from '../core/figures/laidRecipe.ts'
import { readMesh } from '../core/formats/read.ts'
import { outwardMesh } from '../core/mesh/outwardMesh.ts'
import type { Range } from '../core/model/figures.ts'
import { DRAFT_MM } from '../core/data/stiffness.ts'
import type { Frame, Part } from '../core/model/frame.ts'
import type { Mesh } from '../core/model/mesh.ts'
import { PreweighError } from '../core/model/problem.ts'
import { unitToMm } from '../core/model/units.ts'
import type { ChosenLoad } from '../core/stiffness/part/chooseLoad.ts'
import type { NoBeam, PartSections } from '../core/stiffness/part/sections.ts'
import type { PlateStock } from '../core/stiffness/part/plateStiffness.ts'
import { partSections, stiffPart } from '../core/stiffness/part/stiffPart.ts'
import { materialOf } from '../state/store/materialOf.ts'
import type { ZoneFile } from './priceMesh.ts'

/**
 * How one part gives under its load; `safety` is strength over the highest stress, null without
 * any.
 */
export interface StiffnessReport {
  readonly part: string
  readonly loadN: number
  /** At its joints or an end, at the bores of its free end or an end, along an axis of the bed. */
  readonly held: ChosenLoad['held']
  readonly pushed: ChosenLoad['pushed']
  readonly direction: ChosenLoad['direction']
  readonly deflectionMm: Range
  readonly firstHz: Range
  readonly safety: Range | null
}

/** The report's line, and what the carbon twin takes of it. */
interface FoundStiffness {
  readonly report: StiffnessReport
  readonly bendingNm: number | undefined
}

/** Which parts are reckoned, besides those whose load is told: it takes seconds a part. */
export type StiffParts = 'none' | 'arms' | 'all'

/** A part's mesh with those of its zones. */
interface PartMeshes {
  readonly outward: Mesh
  readonly zones: readonly ZoneFile[]
}

/** A line for the report, or a note why there is none; null where nothing swings. */
export function stiffnessOf(
  part: Part,
  frame: Frame,
  { pick, jointBores, loadN, tipG }: LoadNow,
  meshes: PartMeshes,
  massG: number,
  plate: PlateStock | null,
): FoundStiffness | { readonly note: string } | null {
  const scaleToMm = unitToMm(part.unit)
  try {
    const found = stiffPart(meshesOf(meshes, scaleToMm), scaleToMm, {
      pose: part.pose,
      recipe: laidRecipe(part, frame.printer),
      material: materialOf(frame, part.materialId),
      massG,
      jointBores,
      pick,
      loadN,
      tipG,
      cellMm: DRAFT_MM,
      wantTones: true,
      ...(plate === null ? {} : { plate }),
    })
    const { figures } = found
    const [firstHz] = figures.hz
    if (firstHz === undefined) return null
    const { deflectionMm, safety } = figures
    const { held, pushed, direction } = found.chosen
    const report = {
      part: part.name,
      loadN,
      held,
      pushed,
      direction,
      deflectionMm,
      firstHz,
      safety: safety?.factor ?? null,
    }
    return { report, bendingNm: plate === null ? undefined : solidBendingNm(found, plate) }
  } catch (error) {
    if (!(error instanceof PreweighError)) throw error
    return { note: `${part.name}, stiffness: ${error.problem.message} ${error.problem.advice}` }
  }
}

/**
 * A part with a typed free length as a beam, for how it rings; null for others and what cannot be
 * held.
 */
export function sectionsOfArm(
  part: Part,
  frame: Frame,
  { pick, jointBores }: LoadNow,
  meshes: PartMeshes,
): PartSections | NoBeam | null {
  if (frame.aircraft.twin.freeMm?.[part.id] === undefined) return null
  const scaleToMm = unitToMm(part.unit)
  try {
    return partSections(meshesOf(meshes, scaleToMm), scaleToMm, {
      pose: part.pose,
      geometry: laidRecipe(part, frame.printer),
      jointBores,
      pick,
    })
  } catch (error) {
    if (!(error instanceof PreweighError)) throw error
    return null
  }
}

function meshesOf({ outward, zones }: PartMeshes, scaleToMm: number) {
  return {
    part: outward,
    zones: zones.map(({ bytes, name }) =>
      outwardMesh(readMesh(bytes, name).mesh, { scaleToMm, keepsHairs: true }),
    ),
  }
}
