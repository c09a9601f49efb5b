import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readMesh } from '../../src/core/formats/read.ts'
import type { LengthUnit, Mesh, MeshFormat } from '../../src/core/model/mesh.ts'
import { unitToMm } from '../../src/core/model/units.ts'

type Size = readonly [x: number, y: number, z: number]

/** The sizes the parts were asked for, mm, as drawn; null where the part's other sizes decide. */
const SIZES: Readonly<Record<string, readonly (number | null)[]>> = {
  'front-arm.stl': [168, 20, 14],
  'tail-boom.stl': [232, 18, 16],
  'lower-deck.stl': [136, 98, 4],
  'upper-deck.3mf': [124, 66, 3],
  'camera-tray.obj': [66, 58, 3],
  'tray-bracket.stl': [62, 34, 8.6],
  'tail-yoke.stl': [44, 30, 26],
  'pivot-collar.stl': [28, 26, 22],
  'lens-hood.stl': [34, 30, 24],
  // Three of 18 mm and two gaps of 6 mm.
  'feet.stl': [36, 66, 22],
  'battery-pad.stl': [92, 36, 2.4],
  'gps-mast.stl': [26, 26, 58],
  'damper-cup.stl': [12, 12, 5],
  'wing-root.stl': [170, null, 183],
  'wing-middle.stl': [150, null, 183],
  'wing-tip.stl': [130, null, 183],
  'tail-plane.stl': [64, null, 150],
  'fin.stl': [84, null, 120],
  'tail-seat.stl': [50, 13.4, 19.7],
  'pod-nose.3mf': [46, 52, 60],
  'pod-bay.3mf': [48, 52, 150],
  'pod-tail.3mf': [46, 52, 110],
}
const DRAWN_IN: Readonly<Record<string, LengthUnit>> = {
  'pivot-collar.stl': 'inch',
  'pod-nose.3mf': 'centimetre',
  'pod-bay.3mf': 'centimetre',
  'pod-tail.3mf': 'centimetre',
}
/** Pieces that share corners with nothing else. */
const BODIES: Readonly<Record<string, number>> = { 'feet.stl': 4 }
/** Edges of the stray triangle. */
const OPEN_EDGES: Readonly<Record<string, number>> = { 'feet.stl': 3 }

function load(name: string) {
  const bytes = readFileSync(new URL(`../../public/demo/${name}`, import.meta.url))
  return readMesh(new Uint8Array(bytes), name)
}

function sizeOf(mesh: Mesh): Size {
  const size = [0, 1, 2].map((axis) => {
    const along = [...mesh.positions].filter((_, i) => i % 3 === axis)
    return along.reduce((a, b) => Math.max(a, b)) - along.reduce((a, b) => Math.min(a, b))
  })
  return size as unknown as Size
}

/** Directed edges whose opposite is not there exactly once. */
function openEdges({ indices }: Mesh): number {
  const runs = new Map<string, number>()
  for (let i = 0; i < indices.length; i += 3) {
    for (const [from, to] of [
      [i, i + 1],
      [i + 1, i + 2],
      [i + 2, i],
    ] as const) {
      const key = `${indices[from]} ${indices[to]}`
      runs.set(key, (runs.get(key) ?? 0) + 1)
    }
  }
  return [...runs].filter(
    ([key, count]) => count !== 1 || runs.get(key.split(' ').toReversed().join(' ')) !== 1,
  ).length
}

function countBodies({ indices, positions }: Mesh): number {
  const root = Array.from({ length: positions.length / 3 }, (_, i) => i)
  const find = (i: number): number => {
    let at = i
    while (root[at] !== at) at = root[at] ?? at
    root[i] = at
    return at
  }
  for (let i = 0; i < indices.length; i += 3) {
    const [a = 0, b = 0, c = 0] = indices.subarray(i, i + 3)
    root[find(b)] = find(a)
    root[find(c)] = find(a)
  }
  return new Set([...indices].map(find)).size
}

/** Of the whole mesh, in its own unit, about the origin. */
function signedVolume({ indices, positions }: Mesh): number {
  let sixfold = 0
  const corner = (i: number): Size => {
    const [x = 0, y = 0, z = 0] = positions.subarray(3 * i, 3 * i + 3)
    return [x, y, z]
  }
  for (let i = 0; i < indices.length; i += 3) {
    const [a, b, c] = [...indices.subarray(i, i + 3)].map(corner) as [Size, Size, Size]
    sixfold +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0])
  }
  return sixfold / 6
}

describe.each(Object.entries(SIZES))('demo part %s', (name, size) => {
  const { mesh, unit } = load(name)

  it('has the size it was asked for within 0.5 mm', () => {
    const toMm = unitToMm(DRAWN_IN[name] ?? 'millimetre')
    const actual = sizeOf(mesh).map((length) => length * toMm)
    for (const [axis, wanted] of size.entries()) {
      if (wanted === null) continue
      expect(Math.abs((actual[axis] ?? Number.NaN) - wanted)).toBeLessThan(0.5)
    }
  })

  it('is closed, faces outwards and has the bodies it should', () => {
    expect(openEdges(mesh)).toBe(OPEN_EDGES[name] ?? 0)
    expect(countBodies(mesh)).toBe(BODIES[name] ?? 1)
    expect(signedVolume(mesh)).toBeGreaterThan(0)
  })

  it('states its unit only where the format can', () => {
    expect(unit).toBe(name.endsWith('.3mf') ? (DRAWN_IN[name] ?? 'millimetre') : null)
  })
})

it('meets every reader', () => {
  const formats = new Set<MeshFormat>(Object.keys(SIZES).map((name) => load(name).format))
  expect([...formats].toSorted()).toEqual(['3mf', 'obj', 'stl-ascii', 'stl-binary'])
})

it('draws a front arm that its mirror image cannot be turned into', () => {
  // Lying flat and pointing along x, only a turn about x would swap left and right, and that turns
  // the bottom up.
  const { mesh } = load('front-arm.stl')
  const mirrored = new Set<string>()
  for (let i = 0; i < mesh.positions.length; i += 3) {
    const [x = 0, y = 0, z = 0] = mesh.positions.subarray(i, i + 3)
    mirrored.add(`${x.toFixed(2)} ${(-y + 0).toFixed(2)} ${z.toFixed(2)}`)
  }
  let unmatched = 0
  for (let i = 0; i < mesh.positions.length; i += 3) {
    const [x = 0, y = 0, z = 0] = mesh.positions.subarray(i, i + 3)
    if (!mirrored.has(`${x.toFixed(2)} ${(y + 0).toFixed(2)} ${z.toFixed(2)}`)) unmatched++
  }
  expect(unmatched).toBeGreaterThan(100)
})
