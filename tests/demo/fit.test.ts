import { readFileSync } from 'node:fs'
import type { Manifold } from 'manifold-3d'
import { afterAll, describe, expect, it } from 'vitest'
import { readMesh } from '../../src/core/formats/read.ts'
import { itemMesh } from '../../src/core/joints/itemMesh.ts'
import { turnMatrix } from '../../src/core/mesh/pose.ts'
import type { Place } from '../../src/core/model/aircraft.ts'
import type { Mesh, Vec3 } from '../../src/core/model/mesh.ts'
import { unitToMm } from '../../src/core/model/units.ts'
import type { Aircraft } from '../../src/demo/aircraft.ts'
import type { DrawnEnd, DrawnJoint } from '../../src/demo/joints.ts'
import { mouthNear } from '../../src/demo/mouthNear.ts'
import { SANDPIPER } from '../../src/demo/sandpiper.ts'
import { TERN } from '../../src/demo/tern.ts'
import { rescale } from '../../src/demo/write.ts'
import { loadManifold, toSolid } from '../support/solidCensus.ts'

/*
 * The drawings as they are bolted together: bodies by manifold-3d, bores as found on the meshes.
 */

/**
 * A cup's groove is 2.5 mm wide and 8.2 across, the plate 3 mm thick and its hole 8: rubber gives
 * way by that much, mm³.
 */
const PRESSED = { pair: /^Damper cup \d × Camera tray 0$|^Camera tray 0 × Damper cup \d$/, mm3: 30 }

const meshes = new Map<string, Mesh>()
function meshOf(aircraft: Aircraft, name: string): Mesh {
  const known = meshes.get(name)
  if (known !== undefined) return known
  const item = aircraft.about.aircraft.items.find((each) => each.name === name)
  if (item?.body !== undefined) return itemMesh(item.body)
  const part = aircraft.parts.find((each) => each.name === name)
  if (part === undefined) throw new Error(`no part ${name}`)
  const bytes = readFileSync(new URL(`../../public/demo/${part.file}`, import.meta.url))
  const read = readMesh(new Uint8Array(bytes), part.file)
  const unit = read.unit ?? aircraft.drawnIn[name] ?? part.unit
  const mesh = unit === 'millimetre' ? read.mesh : rescale(read.mesh, unitToMm(unit))
  meshes.set(name, mesh)
  return mesh
}

const turned = (place: Place, [x, y, z]: Vec3): Vec3 => {
  const m = turnMatrix({ rotateDeg: place.rotateDeg })
  const own = place.mirrored ? -x : x
  return [0, 3, 6].map(
    (row) => m[row]! * own + m[row + 1]! * y + m[row + 2]! * z,
  ) as unknown as Vec3
}
const moved = (place: Place, point: Vec3): Vec3 => add(turned(place, point), place.positionMm)
const add = (a: Vec3, b: Vec3, times = 1): Vec3 => [
  a[0] + times * b[0],
  a[1] + times * b[1],
  a[2] + times * b[2],
]
const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const length = (a: Vec3) => Math.hypot(...a)

interface Line {
  readonly at: Vec3
  readonly along: Vec3
}

/**
 * Axes and touching face of an end, in the frame. Its mirror image has its bores at the mirrored
 * points.
 */
function placed(aircraft: Aircraft, { part, piece, mouths, normal, behindMm = 0, on }: DrawnEnd) {
  const place = placesOf(aircraft, part)[piece]
  if (place === undefined) throw new Error(`no place ${piece} of ${part}`)
  if (on !== undefined && normal !== null) {
    const lies = { at: moved(place, on), along: turned(place, normal) }
    return { axes: [], face: lies, drawn: { at: on, along: normal } }
  }
  const near = mouthNear(meshOf(aircraft, part))
  const axes = mouths.map((mouth): Line => {
    const found = near(mouth)
    expect(length(add(found.at, mouth, -1)), `${part} near ${mouth.join(' ')}`).toBeLessThan(1.5)
    return { at: moved(place, found.at), along: turned(place, found.bore.axis) }
  })
  if (normal === null) return { axes, face: null }
  const own = near(mouths[0]!).at
  const drawn = { at: add(own, normal, -behindMm), along: normal }
  const face = { at: moved(place, drawn.at), along: turned(place, normal) }
  return { axes, face, drawn }
}

function placesOf(aircraft: Aircraft, name: string): readonly Place[] {
  return aircraft.about.aircraft.places.filter(({ partId }) => partId === name)
}

/** How far the axes of two bores are apart where they meet. */
function offAxis(a: Line, b: Line): number {
  const between = add(b.at, a.at, -1)
  return length(add(between, a.along, -dot(between, a.along)))
}

/** Area of the mesh's triangles that lie in the plane and face along it, within 30 mm. mm² */
function areaInPlane({ positions, indices }: Mesh, { at, along }: Line): number {
  const corner = (i: number): Vec3 =>
    [0, 1, 2].map((k) => positions[3 * indices[i]! + k]!) as unknown as Vec3
  let area = 0
  for (let i = 0; i < indices.length; i += 3) {
    const [a, b, c] = [corner(i), corner(i + 1), corner(i + 2)]
    const near = [a, b, c].some((point) => length(add(point, at, -1)) < 30)
    const flat = [a, b, c].every((point) => Math.abs(dot(add(point, at, -1), along)) < 0.01)
    if (!near || !flat) continue
    const [u, v] = [add(b, a, -1), add(c, a, -1)]
    const across: Vec3 = [
      u[1] * v[2] - u[2] * v[1],
      u[2] * v[0] - u[0] * v[2],
      u[0] * v[1] - u[1] * v[0],
    ]
    if (dot(across, along) > 0) area += length(across) / 2
  }
  return area
}

const nameOf = ({ a, b }: DrawnJoint) => `${a.part} ${a.piece} on ${b.part} ${b.piece}`

const wasm = await loadManifold()
const solids: Manifold[] = []
afterAll(() => {
  for (const solid of solids) solid.delete()
})
const keep = (solid: Manifold): Manifold => {
  solids.push(solid)
  return solid
}
function bodyAt(mesh: Mesh, place: Place): Manifold {
  const body = keep(toSolid(wasm, mesh))
  const own = place.mirrored ? keep(body.mirror([1, 0, 0])) : body
  return keep(keep(own.rotate([...place.rotateDeg])).translate([...place.positionMm]))
}

/** A file's mesh without its triangle that belongs to nothing, which is no body: the last one. */
function closed(name: string, mesh: Mesh): Mesh {
  return name === 'Feet (three)' ? { ...mesh, indices: mesh.indices.slice(0, -3) } : mesh
}

function pieces(aircraft: Aircraft) {
  const bought = aircraft.about.aircraft.items.filter(({ body }) => body !== undefined)
  return [...aircraft.parts, ...bought].flatMap(({ name }) =>
    placesOf(aircraft, name).map((place, i) => ({
      name: `${name} ${i}`,
      body: bodyAt(closed(name, meshOf(aircraft, name)), place),
    })),
  )
}

describe.each([
  ['Sandpiper', SANDPIPER],
  ['Tern', TERN],
] as const)('%s, put together', (_, aircraft) => {
  const { joints } = aircraft
  const all = pieces(aircraft)

  it('has a place for every piece and every item', () => {
    const { items } = aircraft.about.aircraft
    for (const { name, quantity } of aircraft.parts) {
      expect(placesOf(aircraft, name), name).toHaveLength(quantity)
    }
    for (const { name, quantity, positionMm, body } of items) {
      const places = placesOf(aircraft, name)
      if (body === undefined || positionMm !== null) expect(positionMm, name).not.toBeNull()
      else expect(places, name).toHaveLength(quantity)
    }
  })

  it('has no two pieces in one another', () => {
    const overlaps = all.flatMap((one, i) =>
      all.slice(i + 1).map((other) => {
        const mm3 = keep(one.body.intersect(other.body)).volume()
        return { pair: `${one.name} × ${other.name}`, mm3 }
      }),
    )
    const pressed = overlaps.filter(({ pair }) => PRESSED.pair.test(pair))
    expect(pressed).toHaveLength(aircraft === SANDPIPER ? 4 : 0)
    for (const { pair, mm3 } of pressed) {
      expect(mm3, pair).toBeGreaterThan(20)
      expect(mm3, pair).toBeLessThan(PRESSED.mm3)
    }
    const others = overlaps.filter(({ pair, mm3 }) => mm3 > 1 && !PRESSED.pair.test(pair))
    expect(others).toEqual([])
  })

  it.each(joints.map((each) => [nameOf(each), each] as const))(
    '%s: axes meet, faces touch',
    (_name, each) => {
      const [a, b] = [placed(aircraft, each.a), placed(aircraft, each.b)]
      expect(a.axes.length).toBe(b.axes.length)
      for (const [i, axis] of a.axes.entries()) {
        const other = b.axes[i]!
        expect(Math.abs(dot(axis.along, other.along))).toBeCloseTo(1, 7)
        expect(offAxis(axis, other)).toBeLessThan(0.01)
      }
      if (a.face === null || b.face === null) return
      expect(dot(a.face.along, b.face.along)).toBeCloseTo(-1, 7)
      const gap = dot(add(b.face.at, a.face.at, -1), a.face.along)
      expect(Math.abs(gap - each.gapMm)).toBeLessThan(0.05)
      for (const [side, { drawn }] of [
        [each.a, a],
        [each.b, b],
      ] as const) {
        expect(areaInPlane(meshOf(aircraft, side.part), drawn), side.part).toBeGreaterThan(5)
      }
    },
  )

  it('hangs together: joints lead from one piece to every other but the feet', () => {
    const reached = new Set([`${joints[0]!.a.part} ${joints[0]!.a.piece}`])
    for (let before = 0; before < reached.size;) {
      before = reached.size
      for (const { a, b } of joints) {
        const ends = [`${a.part} ${a.piece}`, `${b.part} ${b.piece}`]
        if (ends.some((each) => reached.has(each))) for (const each of ends) reached.add(each)
      }
    }
    const left = all.map(({ name }) => name).filter((name) => !reached.has(name))
    expect(left).toEqual(aircraft === SANDPIPER ? ['Feet (three) 0'] : [])
  })
})

it('takes a foot under each arm and the boom once the file of three is taken apart', () => {
  const mesh = closed('Feet (three)', meshOf(SANDPIPER, 'Feet (three)'))
  const nearFoot = mouthNear(mesh)
  const span = length(add(nearFoot([13, 0, 0]).at, nearFoot([-13, 0, 0]).at, -1))
  const middleOne = keep(
    keep(wasm.Manifold.cube([40, 20, 60], true)).intersect(keep(toSolid(wasm, mesh))),
  )
  const others = pieces(SANDPIPER).filter(({ name }) => !name.startsWith('Feet'))
  const seats: readonly (readonly [string, number, number])[] = [
    ['Front arm', 115, 141],
    ['Tail boom', 162, 188],
  ]
  for (const [name, rear, front] of seats) {
    const near = mouthNear(meshOf(SANDPIPER, name))
    const [a, b] = [near([rear, 0, 0]), near([front, 0, 0])]
    expect([a.bore.diameter, b.bore.diameter].map((mm) => mm.toFixed(2))).toEqual(['4.20', '4.20'])
    expect(Math.abs(length(add(a.at, b.at, -1)) - span)).toBeLessThan(0.01)
    for (const place of placesOf(SANDPIPER, name)) {
      const at = add(moved(place, a.at), add(moved(place, b.at), moved(place, a.at), -1), 0.5)
      // Upside down, along the arm.
      const turn: Vec3 = [180, 0, place.rotateDeg[2]]
      const foot = keep(keep(middleOne.rotate([...turn])).translate([...at]))
      for (const other of others) {
        expect(
          keep(foot.intersect(other.body)).volume(),
          `under ${name}: ${other.name}`,
        ).toBeLessThan(1)
      }
    }
  }
})
