import type { LengthUnit } from '../core/model/mesh.ts'
import type { GeometrySettings, Pose } from '../core/model/settings.ts'

/** Names what was measured of a mesh: its content and the unit its numbers are taken in. */
export function readKey(hash: string, unit: LengthUnit): string {
  return `${hash}|${unit}`
}

/** Names a census: everything it depends on, and nothing else. Equal keys mean equal censuses. */
export function censusKey(
  hash: string,
  unit: LengthUnit,
  pose: Pose,
  geometry: GeometrySettings,
  zoneHash: string | null = null,
): string {
  const g = geometryOf(geometry)
  return [
    readKey(hash, unit),
    pose.rotateDeg.join(' '),
    g.layerMm,
    g.firstLayerMm,
    g.lineMm,
    g.walls,
    g.topSkins,
    g.bottomSkins,
    g.supports ? g.supportAngleDeg : 'bare',
    g.brimMm,
    ...(zoneHash === null ? [] : [`zone ${zoneHash}`]),
  ].join('|')
}

/** The geometry settings alone, out of a whole recipe. */
export function geometryOf(recipe: GeometrySettings): GeometrySettings {
  const { layerMm, firstLayerMm, lineMm, walls, topSkins, bottomSkins } = recipe
  const { supports, supportAngleDeg, brimMm } = recipe
  return {
    layerMm,
    firstLayerMm,
    lineMm,
    walls,
    topSkins,
    bottomSkins,
    supports,
    supportAngleDeg,
    brimMm,
  }
}
