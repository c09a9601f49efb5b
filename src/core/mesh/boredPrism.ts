import type { Mesh } from '../model/mesh.ts'

/** A point of a level plane. mm */
export type Flat = readonly [x: number, y: number]

/** A round hole in one of a prism's two faces. */
export interface PrismHole {
  readonly at: Flat
  readonly radiusMm: number
}

/**
 * A convex piece of a face, counter-clockwise as seen from above, with at most one hole inside it.
 */
export interface PrismCell {
  readonly corners: readonly Flat[]
  readonly hole: PrismHole | null
}

/** A face of a prism, divided into cells; all of them together have the prism's outline. */
export interface PrismFace {
  readonly cells: readonly PrismCell[]
  /** How deep its holes are; of a negative depth they stand out as pegs. Null: right through. */
  readonly depthMm: number | null
}

/** Facets of a round. */
export const ROUND_FACETS = 48

/**
 * A closed mesh that stands on z = 0, in mm and faced outwards. Where holes go right through, both
 * faces must have them in the same places.
 *
 * @param outline counter-clockwise; corners of its cells that lie on it are among these points.
 */
export function boredPrism(
  outline: readonly Flat[],
  heightMm: number,
  bottom: PrismFace,
  top: PrismFace,
): Mesh {
  const positions: number[] = []
  const indices: number[] = []
  const known = new Map<string, number>()
  const vertex = ([x, y]: Flat, z: number): number => {
    const key = [x, y, z].map((value) => Math.round(value * 1e6)).join(' ')
    const before = known.get(key)
    if (before !== undefined) return before
    const made = positions.push(x, y, z) / 3 - 1
    known.set(key, made)
    return made
  }
  const triangle = (z: number, isUp: boolean, [a, b, c]: readonly [Flat, Flat, Flat]): void => {
    const [one, two, three] = [vertex(a, z), vertex(b, z), vertex(c, z)]
    indices.push(one, ...(isUp ? [two, three] : [three, two]))
  }
  /** Between two loops that lie above each other; it faces outwards of the loop. */
  const wall = (loop: readonly Flat[], low: number, high: number, isInside = false): void => {
    loop.forEach((from, i) => {
      const to = loop[(i + 1) % loop.length] ?? from
      const [a, b, c, d] = [
        vertex(from, low),
        vertex(to, low),
        vertex(to, high),
        vertex(from, high),
      ]
      indices.push(...(isInside ? [a, c, b, a, d, c] : [a, b, c, a, c, d]))
    })
  }
  const disc = (loop: readonly Flat[], z: number, isUp: boolean): void => {
    for (let i = 2; i < loop.length; i++) triangle(z, isUp, [loop[0]!, loop[i - 1]!, loop[i]!])
  }
  wall(outline, 0, heightMm)
  for (const isUp of [false, true]) {
    const { cells, depthMm } = isUp ? top : bottom
    const z = isUp ? heightMm : 0
    for (const { corners, hole } of cells) {
      if (hole === null) {
        disc(corners, z, isUp)
        continue
      }
      const rim = roundOf(hole)
      for (const each of ringBetween(corners, rim, hole.at)) triangle(z, isUp, each)
      if (depthMm === null) {
        if (!isUp) wall(rim, 0, heightMm, true)
        continue
      }
      const far = isUp ? heightMm - depthMm : depthMm
      const isPeg = depthMm < 0
      wall(rim, Math.min(z, far), Math.max(z, far), !isPeg)
      disc(rim, far, isUp)
    }
  }
  return { positions: Float64Array.from(positions), indices: Uint32Array.from(indices) }
}

/** Corners of a round, counter-clockwise, the first at angle 0. */
export function roundOf({ at: [x, y], radiusMm }: PrismHole): readonly Flat[] {
  return Array.from({ length: ROUND_FACETS }, (_, i): Flat => {
    const angle = (2 * Math.PI * i) / ROUND_FACETS
    return [x + radiusMm * Math.cos(angle), y + radiusMm * Math.sin(angle)]
  })
}

/**
 * Triangles between a convex outline and a round inside it, by the angle at which both are seen
 * from its middle.
 */
function ringBetween(
  outer: readonly Flat[],
  inner: readonly Flat[],
  middle: Flat,
): readonly (readonly [Flat, Flat, Flat])[] {
  const seen = (loop: readonly Flat[]) => {
    const angleOf = ([x, y]: Flat): number => Math.atan2(y - middle[1], x - middle[0])
    const sorted = loop
      .map((point) => ({ point, angle: angleOf(point) }))
      .toSorted((one, other) => one.angle - other.angle)
    const first = sorted[0]!
    return [...sorted, { point: first.point, angle: first.angle + 2 * Math.PI }]
  }
  const [far, near] = [seen(outer), seen(inner)]
  const found: (readonly [Flat, Flat, Flat])[] = []
  for (let i = 0, j = 0; i + 1 < far.length || j + 1 < near.length;) {
    const goesFar =
      j + 1 >= near.length || (i + 1 < far.length && far[i + 1]!.angle <= near[j + 1]!.angle)
    if (goesFar) {
      found.push([far[i]!.point, far[i + 1]!.point, near[j]!.point])
      i++
    } else {
      found.push([far[i]!.point, near[j + 1]!.point, near[j]!.point])
      j++
    }
  }
  return found
}
