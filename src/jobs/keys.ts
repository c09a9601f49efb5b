import type { Habits, KnownHabits } from '../core/model/habits.ts'
import type { LengthUnit } from '../core/model/mesh.ts'
import type { GeometrySettings, Pose } from '../core/model/settings.ts'

/**
 * Names what was measured of a mesh: its content, the unit its numbers are taken in, and whether
 * its hairs are kept.
 */
export function readKey(hash: string, unit: LengthUnit, keepsHairs = false): string {
  return keepsHairs ? `${hash}|${unit}, hairs kept` : `${hash}|${unit}`
}

/** Names a census: everything it depends on, and nothing else. Equal keys mean equal censuses. */
export function censusKey(
  hash: string,
  unit: LengthUnit,
  pose: Pose,
  geometry: GeometrySettings,
  zoneHashes: readonly string[] = [],
  keepsHairs = false,
  countsFully = false,
): string {
  const g = geometryOf(geometry)
  const habits = habitsIn(g.habits ?? {})
  return [
    readKey(hash, unit, keepsHairs),
    pose.rotateDeg.join(' '),
    g.layerMm,
    g.firstLayerMm,
    g.lineMm,
    g.walls,
    g.topSkins,
    g.bottomSkins,
    g.supports ? g.supportAngleDeg : 'bare',
    g.brimMm,
    ...(habits.length > 0 ? [`habits ${JSON.stringify(habits)}`] : []),
    ...zoneHashes.map((zoneHash) => `zone ${zoneHash}`),
    ...(countsFully ? ['fully'] : []),
  ].join('|')
}

/** The geometry settings alone, out of a whole recipe. */
export function geometryOf(recipe: GeometrySettings): GeometrySettings {
  const { layerMm, firstLayerMm, lineMm, walls, topSkins, bottomSkins } = recipe
  const { supports, supportAngleDeg, brimMm, habits } = recipe
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
    ...(habits ? { habits } : {}),
  }
}

/** Habits that figures follow and layers do not. */
const UNCOUNTED: ReadonlySet<string> = new Set<keyof Habits>(['joinedShare', 'strandShare'])

/** Those that layers hang on, in one order whatever the order they were told in. */
function habitsIn(habits: KnownHabits): (readonly [string, unknown])[] {
  return Object.entries(habits)
    .filter(([habit]) => !UNCOUNTED.has(habit))
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
}
