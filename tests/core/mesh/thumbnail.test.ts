import { describe, expect, it } from 'vitest'
import { drawThumbnail } from '../../../src/core/mesh/thumbnail.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'

const SIZE = 96

/** Covered area in pixels: the sum of opacities. */
function coverPx(pixels: Uint8ClampedArray): number {
  let sum = 0
  for (let at = 3; at < pixels.length; at += 4) sum += (pixels[at] ?? 0) / 255
  return sum
}

/** A closed ball of rings × 2·rings quads. */
function ball(radius: number, rings: number): Mesh {
  const around = rings * 2
  const positions: number[] = []
  const indices: number[] = []
  for (let r = 0; r <= rings; r++) {
    const polar = (Math.PI * r) / rings
    for (let a = 0; a < around; a++) {
      const turn = (2 * Math.PI * a) / around
      const s = radius * Math.sin(polar)
      positions.push(s * Math.cos(turn), s * Math.sin(turn), radius * Math.cos(polar))
    }
  }
  for (let r = 0; r < rings; r++) {
    for (let a = 0; a < around; a++) {
      const here = r * around + a
      const next = r * around + ((a + 1) % around)
      indices.push(here, here + around, next, next, here + around, next + around)
    }
  }
  return { positions: new Float64Array(positions), indices: new Uint32Array(indices) }
}

/** An L of two boxes: no mirror plane through x. */
function bracket(): Mesh {
  return joined(
    box([0, 0, 0], [40, 10, 5]),
    box([0, 0, 5], [8, 10, 30]),
    box([30, 2, 5], [36, 8, 9]),
  )
}

type Triple = readonly [number, number, number]

function box([x0, y0, z0]: Triple, [x1, y1, z1]: Triple): Mesh {
  // prettier-ignore
  const positions = new Float64Array([
    x0, y0, z0,  x1, y0, z0,  x1, y1, z0,  x0, y1, z0,
    x0, y0, z1,  x1, y0, z1,  x1, y1, z1,  x0, y1, z1,
  ])
  // prettier-ignore
  const indices = new Uint32Array([
    0, 2, 1,  0, 3, 2,  4, 5, 6,  4, 6, 7,  0, 1, 5,  0, 5, 4,
    1, 2, 6,  1, 6, 5,  2, 3, 7,  2, 7, 6,  3, 0, 4,  3, 4, 7,
  ])
  return { positions, indices }
}

function joined(...meshes: readonly Mesh[]): Mesh {
  const positions = meshes.flatMap((m) => [...m.positions])
  let first = 0
  const indices = meshes.flatMap((m) => {
    const shifted = [...m.indices].map((i) => i + first)
    first += m.positions.length / 3
    return shifted
  })
  return { positions: new Float64Array(positions), indices: new Uint32Array(indices) }
}

function mapped(mesh: Mesh, move: (p: Triple) => Triple): Mesh {
  const positions = new Float64Array(mesh.positions.length)
  for (let i = 0; i < positions.length; i += 3) {
    const { positions: p } = mesh
    positions.set(move([p[i] ?? 0, p[i + 1] ?? 0, p[i + 2] ?? 0]), i)
  }
  return { positions, indices: mesh.indices }
}

function rewound(mesh: Mesh): Mesh {
  return { positions: mesh.positions, indices: mesh.indices.toReversed() }
}

function countDifferent(a: Uint8ClampedArray, b: Uint8ClampedArray, tolerance = 0): number {
  let count = 0
  for (let i = 0; i < a.length; i++) {
    if (Math.abs((a[i] ?? 0) - (b[i] ?? 0)) > tolerance) count++
  }
  return count
}

describe('drawThumbnail', () => {
  it.each([24, 96, 200])('covers the area of a disc for a ball, at %i px', (size) => {
    const discPx = Math.PI * (0.46 * size) ** 2
    const cover = coverPx(drawThumbnail(ball(12, 80), size))
    expect(cover / discPx).toBeGreaterThan(0.985)
    expect(cover / discPx).toBeLessThan(1.015)
  })

  it('covers the area of the hexagon that a cube shows', () => {
    // A parallel projection of a unit cube along the unit vector d covers |dx| + |dy| + |dz| (the
    // three faces seen).
    const az = (32 * Math.PI) / 180
    const el = (33 * Math.PI) / 180
    const shown = Math.cos(el) * (Math.sin(az) + Math.cos(az)) + Math.sin(el)
    const widthMm = Math.sin(az) + Math.cos(az)
    const heightMm = Math.sin(el) * widthMm + Math.cos(el)
    const pxPerMm = (0.92 * SIZE) / Math.max(widthMm, heightMm)
    const cover = coverPx(drawThumbnail(box([0, 0, 0], [1, 1, 1]), SIZE))
    expect(cover / (shown * pxPerMm ** 2)).toBeGreaterThan(0.985)
    expect(cover / (shown * pxPerMm ** 2)).toBeLessThan(1.015)
  })

  it('leaves no pinholes between neighbouring triangles', () => {
    const pixels = drawThumbnail(ball(12, 80), SIZE)
    for (let row = 0; row < SIZE; row++) {
      for (let column = 0; column < SIZE; column++) {
        if (Math.hypot(row + 0.5 - SIZE / 2, column + 0.5 - SIZE / 2) > 0.44 * SIZE) continue
        expect(pixels[(row * SIZE + column) * 4 + 3]).toBe(255)
      }
    }
  })

  it('lights the top of a box more than its front, and the front more than its right side', () => {
    const pixels = drawThumbnail(box([0, 0, 0], [1, 1, 1]), SIZE)
    const green = (x: number, y: number) => pixels[(Math.round(y) * SIZE + Math.round(x)) * 4 + 1]
    const top = green(SIZE * 0.5, SIZE * 0.2)
    const front = green(SIZE * 0.3, SIZE * 0.6)
    const right = green(SIZE * 0.76, SIZE * 0.55)
    expect(top).toBeGreaterThan((front ?? 0) + 10)
    expect(front).toBeGreaterThan((right ?? 0) + 10)
    // Neither black on the dark page nor white on the light one.
    expect(right).toBeGreaterThan(70)
    expect(top).toBeLessThan(190)
  })

  it('is wholly transparent for a mesh without triangles, a single point and coordinates that are not finite', () => {
    const none = { positions: new Float32Array(0), indices: new Uint32Array(0) }
    const point = { positions: new Float32Array(9).fill(4), indices: new Uint32Array([0, 1, 2]) }
    const broken = { positions: new Float32Array(9).fill(NaN), indices: new Uint32Array([0, 1, 2]) }
    for (const mesh of [none, point, broken]) {
      const pixels = drawThumbnail(mesh, SIZE)
      expect(pixels).toHaveLength(SIZE * SIZE * 4)
      expect(pixels.every((value) => value === 0)).toBe(true)
    }
  })

  it('shows a mirrored part as another picture', () => {
    const part = bracket()
    const twin = rewound(mapped(part, ([x, y, z]) => [-x, y, z]))
    expect(countDifferent(drawThumbnail(part, SIZE), drawThumbnail(twin, SIZE), 8)).toBeGreaterThan(
      400,
    )
  })

  it('shows the same picture far from the origin, and in another size', () => {
    const part = bracket()
    const picture = drawThumbnail(part, SIZE)
    const far = mapped(part, ([x, y, z]) => [x + 1e5, y - 1e5, z + 1e5])
    const inches = mapped(part, ([x, y, z]) => [x / 25.4, y / 25.4, z / 25.4])
    expect(countDifferent(drawThumbnail(far, SIZE), picture)).toBe(0)
    // Rounding may move a sample that lies exactly on a boundary.
    expect(countDifferent(drawThumbnail(inches, SIZE), picture, 2)).toBeLessThan(40)
  })

  it('shows an inside-out part like the sound one', () => {
    const part = bracket()
    expect(
      countDifferent(drawThumbnail(rewound(part), SIZE), drawThumbnail(part, SIZE), 2),
    ).toBeLessThan(40)
  })

  it('hides what lies behind', () => {
    const front = box([-20, -20, 0], [20, -15, 60])
    const hidden = box([-2, -10, 10], [2, -8, 30])
    expect(
      countDifferent(drawThumbnail(joined(hidden, front), SIZE), drawThumbnail(front, SIZE), 2),
    ).toBeLessThan(40)
  })

  it.each([
    ['rod', box([0, 0, 0], [1200, 1.2, 1.2])],
    ['mast', box([0, 0, 0], [0.8, 0.8, 900])],
  ])('keeps a thin %s in one piece', (_, mesh) => {
    const pixels = drawThumbnail(mesh, SIZE)
    const tall = mesh.positions.at(-1) === 900
    let lines = 0
    for (let line = 0; line < SIZE; line++) {
      let seen = false
      for (let k = 0; k < SIZE; k++) {
        const at = tall ? line * SIZE + k : k * SIZE + line
        seen ||= (pixels[at * 4 + 3] ?? 0) > 0
      }
      if (seen) lines++
    }
    expect(lines).toBeGreaterThan(0.9 * SIZE)
  })
})
