import createModule from 'manifold-3d'
import type { CrossSection, Manifold } from 'manifold-3d'
import type { Mesh } from '../core/model/mesh.ts'

/** A flat region in mm; freed with its workshop. */
export type Outline = CrossSection
/** A closed body in mm; freed with its workshop. */
export type Solid = Manifold
export type Point = readonly [x: number, y: number]
type Vector = readonly [x: number, y: number, z: number]

/** Facets of a full circle: a Ø 8 hole is then within 0.02 mm of round. */
const FACETS = 64

/**
 * Solid modelling for the demo parts, all in mm and degrees. Every object it makes is kept and
 * freed by `close()`, because the bodies live in WASM memory that no garbage collector sees.
 */
export interface Workshop {
  polygon(points: readonly Point[]): Outline
  rectangle(width: number, depth: number, centre?: Point): Outline
  disc(diameter: number, centre?: Point): Outline
  /** A hole for a screw that slides: two half discs joined. */
  slot(diameter: number, from: Point, to: Point): Outline
  fuse(...outlines: readonly Outline[]): Outline
  pierce(outline: Outline, ...holes: readonly Outline[]): Outline
  /**
   * Rounds outer corners and fillets inner ones with the same radius; straight sides stay where
   * they are.
   */
  soften(outline: Outline, radius: number): Outline
  squash(outline: Outline, factorX: number, factorY: number): Outline
  /** Copies at x and −x. */
  bothSides(outline: Outline): Outline
  /** Stands on `z`, `height` tall; the top may be scaled about the z axis. */
  raise(outline: Outline, height: number, z?: number, scaleTop?: number): Solid
  /** Along z from `z` upwards, with a top diameter where it is a cone. */
  rod(diameter: number, height: number, at: Vector, topDiameter?: number): Solid
  block(size: Vector, min: Vector): Solid
  hull(...solids: readonly Solid[]): Solid
  join(...solids: readonly Solid[]): Solid
  cut(solid: Solid, ...tools: readonly Solid[]): Solid
  common(first: Solid, second: Solid): Solid
  move(solid: Solid, by: Vector): Solid
  /** About x, then y, then z, in degrees. */
  turn(solid: Solid, degrees: Vector): Solid
  /** The same body on the other side of the plane x = 0. */
  mirrorX(solid: Solid): Solid
  /** Single-precision triangles, each position once; ready to be written. */
  mesh(solid: Solid): Mesh
  close(): void
}

export async function openWorkshop(): Promise<Workshop> {
  const wasm = await createModule()
  wasm.setup()
  const made: { delete(): void }[] = []
  const keep = <T extends { delete(): void }>(object: T): T => {
    made.push(object)
    return object
  }
  const { CrossSection, Manifold } = wasm

  const disc = (diameter: number, centre: Point = [0, 0]) =>
    keep(keep(CrossSection.circle(diameter / 2, FACETS)).translate([...centre]))
  const fuse = (...outlines: readonly Outline[]) => keep(CrossSection.union(outlines))
  const swell = (outline: Outline, by: number) => keep(outline.offset(by, 'Round', 2, FACETS))

  return {
    polygon: (points) => keep(new CrossSection([points.map(([x, y]) => [x, y])], 'NonZero')),
    rectangle: (width, depth, centre = [0, 0]) =>
      keep(keep(CrossSection.square([width, depth], true)).translate([...centre])),
    disc,
    slot: (diameter, from, to) => keep(fuse(disc(diameter, from), disc(diameter, to)).hull()),
    fuse,
    pierce: (outline, ...holes) => keep(outline.subtract(fuse(...holes))),
    soften: (outline, radius) =>
      keep(swell(swell(swell(outline, -radius), 2 * radius), -radius).simplify(0.01)),
    squash: (outline, factorX, factorY) => keep(outline.scale([factorX, factorY])),
    bothSides: (outline) => fuse(outline, keep(outline.mirror([1, 0]))),
    raise: (outline, height, z = 0, scaleTop = 1) =>
      keep(keep(outline.extrude(height, 0, 0, [scaleTop, scaleTop])).translate([0, 0, z])),
    rod: (diameter, height, at, topDiameter = diameter) =>
      keep(
        keep(Manifold.cylinder(height, diameter / 2, topDiameter / 2, FACETS)).translate([...at]),
      ),
    block: (size, min) => keep(keep(Manifold.cube([...size])).translate([...min])),
    hull: (...solids) => keep(Manifold.hull(solids)),
    join: (...solids) => keep(Manifold.union(solids)),
    cut: (solid, ...tools) => keep(Manifold.difference([solid, ...tools])),
    common: (first, second) => keep(first.intersect(second)),
    move: (solid, by) => keep(solid.translate([...by])),
    turn: (solid, degrees) => keep(solid.rotate([...degrees])),
    mirrorX: (solid) => keep(solid.mirror([1, 0, 0])),
    mesh: (solid) => weldSingles(keep(solid.simplify(0.002)).getMesh()),
    close: () => {
      for (const object of made.splice(0)) object.delete()
    },
  }
}

/**
 * Corners that fall together in single precision become one vertex and the triangles this flattens
 * go, so that a reader that welds by exact position finds the body closed.
 */
function weldSingles(raw: {
  readonly vertProperties: Float32Array
  readonly triVerts: Uint32Array
  readonly numProp: number
}): Mesh {
  const positions: number[] = []
  const known = new Map<string, number>()
  const vertexOf = (index: number): number => {
    // Adding 0 turns −0 into 0, which would otherwise be told apart in the file's bytes.
    const [x = 0, y = 0, z = 0] = raw.vertProperties
      .subarray(index * raw.numProp, index * raw.numProp + 3)
      .map((value) => value + 0)
    const key = `${x},${y},${z}`
    const found = known.get(key)
    if (found !== undefined) return found
    const next = positions.length / 3
    positions.push(x, y, z)
    known.set(key, next)
    return next
  }
  const indices: number[] = []
  for (let i = 0; i < raw.triVerts.length; i += 3) {
    const [a = 0, b = 0, c = 0] = Array.from(raw.triVerts.subarray(i, i + 3), vertexOf)
    if (a !== b && b !== c && c !== a) indices.push(a, b, c)
  }
  return { positions: Float32Array.from(positions), indices: Uint32Array.from(indices) }
}
