import type { Vec3 } from '../../model/mesh.ts'
import type { Level } from '../solid/types.ts'
import type { Grip } from './types.ts'

/** A screw's head reaches so far beyond its bore; coarse cells need at least their own size. mm */
const HEAD_RING_MM = 1.2

/** Turned by `turnDeg` against x and y of the bed. */
export function turnPoint([x, y, z]: Vec3, turnDeg: number): Vec3 {
  const angle = (turnDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return [x * cos + y * sin, y * cos - x * sin, z]
}

/** Numbers of the nodes a grip takes hold of; none where it misses all cells. */
export function gripNodes(level: Level, turnDeg: number, grip: Grip): number[] {
  const { linesMm, lineOf, nodes, size } = level
  const place = (node: number): Vec3 => [
    linesMm[0][lineOf[3 * node]!]!,
    linesMm[1][lineOf[3 * node + 1]!]!,
    linesMm[2][lineOf[3 * node + 2]!]!,
  ]
  const cellMm = Math.max(
    ...linesMm.map((lines, k) => (lines.at(-1)! - lines[0]!) / Math.max(1, size[k]!)),
  )
  const taken: number[] = []
  if (grip.kind === 'bores') {
    const ring = Math.max(HEAD_RING_MM, cellMm)
    const bores = grip.bores.map(({ centreMm, axis, diameterMm, depthMm }) => ({
      centre: turnPoint(centreMm, turnDeg),
      axis: turnPoint(axis, turnDeg),
      reach: diameterMm / 2 + ring,
      half: depthMm / 2 + cellMm / 2,
    }))
    for (let node = 0; node < nodes; node++) {
      const at = place(node)
      const isIn = bores.some(({ centre, axis, reach, half }) => {
        const away = at.map((value, k) => value - centre[k]!)
        const along = away.reduce((sum, value, k) => sum + value * axis[k]!, 0)
        const across = Math.hypot(...away.map((value, k) => value - along * axis[k]!))
        return Math.abs(along) <= half && across <= reach
      })
      if (isIn) taken.push(node)
    }
    return taken
  }
  const outward = turnPoint(grip.outward, turnDeg)
  const along = (node: number): number =>
    place(node).reduce((sum, at, k) => sum + at * outward[k]!, 0)
  let high = -Infinity
  for (let node = 0; node < nodes; node++) high = Math.max(high, along(node))
  const least = high - grip.depthMm - 1e-6
  for (let node = 0; node < nodes; node++) if (along(node) >= least) taken.push(node)
  return taken
}
