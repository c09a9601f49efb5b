import type { Mesh } from '../model/mesh.ts'
import { NO_BODY, type Bodies } from './bodies.ts'
import { facesUp, heightAt } from './overPoint.ts'
import type { BodySums } from './volume.ts'

/** Looks at a point below a triangle that bodies may still take to find out which lies in which. */
export interface NestEffort {
  left: number
}

/**
 * Some three seconds on a busy core. Two thousand shells of 224 triangles, each inside the next,
 * take 75 million; twenty thousand boxes side by side two million.
 */
const MOST_LOOKS = 100_000_000
/**
 * A large mesh leaves less of the ten seconds for it: so many looks are taken off a triangle, to a
 * fifth at most.
 */
const LOOKS_A_TRIANGLE = 100

export function mostLooks({ indices }: Mesh): number {
  return Math.max(MOST_LOOKS / 5, MOST_LOOKS - (LOOKS_A_TRIANGLE * indices.length) / 3)
}

/**
 * The bodies that hold a body entirely, under the held body's number (nothing where none does): its
 * bounds lie within theirs and all three of its sample points lie inside them. Only bodies listed
 * in `solid` (1 = encloses a volume) hold or are held.
 */
export function findHolders(
  mesh: Mesh,
  bodies: Bodies,
  sums: BodySums,
  solid: Uint8Array,
): ReadonlyMap<number, readonly number[]> {
  const holders = new Map<number, number[]>()
  eachHeld(mesh, bodies, sums, solid, { left: mostLooks(mesh) }, (held, holder) => {
    const known = holders.get(held)
    if (known === undefined) holders.set(held, [holder])
    else known.push(holder)
  })
  return holders
}

/**
 * Tells of every body that another holds (see `findHolders`).
 *
 * A ray goes up from each sample point and the faces it leaves and enters are counted. One holder
 * after the other goes through its own triangles, which find the points they cover through a grid;
 * so the time grows with the triangles and not with triangles × bodies, and what is counted of a
 * holder is one number a point. A map of all pairs, as it was, took 50 s for two thousand shells
 * each inside the next, twenty times as long. Deep nests have as many pairs as their square all the
 * same: once `effort` is used up (it is below 0 then) no more holders are looked at.
 */
export function eachHeld(
  mesh: Mesh,
  bodies: Bodies,
  sums: BodySums,
  solid: Uint8Array,
  effort: NestEffort,
  tell: (held: number, holder: number) => void,
): void {
  const points = samplePoints(mesh, sums, solid)
  if (points.count < 6) return
  const grid = sortIntoCells(points)
  const own = sortByBody(bodies)
  const winding = new Int32Array(points.count)
  const isCrossed = new Uint8Array(points.count)
  const crossed = new Uint32Array(points.count)
  const hits = new Uint8Array(bodies.count)
  for (let holder = 0; holder < bodies.count; holder++) {
    if (solid[holder] === 0) continue
    let count = 0
    for (let i = own.starts[holder]!; i < own.starts[holder + 1]!; i++) {
      if (effort.left < 0) return
      const t = own.triangles[i]!
      crossPoints(mesh, t, holder, sums, points, grid, effort, (point, crossing) => {
        if (isCrossed[point] === 0) {
          isCrossed[point] = 1
          crossed[count++] = point
        }
        winding[point]! += bodies.turned[t] === 1 ? -crossing : crossing
      })
    }
    for (let k = 0; k < count; k++) {
      const held = points.body[crossed[k]!]!
      if (winding[crossed[k]!] !== 0 && ++hits[held]! === 3) tell(held, holder)
    }
    for (let k = 0; k < count; k++) {
      const point = crossed[k]!
      winding[point] = 0
      isCrossed[point] = 0
      hits[points.body[point]!] = 0
    }
  }
}

/** The triangles of each body, one body after the other. */
function sortByBody({ count, bodyOf }: Bodies) {
  const starts = new Uint32Array(count + 1)
  for (const body of bodyOf) if (body !== NO_BODY) starts[body]!++
  for (let body = 1; body <= count; body++) starts[body]! += starts[body - 1]!
  const triangles = new Uint32Array(starts[count]!)
  for (let t = bodyOf.length - 1; t >= 0; t--) {
    const body = bodyOf[t]!
    if (body !== NO_BODY) triangles[--starts[body]!] = t
  }
  return { starts, triangles }
}

/** Three points per solid body: the middles of its sample triangles. */
interface Points {
  readonly count: number
  readonly body: Uint32Array
  readonly x: Float64Array
  readonly y: Float64Array
  readonly z: Float64Array
}

function samplePoints(mesh: Mesh, sums: BodySums, solid: Uint8Array): Points {
  const { positions, indices } = mesh
  let count = 0
  for (const yes of solid) count += 3 * yes
  const body = new Uint32Array(count)
  const x = new Float64Array(count)
  const y = new Float64Array(count)
  const z = new Float64Array(count)
  let point = 0
  for (let sample = 0; sample < sums.samples.length; sample++) {
    const owner = Math.floor(sample / 3)
    if (solid[owner] === 0) continue
    const corner = 3 * sums.samples[sample]!
    const a = 3 * indices[corner]!
    const b = 3 * indices[corner + 1]!
    const c = 3 * indices[corner + 2]!
    body[point] = owner
    x[point] = (positions[a]! + positions[b]! + positions[c]!) / 3
    y[point] = (positions[a + 1]! + positions[b + 1]! + positions[c + 1]!) / 3
    z[point] = (positions[a + 2]! + positions[b + 2]! + positions[c + 2]!) / 3
    point++
  }
  return { count, body, x, y, z }
}

/**
 * Tells of every point of other bodies, within the holder's bounds, that lies below one of its
 * triangles.
 */
function crossPoints(
  { positions, indices }: Mesh,
  t: number,
  holder: number,
  sums: BodySums,
  points: Points,
  grid: ReturnType<typeof sortIntoCells>,
  effort: NestEffort,
  tell: (point: number, crossing: number) => void,
): void {
  const a = 3 * indices[3 * t]!
  const b = 3 * indices[3 * t + 1]!
  const c = 3 * indices[3 * t + 2]!
  const [ax, ay] = [positions[a]!, positions[a + 1]!]
  const [bx, by] = [positions[b]!, positions[b + 1]!]
  const [cx, cy] = [positions[c]!, positions[c + 1]!]
  const firstColumn = grid.column(Math.min(ax, bx, cx))
  const lastColumn = grid.column(Math.max(ax, bx, cx))
  const firstRow = grid.row(Math.min(ay, by, cy))
  const lastRow = grid.row(Math.max(ay, by, cy))
  for (let row = firstRow; row <= lastRow; row++) {
    const from = grid.starts[row * grid.side + firstColumn]!
    const to = grid.starts[row * grid.side + lastColumn + 1]!
    effort.left -= to - from
    for (let i = from; i < to; i++) {
      const point = grid.members[i]!
      const held = points.body[point]!
      if (held === holder || !within(sums.bounds, held, holder)) continue
      const height = heightAt(positions, a, b, c, points.x[point]!, points.y[point]!)
      if (height > points.z[point]!) tell(point, facesUp(positions, a, b, c) ? 1 : -1)
    }
  }
}

/** Whether the bounds of one body lie within those of another. */
export function within(bounds: Float64Array, held: number, holder: number): boolean {
  for (let k = 0; k < 3; k++) {
    if (bounds[6 * held + k]! < bounds[6 * holder + k]!) return false
    if (bounds[6 * held + 3 + k]! > bounds[6 * holder + 3 + k]!) return false
  }
  return true
}

/** A square grid seen from above, about as many cells as points. */
function sortIntoCells(points: Points) {
  const side = Math.min(512, Math.ceil(Math.sqrt(points.count)))
  const column = scaleToCells(points.x, side)
  const row = scaleToCells(points.y, side)
  const cells = Uint32Array.from(points.x, (x, point) => row(points.y[point]!) * side + column(x))
  const starts = new Uint32Array(side * side + 1)
  for (const cell of cells) starts[cell]!++
  for (let cell = 1; cell < starts.length; cell++) starts[cell]! += starts[cell - 1]!
  const members = new Uint32Array(points.count)
  cells.forEach((cell, point) => (members[--starts[cell]!] = point))
  return { side, column, row, starts, members }
}

function scaleToCells(values: Float64Array, side: number): (value: number) => number {
  let low = Infinity
  let high = -Infinity
  for (const value of values) {
    if (value < low) low = value
    if (value > high) high = value
  }
  const factor = high > low ? side / (high - low) : 0
  return (value) => Math.max(0, Math.min(side - 1, Math.floor((value - low) * factor)))
}
