import { describe, expect, test } from 'vitest'
import { isotropic, mixElastic } from '../../../../src/core/stiffness/moduli/elastic.ts'
import type { SolidGrid } from '../../../../src/core/stiffness/solid/types.ts'
import { blockOf, evenLines, pushBlock, shareOf, type Place } from '../../../support/solids.ts'

const E = 2000
const NU = 0.3
const G = E / (2 * (1 + NU))
const PLASTIC = isotropic(E, NU)

/** Mean of one direction over the nodes that are picked. */
function mean(
  places: readonly Place[],
  moves: Float64Array,
  k: number,
  pick: (at: Place) => boolean,
) {
  const values = places.flatMap((place, node) => (pick(place) ? [moves[3 * node + k]!] : []))
  return values.reduce((a, b) => a + b) / values.length
}

/** Held at x = 0 so that the section may narrow, pushed up at the other end by 1 N. */
function cantilever(grid: SolidGrid, middle: readonly [y: number, z: number]): number {
  const [xs, ys, zs] = grid.linesMm
  const end = xs.at(-1)!
  const shares = (y: number, z: number): number => shareOf(ys, y) * shareOf(zs, z)
  let area = 0
  for (const y of ys) for (const z of zs) area += shares(y, z)
  const { places, moves } = pushBlock(
    grid,
    ([x, y, z]) => [x === 0, x === 0 && y === middle[0], x === 0 && z === middle[1]],
    ([x, y, z]) => (x === end ? [0, 0, shares(y, z) / area] : null),
  )
  return mean(places, moves, 2, ([x, , z]) => x === end && z === middle[1])
}

// Timoshenko and Goodier, Theory of Elasticity; shear coefficient 10 (1 + ν) / (12 + 11 ν) of a
// full rectangle: G. R. Cowper, J. Appl. Mech. 33, 1966.
const SHEAR = (10 * (1 + NU)) / (12 + 11 * NU)

describe('against closed forms', () => {
  test.each([
    [48, 4, 4],
    [24, 2, 2],
    [30, 1, 2],
  ])('cantilever in %i × %i × %i cells: F L³ / 3 E I + F L / k G A', (nx, ny, nz) => {
    const [L, B, H] = [120, 12, 10]
    const lines = [evenLines(L, nx), evenLines(B, ny), evenLines(H, nz)] as const
    const got = cantilever(blockOf(lines, PLASTIC), [ny === 1 ? 0 : B / 2, H / 2])
    const exact = L ** 3 / (3 * E * ((B * H ** 3) / 12)) + L / (SHEAR * G * B * H)
    expect(Math.abs(got / exact - 1)).toBeLessThan(0.01)
  })

  test('box beam of one cell a wall: the hollow section’s E I', () => {
    // Long, so that shear is little: the webs' is taken as if they carried it alone.
    const [L, B, H, t] = [200, 16, 12, 1]
    const walls = (side: number, cells: number): Float64Array =>
      Float64Array.from([0, ...evenLines(side - 2 * t, cells).map((at) => at + t), side])
    const ys = walls(B, 4)
    const zs = walls(H, 4)
    const lines = [evenLines(L, 50), ys, zs] as const
    const grid = blockOf(lines, PLASTIC, (_, y, z) => y < t || y > B - t || z < t || z > H - t)
    const end = L
    const rim = (y: number, z: number): boolean => y === 0 || y === B || z === 0 || z === H
    const webs = zs.length
    const { places, moves } = pushBlock(
      grid,
      ([x, y, z]) => [x === 0, x === 0 && rim(y, z), x === 0 && rim(y, z)],
      ([x, y]) => (x === end && (y === 0 || y === B) ? [0, 0, 1 / (2 * webs)] : null),
      1e-6,
    )
    const got = mean(places, moves, 2, ([x]) => x === end)
    const inertia = (B * H ** 3 - (B - 2 * t) * (H - 2 * t) ** 3) / 12
    const exact = L ** 3 / (3 * E * inertia) + L / (G * 2 * t * H)
    expect(Math.abs(got / exact - 1)).toBeLessThan(0.02)
  })

  test('twisted box of one cell a wall: R. Bredt, 4 A² t / s', () => {
    // Long: what the held end does to the section dies out slowly in a thin tube.
    const [L, B, H, t] = [240, 32, 24, 1]
    const walls = (side: number, cells: number): Float64Array =>
      Float64Array.from([0, ...evenLines(side - 2 * t, cells).map((at) => at + t), side])
    const lines = [evenLines(L, 32), walls(B, 6), walls(H, 5)] as const
    const grid = blockOf(lines, PLASTIC, (_, y, z) => y < t || y > B - t || z < t || z > H - t)
    const twist = twistPerMm(grid, L, B, H, true)
    // Thin walls, and what each wall resists by itself (its length times t³ / 3).
    const bredt = (4 * ((B - t) * (H - t)) ** 2 * t) / (2 * (B - t + H - t))
    const own = (2 * (B - t + H - t) * t ** 3) / 3
    expect(Math.abs(1 / (twist * G) / (bredt + own) - 1)).toBeLessThan(0.02)
  })

  test('twisted square bar: Saint-Venant’s 0.1406 a⁴, with the square of the cell', () => {
    // Timoshenko and Goodier, Theory of Elasticity, table of torsion constants: 0.1406.
    const a = 10
    const errors = [2, 4, 8].map((n) => {
      const lines = [evenLines(30, 12), evenLines(a, n), evenLines(a, n)] as const
      return 1 / (twistPerMm(blockOf(lines, PLASTIC), 30, a, a) * G) / (0.140577 * a ** 4) - 1
    })
    expect(Math.abs(errors[2]!)).toBeLessThan(0.02)
    const orders = [Math.log2(errors[0]! / errors[1]!), Math.log2(errors[1]! / errors[2]!)]
    for (const order of orders) expect(order).toBeGreaterThan(1.8)
  })

  test('simply supported square plate: 0.004062 q a⁴ / D', () => {
    // Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., table 8, ν 0.3;
    // shear adds 0.0737 q a² / (k G t) with k = 5/6 (their eq. for thick plates; derived: ∇²w).
    const [a, t] = [100, 3]
    const sides = evenLines(a, 24)
    const lines = [sides, sides, evenLines(t, 2)] as const
    const { places, moves } = pushBlock(
      blockOf(lines, PLASTIC),
      ([x, y, z]) => {
        const [onX, onY] = [x === 0 || x === a, y === 0 || y === a]
        return [onY, onX, (onX || onY) && z === t / 2]
      },
      ([x, y, z]) => (z === t ? [0, 0, -0.01 * shareOf(sides, x) * shareOf(sides, y)] : null),
    )
    const got = -mean(places, moves, 2, ([x, y, z]) => x === a / 2 && y === a / 2 && z === t / 2)
    const D = (E * t ** 3) / (12 * (1 - NU ** 2))
    const exact = (0.0040624 * 0.01 * a ** 4) / D + (0.0737 * 0.01 * a ** 2) / ((5 / 6) * G * t)
    expect(Math.abs(got / exact - 1)).toBeLessThan(0.01)
  })

  test('pulled plate with a hole gives three hole areas more', () => {
    // A round hole in a wide plate adds 3 A σ² / 2 E of energy (J. D. Eshelby, 1957; from Kirsch's
    // stresses), so the ends part by σ L / E · (1 + 3 A / L W). Cells at the rim by their share.
    const [L, W, d] = [60, 60, 9]
    const xs = evenLines(L, 60)
    const lines = [xs, evenLines(W, 60), evenLines(1, 1)] as const
    const rows = 16
    const shareIn = (x: number, y: number): number => {
      let inside = 0
      for (let i = 0; i < 64; i++) {
        const dx = x - L / 2 + ((i % 8) + 0.5) / 8 - 0.5
        const dy = y - W / 2 + (Math.floor(i / 8) + 0.5) / 8 - 0.5
        if (Math.hypot(dx, dy) > d / 2) inside++
      }
      return inside / 64
    }
    const block = blockOf(lines, PLASTIC)
    const cells = block.cells.map((_, cell) =>
      Math.round(rows * shareIn((cell % 60) + 0.5, Math.floor(cell / 60) + 0.5)),
    )
    const moduli = Array.from({ length: rows }, (_, i) => mixElastic([[(i + 1) / rows, PLASTIC]]))
    const { places, moves } = pushBlock(
      { ...block, cells, moduli },
      ([x, y, z]) => [x === 0, x === 0 && y === W / 2, x === 0 && z === 0],
      ([x, y]) => (x === L ? [shareOf(lines[1], y) / 2, 0, 0] : null),
      1e-5,
    )
    const got = mean(places, moves, 0, ([x]) => x === L)
    const more = (3 * Math.PI * (d / 2) ** 2) / (L * W)
    const exact = (L / E) * (1 + more)
    expect(Math.abs(got / exact - 1)).toBeLessThan(0.005)
    expect(Math.abs((got / (L / E) - 1) / more - 1)).toBeLessThan(0.1)
  })
})

/**
 * Twist of a bar under 1 N·mm, radians a mm, over its middle half: ends are as Saint-Venant leaves
 * them. `box`: the torque comes in as Bredt's even flow along the four sides, which bends none.
 */
function twistPerMm(grid: SolidGrid, L: number, B: number, H: number, box = false): number {
  const [, ys, zs] = grid.linesMm
  const places = [...ys].flatMap((y) => [...zs].map((z) => [y, z] as const))
  const forceAt = (y: number, z: number): readonly [number, number] => {
    const [alongY, alongZ] = [shareOf(ys, y), shareOf(zs, z)]
    if (!box) return [-(z - H / 2) * alongY * alongZ, (y - B / 2) * alongY * alongZ]
    const sense = (at: number, side: number): number => (at === 0 ? -1 : at === side ? 1 : 0)
    return [-sense(z, H) * alongY, sense(y, B) * alongZ]
  }
  const torque = places.reduce((sum, [y, z]) => {
    const [fy, fz] = forceAt(y, z)
    return sum + (y - B / 2) * fz - (z - H / 2) * fy
  }, 0)
  const { places: nodes, moves } = pushBlock(
    grid,
    ([x, y, z]) => [x === 0 && y === 0 && z === 0, x === 0, x === 0],
    ([x, y, z]) => {
      const [fy, fz] = forceAt(y, z)
      return x === L ? [0, fy / torque, fz / torque] : null
    },
    1e-6,
  )
  const edge = (at: number, side: number): number =>
    mean(nodes, moves, 2, ([x, y]) => x === at && y === side)
  const turnAt = (at: number): number => (edge(at, B) - edge(at, 0)) / B
  return (turnAt(0.75 * L) - turnAt(0.25 * L)) / (0.5 * L)
}
