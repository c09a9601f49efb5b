import type { NoBeam, PartSections } from '../core/stiffness/part/sections.ts'
import { partSections, stiffPart, type StiffPart } from '../core/stiffness/part/stiffPart.ts'
import { unitToMm } from '../core/model/units.ts'
import { takingOf, type MeshShelf } from './meshShelf.ts'
import type { BeamAsk, StiffAsk, StiffEvent } from './asks/partAsks.ts'

/** Told no more often than by this. */
const STEP = 0.02

/** Reads a part and its zones and reckons how it gives. Throws PreweighError. */
export async function stiffen(
  { source, zones, unit, ...ask }: StiffAsk,
  shelf: MeshShelf,
  tell: (event: StiffEvent) => void,
): Promise<StiffPart> {
  const meshes = await meshesOf(source, zones, unit, shelf)
  let told = 0
  return stiffPart(meshes, unitToMm(unit), ask, (fraction) => {
    if (fraction < told + STEP) return
    told = fraction
    tell({ kind: 'progress', fraction })
  })
}

/** Reads a part and its zones and takes its sections. Throws PreweighError. */
export async function findSections(
  { source, zones, unit, ...ask }: BeamAsk,
  shelf: MeshShelf,
): Promise<PartSections | NoBeam> {
  return partSections(await meshesOf(source, zones, unit, shelf), unitToMm(unit), ask)
}

async function meshesOf(
  source: StiffAsk['source'],
  zones: StiffAsk['zones'],
  unit: StiffAsk['unit'],
  shelf: MeshShelf,
) {
  const taking = takingOf(source, unit)
  const part = shelf.outward(await shelf.read(source), taking)
  const zoneMeshes = []
  for (const zone of zones) {
    zoneMeshes.push(shelf.outward(await shelf.read(zone), { ...taking, keepsHairs: true }))
  }
  return { part, zones: zoneMeshes }
}
