import type { CrossSection, Manifold, ManifoldToplevel } from 'manifold-3d'
import Module from 'manifold-3d'
import type { Mesh } from '../../src/core/model/mesh.ts'
import type { GeometrySettings } from '../../src/core/model/settings.ts'
import { habitsOf } from '../../src/core/model/habits.ts'
import { planLayers } from '../../src/core/census/cut/layerPlan.ts'

/** The layer areas of `solidCensus`, bottom first, mm². */
export interface SolidLayers {
  readonly areaMm2: number[]
  readonly wallMm2: number[]
  readonly skinMm2: number[]
  readonly roomMm2: number[]
}

let loaded: Promise<ManifoldToplevel> | null = null

/** manifold-3d, loaded once. */
export function loadManifold(): Promise<ManifoldToplevel> {
  loaded ??= Module().then((wasm) => {
    wasm.setup()
    return wasm
  })
  return loaded
}

/**
 * The mesh as a manifold-3d solid; throws when the mesh is not a closed oriented surface. The
 * caller deletes it.
 */
export function toSolid(wasm: ManifoldToplevel, mesh: Mesh): Manifold {
  return new wasm.Manifold(
    new wasm.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(mesh.positions),
      triVerts: mesh.indices,
    }),
  )
}

/**
 * The slow obvious layer count: build the solid, slice every layer, offset the slice inwards,
 * intersect it with every neighbour the skins look at, widen the bands that are left bare and drop
 * small rooms as the habits say. Holds, strands, thin walls and laps it has none. All of it by
 * manifold-3d (exact polygons by its Clipper2), nothing by our own code but the heights of the
 * cuts. Solid mesh in mm, lowest z at 0.
 */
export function solidCensus(
  wasm: ManifoldToplevel,
  mesh: Mesh,
  settings: GeometrySettings,
  roundSegments = 64,
): SolidLayers {
  const solid = toSolid(wasm, mesh)
  const plan = planLayers(solid.boundingBox().max[2], settings.layerMm, settings.firstLayerMm)
  const slices: CrossSection[] = []
  for (let i = 0; i < plan.count; i++) slices.push(solid.slice(plan.cutMm[i]!))
  const habits = habitsOf(settings)
  const round = (section: CrossSection, mm: number): CrossSection =>
    section.offset(mm, 'Round', 2, roundSegments)
  const under = habits.slopeBandMm > 0 ? Math.min(settings.walls, 0.25) * settings.lineMm : 0
  const covers = under > 0 ? slices.map((slice) => round(slice, -under)) : slices
  /** What all cover, further than the band from what they do not, without the small rooms. */
  const roomOf = (inset: CrossSection, neighbours: readonly CrossSection[]): CrossSection => {
    let covered = inset.subtract(nothing)
    const drop = (next: CrossSection): void => {
      covered.delete()
      covered = next
    }
    for (const neighbour of neighbours) drop(covered.intersect(neighbour))
    if (habits.slopeBandMm > 0 && !covered.isEmpty()) {
      const bare = inset.subtract(covered)
      const band = round(bare, habits.slopeBandMm)
      drop(covered.subtract(band))
      bare.delete()
      band.delete()
    }
    const pieces = covered.decompose()
    const large = pieces.filter((piece) => piece.area() >= habits.smallRoomMm2)
    if (large.length < pieces.length) drop(wasm.CrossSection.compose(large))
    for (const piece of pieces) piece.delete()
    return covered
  }
  const out: SolidLayers = { areaMm2: [], wallMm2: [], skinMm2: [], roomMm2: [] }
  const nothing = wasm.CrossSection.square(0)
  for (let i = 0; i < plan.count; i++) {
    const slice = slices[i]!
    const inset = slice.offset(-settings.walls * settings.lineMm, 'Round', 2, roundSegments)
    const between = settings.bottomSkins + settings.topSkins
    const around = Array.from({ length: between + 1 }, (_, k) => i - settings.bottomSkins + k)
    const room = roomOf(
      inset,
      around.filter((j) => j !== i).map((j) => covers[j] ?? nothing),
    )
    out.areaMm2.push(slice.area())
    out.wallMm2.push(slice.area() - inset.area())
    out.skinMm2.push(inset.area() - room.area())
    out.roomMm2.push(room.area())
    room.delete()
    inset.delete()
  }
  for (const slice of slices) slice.delete()
  if (under > 0) for (const cover of covers) cover.delete()
  nothing.delete()
  solid.delete()
  return out
}
