import type { Manifold } from 'manifold-3d'
import { placeMesh } from '../../src/core/mesh/pose.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN } from '../../src/core/model/settings.ts'
import type { MeetingPart } from '../../src/core/joints/offerJoints.ts'
import { holed, outlineOf, scattered } from '../support/jointShapes.ts'
import { seededRandom } from '../support/random.ts'
import { loadManifold } from '../support/solidCensus.ts'

/** A wavy ball some 60 mm across with about `triangles` triangles: no two layers alike. */
export async function organicPart(triangles: number): Promise<Mesh> {
  const { Manifold: Solid } = await loadManifold()
  const segments = 4 * Math.round(Math.sqrt(triangles / 8))
  return take(
    Solid.sphere(30, segments).warp((p) => {
      const swell =
        1 + 0.15 * Math.sin(p[0] * 0.3) * Math.cos(p[1] * 0.25) + 0.1 * Math.sin(p[2] * 0.4)
      for (const axis of [0, 1, 2] as const) p[axis] *= swell
    }),
  )
}

/** A deck 136 × 60 × 4 mm with 60 round holes. */
export async function holedPlate(): Promise<Mesh> {
  const { Manifold: Solid } = await loadManifold()
  const holes = Array.from({ length: 60 }, (_, i) =>
    Solid.cylinder(10, 1.6, 1.6, 64, true).translate([
      -60 + (i % 12) * 11,
      -20 + Math.floor(i / 12) * 10,
      0,
    ]),
  )
  return take(Solid.cube([136, 60, 4], true).subtract(Solid.union(holes)))
}

/**
 * An arm 160 mm long that tapers from 22 × 14 mm, with rounded corners, a pocket, a motor pad and
 * its screw holes.
 */
export async function taperedArm(): Promise<Mesh> {
  const { Manifold: Solid, CrossSection } = await loadManifold()
  const section = CrossSection.square([16, 8], true).offset(3, 'Round', 2, 64)
  const body = section.extrude(160, 1, 0, [0.6, 0.7]).rotate([90, 0, 0]).translate([0, 0, 7])
  const pad = Solid.cylinder(6, 15, 15, 128).translate([0, -160, 0])
  const bores = [0, 90, 180, 270].map((degrees) =>
    Solid.cylinder(30, 1.6, 1.6, 48, true)
      .translate([8, 0, 0])
      .rotate([0, 0, degrees])
      .translate([0, -160, 0]),
  )
  const pocket = Solid.cube([7, 90, 20], true).translate([0, -70, 7])
  return take(body.add(pad).subtract(Solid.union([...bores, pocket])))
}

function take(solid: Manifold): Mesh {
  const { vertProperties, triVerts } = solid.getMesh()
  return placeMesh({ positions: vertProperties, indices: triVerts }, 1, POSE_AS_DRAWN)
}

/**
 * Plates, arms and rings with 4 to 12 screw holes each, some of them where the part before has its
 * own.
 */
export function strangers(count: number): readonly MeetingPart[] {
  const random = seededRandom(count)
  let last: ReturnType<typeof scattered> = []
  return Array.from({ length: count }, (_, i) => {
    const own = scattered(random, 4 + (i % 9), [80, 60], 17, 6)
    const shared = i % 3 === 0 ? [] : last.slice(0, 4)
    const apart = own.filter(([x, y]) => shared.every((at) => Math.hypot(at[0] - x, at[1] - y) > 6))
    last = [...shared, ...apart]
    const kind = (['plate', 'arm', 'ring'] as const)[i % 3]!
    return {
      partId: String(i),
      mesh: holed(outlineOf(kind, 96), 3 + (i % 3), last, 1.7, 48),
      pieces: 1,
    }
  })
}
