import { readdirSync, readFileSync } from 'node:fs'
import { afterAll, expect, test } from 'vitest'
import { readMesh } from '../../../../src/core/formats/read.ts'
import { findHoles, type Hole } from '../../../../src/core/mesh/holes/findHoles.ts'
import { outwardMesh } from '../../../../src/core/mesh/outwardMesh.ts'
import { flatAxes } from '../../../../src/core/mesh/holes/fitCircle.ts'
import type { Mesh, Vec3 } from '../../../../src/core/model/mesh.ts'
import { cross, dot, minus, plus, times } from '../../../../src/core/model/vectors.ts'
import { loadManifold } from '../../../support/solidCensus.ts'

/*
 * A slow and obvious oracle: it walks out of a bore along its axis. Where three of five straights near the axis meet a
 * triangle on the way it is blind; where a quarter of sixteen straights sideways see further than 2.5 radii it is out
 * in the open. On the 27 meshes of ../shared/toolpaths it and `findHoles` agree at all 280 ends of 140 bores.
 */

/** Way along a straight to the first triangle it meets (Möller and Trumbore, 1997). */
function firstHit({ positions, indices }: Mesh, from: Vec3, way: Vec3): number {
  const corner = (i: number): Vec3 => {
    const v = 3 * indices[i]!
    return [positions[v]!, positions[v + 1]!, positions[v + 2]!]
  }
  let nearest = Infinity
  for (let t = 0; t < indices.length; t += 3) {
    const a = corner(t)
    const [u, v] = [minus(corner(t + 1), a), minus(corner(t + 2), a)]
    const p = cross(way, v)
    const whole = dot(u, p)
    if (Math.abs(whole) < 1e-14) continue
    const to = minus(from, a)
    const first = dot(to, p) / whole
    const q = cross(to, u)
    const second = dot(way, q) / whole
    if (first < 0 || second < 0 || first + second > 1) continue
    const along = dot(v, q) / whole
    if (along > 1e-7 && along < nearest) nearest = along
  }
  return nearest
}

function isOpen(mesh: Mesh, { axis, centre, diameter, depth }: Hole, side: 1 | -1): boolean {
  const radius = diameter / 2
  const way = times(axis, side)
  const { right, up } = flatAxes(axis)
  const aside = (angle: number, by: number): Vec3 =>
    plus(times(right, by * Math.cos(angle)), times(up, by * Math.sin(angle)))
  const before = Math.min(0.05 * radius, depth / 4)
  let at = depth / 2 - before
  for (let n = 0; n < 400; n++) {
    const step = 0.25 * radius + (n === 0 ? before : 0)
    const here = plus(centre, times(way, at))
    const hits = [0.37, 1.9, 2.53, 4.61, 5.7].filter(
      (angle) => firstHit(mesh, plus(here, aside(angle, 0.18 * radius)), way) < step,
    )
    if (hits.length >= 3) return false
    at += step
    const next = plus(centre, times(way, at))
    const far = Array.from({ length: 16 }, (_, k) => aside(0.11 + (Math.PI * k) / 8, 1)).filter(
      (sideways) => firstHit(mesh, next, sideways) > 2.5 * radius,
    )
    if (far.length >= 4) return true
  }
  return true
}

const FOLDER = new URL('../../../../public/demo/', import.meta.url)

test('the samples’ bores are open and blind where a walk along their axes says so', () => {
  let ends = 0
  const wrong: string[] = []
  for (const name of readdirSync(FOLDER).filter((file) => /\.(stl|obj|3mf)$/.test(file))) {
    const { mesh: read } = readMesh(new Uint8Array(readFileSync(new URL(name, FOLDER))), name)
    // Brute force looks at every triangle for each straight.
    if (read.indices.length > 3 * 4000) continue
    const mesh = outwardMesh(read, { scaleToMm: 1, keepsHairs: false })
    for (const hole of findHoles(mesh)) {
      for (const side of [-1, 1] as const) {
        ends++
        const told = side < 0 ? hole.openLow : hole.openHigh
        if (told !== isOpen(mesh, hole, side))
          wrong.push(`${name} ${hole.centre.join(' ')} ${side}`)
      }
    }
  }
  expect(ends).toBeGreaterThan(40)
  expect(wrong).toEqual([])
})

const wasm = await loadManifold()
const made: { delete: () => void }[] = []
afterAll(() => {
  for (const each of made) each.delete()
})

test('a head’s seat over a hole of six sides is open, over a web it is not', () => {
  const { Manifold } = wasm
  const keep = <T extends { delete: () => void }>(each: T): T => {
    made.push(each)
    return each
  }
  const block = keep(Manifold.cube([20, 20, 6]))
  const seat = keep(keep(Manifold.cylinder(3, 3.3, 3.3, 32)).translate([10, 10, 3]))
  const six = keep(keep(Manifold.cylinder(10, 1.6, 1.6, 6)).translate([10, 10, -1]))
  const meshOf = (solid: InstanceType<typeof Manifold>): Mesh => {
    const { vertProperties, triVerts, numProp } = solid.getMesh()
    const positions = Float64Array.from(
      { length: (3 * vertProperties.length) / numProp },
      (_, i) => vertProperties[Math.floor(i / 3) * numProp + (i % 3)]!,
    )
    return { positions, indices: Uint32Array.from(triVerts) }
  }
  const open = findHoles(meshOf(keep(keep(block.subtract(seat)).subtract(six))))
  expect(open.map(({ through }) => through)).toEqual([true])
  const shut = findHoles(meshOf(keep(block.subtract(seat))))
  expect(shut.map(({ openLow, openHigh }) => [openLow, openHigh])).toEqual([[false, true]])
})
