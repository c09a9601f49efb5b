import type { Manifold, ManifoldToplevel } from 'manifold-3d'
import { placeMesh } from '../../src/core/mesh/pose.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN } from '../../src/core/model/settings.ts'

/**
 * Parts that airframes are made of, each with something that a bare count of regions gets wrong.
 * Invented.
 */
export function habitParts(wasm: ManifoldToplevel): readonly { name: string; mesh: Mesh }[] {
  const { Manifold: Solid, CrossSection } = wasm
  const cube = (x: number, y: number, z: number) => Solid.cube([x, y, z])
  const at = (solid: Manifold, x: number, y: number, z = 0) => solid.translate([x, y, z])
  const rod = (radius: number, height: number, segments = 64) =>
    Solid.cylinder(height, radius, radius, segments)
  const row = (count: number, make: (i: number) => Manifold) =>
    Solid.union(Array.from({ length: count }, (_, i) => make(i)))
  const aerofoil = (chord: number, thick: number): [number, number][] => {
    const upper = Array.from({ length: 41 }, (_, i): [number, number] => {
      const t = i / 40
      const y =
        5 *
        thick *
        (0.2969 * Math.sqrt(t) - 0.126 * t - 0.3516 * t * t + 0.2843 * t ** 3 - 0.1036 * t ** 4)
      return [chord * t, chord * y]
    })
    return [...upper.map(([x, y]): [number, number] => [x, -y]), ...upper.slice(1, -1).toReversed()]
  }
  const letter = (bars: readonly [number, number, number, number][]) =>
    Solid.union(bars.map(([x, y, w, d]) => at(cube(w, d, 2), x, y, 1.6)))
  const parts: Readonly<Record<string, Manifold>> = {
    'a ribbed plate': cube(60, 40, 2).add(row(5, (i) => at(cube(1.6, 40, 8), 6 + 11.5 * i, 0))),
    'a plate of thin ribs': cube(60, 40, 2).add(row(5, (i) => at(cube(1, 40, 8), 6 + 11.5 * i, 0))),
    'a lattice': cube(60, 40, 4).subtract(
      row(24, (i) => at(cube(7, 7, 10), 3 + 9.4 * (i % 6), 2.2 + 9.4 * Math.floor(i / 6), -1)),
    ),
    'a chamfered arm': Solid.hull([at(cube(90, 14, 6), 0, 0), at(cube(90, 8, 10), 0, 3)]),
    'a tapered arm': CrossSection.square([18, 10], true)
      .extrude(90, 1, 0, [0.6, 0.7])
      .rotate([90, 0, 0]),
    'a cone': Solid.cylinder(24, 18, 3, 96),
    'a steep cone': Solid.cylinder(40, 14, 8, 96),
    'a gyro ring': rod(22, 6, 128).subtract(at(rod(17, 8, 128), 0, 0, -1)),
    'a thin pod': Solid.sphere(16, 96).subtract(Solid.sphere(14.8, 96)).trimByPlane([0, 0, 1], 0),
    'a tray with bosses': cube(60, 40, 12)
      .subtract(at(cube(54, 34, 12), 3, 3, 2))
      .add(row(4, (i) => at(rod(3.5, 9), 10 + 40 * (i % 2), 10 + 20 * Math.floor(i / 2), 1)))
      .subtract(row(4, (i) => at(rod(1.3, 20), 10 + 40 * (i % 2), 10 + 20 * Math.floor(i / 2), 3))),
    'raised letters': cube(50, 16, 1.6).add(
      letter([
        [4, 3, 1.4, 10],
        [9, 3, 1.4, 10],
        [4, 7.3, 6.4, 1.4],
        [14, 3, 1.4, 10],
        [19, 3, 1.4, 10],
        [19, 3, 6, 1.4],
        [29, 3, 1.4, 10],
        [29, 3, 6, 1.4],
        [29, 11.6, 6, 1.4],
        [29, 7.3, 5, 1.4],
      ]),
    ),
    'a wing with ribs': CrossSection.ofPolygons([aerofoil(70, 0.14)])
      .extrude(50, 1, 0, [0.9, 0.9])
      .subtract(
        row(3, (i) =>
          at(CrossSection.ofPolygons([aerofoil(64, 0.115)]).extrude(14), 2.6, 0, 1.5 + 16.5 * i),
        ),
      ),
    'a solid wing': CrossSection.ofPolygons([aerofoil(70, 0.14)]).extrude(40, 1, 0, [0.8, 0.8]),
    'a plate with holes': cube(70, 40, 4).subtract(
      row(8, (i) => at(rod(1.6, 10, 32), 8 + 18 * (i % 4), 10 + 20 * Math.floor(i / 4), -1)),
    ),
    'a hub with spokes': rod(24, 5, 128)
      .subtract(at(rod(20, 8, 128), 0, 0, -1))
      .add(rod(6, 9))
      .add(row(5, (i) => at(cube(22, 2, 4), 0, -1).rotate([0, 0, 72 * i])))
      .subtract(at(rod(2.5, 20), 0, 0, -1)),
    'a bracket': cube(30, 24, 4).add(cube(4, 24, 26)),
    'a gusset': cube(30, 20, 3)
      .add(cube(3, 20, 24))
      .add(
        Solid.extrude(
          CrossSection.ofPolygons([
            [
              [0, 0],
              [24, 0],
              [0, 20],
            ],
          ]),
          2.2,
        )
          .rotate([90, 0, 0])
          .translate([2, 11, 2]),
      ),
    'a ball': Solid.sphere(15, 96).translate([0, 0, 15]),
    'a lying tube': rod(9, 40, 96)
      .subtract(at(rod(7, 50, 96), 0, 0, -5))
      .rotate([90, 0, 0]),
    'a stepped tower': row(5, (i) => at(cube(34 - 6 * i, 34 - 6 * i, 4), 3 * i, 3 * i, 4 * i)),
    'a dome': Solid.sphere(22, 96).trimByPlane([0, 0, 1], 0),
    'a box with a lid recess': cube(50, 30, 14).subtract(at(cube(42, 22, 9), 4, 4, 5)),
    'a frame of walls two lines thick': cube(50, 30, 10).subtract(
      at(cube(48.4, 28.4, 12), 0.8, 0.8, -1),
    ),
    'a frame of walls three lines thick': cube(50, 30, 10).subtract(
      at(cube(47.6, 27.6, 12), 1.2, 1.2, -1),
    ),
  }
  return Object.entries(parts).map(([name, solid]) => {
    const { vertProperties, triVerts } = solid.getMesh()
    const mesh: Mesh = { positions: vertProperties, indices: triVerts }
    return { name, mesh: placeMesh(mesh, 1, POSE_AS_DRAWN) }
  })
}
