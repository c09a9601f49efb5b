import { cutSection } from '../core/census/section/cutSection.ts'
import type { PartSection } from '../core/census/section/types.ts'
import { lookAtPart } from '../core/drawing/lookAtPart.ts'
import { onSheet } from '../core/drawing/onSheet.ts'
import { alongBox, boxOfMesh } from '../core/mesh/boxOfMesh.ts'
import { originOf, placePoint, placeTogether } from '../core/mesh/pose.ts'
import { unitToMm } from '../core/model/units.ts'
import { takingOf, type MeshShelf } from './meshShelf.ts'
import type { CutAsk, LookAnswer, LookAsk } from './asks/partAsks.ts'

/** Draws one part; null for one without a size. */
export async function lookAt(ask: LookAsk, shelf: MeshShelf): Promise<LookAnswer | null> {
  const { unit, pose, view, sheet, supportAngleDeg, pointsMm } = ask
  const { drawn, placed, others } = await placeAll(ask, shelf)
  const look = lookAtPart(placed, others, view, sheet, supportAngleDeg)
  if (look === null) return null
  const origin = originOf(drawn, placed, unitToMm(unit), pose)
  const points = pointsMm.map((at) => onSheet(look.drawing, placePoint(origin, pose, at)))
  return { ...look, points }
}

export async function cutPart(ask: CutAsk, shelf: MeshShelf): Promise<PartSection> {
  const { placed, others } = await placeAll(ask, shelf)
  const atMm = alongBox(boxOfMesh(placed), ask.axis, ask.share)
  return cutSection(placed, others, ask.geometry, ask.axis, atMm)
}

async function placeAll({ source, zones, unit, pose }: LookAsk | CutAsk, shelf: MeshShelf) {
  const taking = takingOf(source, unit)
  const drawn = shelf.outward(await shelf.read(source), taking)
  const zoneMeshes = await Promise.all(
    zones.map(async (zone) =>
      shelf.outward(await shelf.read(zone), { ...taking, keepsHairs: true }),
    ),
  )
  return { drawn, ...placeTogether(drawn, zoneMeshes, unitToMm(unit), pose) }
}
