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
  searchNest(mesh, bodies, sums, solid).eachHeld({ left: mostLooks(mesh) }, (held, holder) => {
    const known = holders.get(held)
    if (known === undefined) holders.set(held, [holder])
    else known.push(holder)
  })
  return holders
}

/** A search for bodies that others hold (see `findHolders`), ready to begin. */
export interface NestSearch {
  /** Looks that it takes to its end. */
  readonly looks: number
  /** Tells of every body that another holds. */
  eachHeld(effort: NestEffort, tell: (held: number, holder: number) => void): void
}

/**
 * A ray goes up from each sample point and the faces it leaves and enters are counted. One holder
 * after the other goes through its own triangles, which find the points they cover through a grid;
 * so the time grows with the triangles and not with triangles × bodies, and what is counted of a
 * holder is one number a point. A map of all pairs, as it was, took 50 s for two thousand shells
 * each inside the next, twenty times as long. Deep nests have as many pairs as their square all the
 * same: once `effort` is used up (it is below 0 then) no more holders are looked at.
 */
export function searchNest(
  mesh: Mesh,
  bodies: Bodies,
  sums: BodySums,
  solid: Uint8Array,
): NestSearch {
  const inFile = samplePoints(mesh, sums, solid)
  if (inFile.count < 6) return { looks: 0, eachHeld: () => {} }
  const grid = sortIntoCells(inFile)
  const own = sortByBody(bodies, solid)
  const { points } = grid
  return {
    looks: countLooks(mesh, own.triangles, grid),
    eachHeld(effort, tell) {
      const winding = new Int32Array(points.count)
      const isCrossed = new Uint8Array(points.count)
      const crossed = new Uint32Array(points.count)
      const hits = new Uint8Array(bodies.count)
      for (let holder = 0; holder < bodies.count; holder++) {
        let count = 0
        for (let i = own.starts[holder]!; i < own.starts[holder + 1]!; i++) {
          if (effort.left < 0) return
          const t = own.triangles[i]!
          crossPoints(mesh, t, holder, sums, grid, effort, (point, crossing) => {
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
    },
  }
}

/** The triangles of each solid body, one body after the other. */
function sortByBody({ count, bodyOf }: Bodies, solid: Uint8Array) {
  const starts = new Uint32Array(count + 1)
  for (const body of bodyOf) if (body !== NO_BODY && solid[body] === 1) starts[body]!++
  for (let body = 1; body <= count; body++) starts[body]! += starts[body - 1]!
  const triangles = new Uint32Array(starts[count]!)
  for (let t = bodyOf.length - 1; t >= 0; t--) {
    const body = bodyOf[t]!
    if (body !== NO_BODY && solid[body] === 1) triangles[--starts[body]!] = t
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
  const points = createPoints(count)
  let point = 0
  for (let sample = 0; sample < sums.samples.length; sample++) {
    const owner = Math.floor(sample / 3)
    if (solid[owner] === 0) continue
    const corner = 3 * sums.samples[sample]!
    const a = 3 * indices[corner]!
    const b = 3 * indices[corner + 1]!
    const c = 3 * indices[corner + 2]!
    points.body[point] = owner
    points.x[point] = (positions[a]! + positions[b]! + positions[c]!) / 3
    points.y[point] = (positions[a + 1]! + positions[b + 1]! + positions[c + 1]!) / 3
    points.z[point] = (positions[a + 2]! + positions[b + 2]! + positions[c + 2]!) / 3
    point++
  }
  return points
}

function createPoints(count: number): Points {
  return {
    count,
    body: new Uint32Array(count),
    x: new Float64Array(count),
    y: new Float64Array(count),
    z: new Float64Array(count),
  }
}

/**
 * Tells of every point of other bodies, within the holder's bounds, that lies below one of its
 * triangles.
 */
function crossPoints(
  mesh: Mesh,
  t: number,
  holder: number,
  sums: BodySums,
  grid: Grid,
  effort: NestEffort,
  tell: (point: number, crossing: number) => void,
): void {
  const { positions, indices } = mesh
  const { points, starts, side } = grid
  const a = 3 * indices[3 * t]!
  const b = 3 * indices[3 * t + 1]!
  const c = 3 * indices[3 * t + 2]!
  const { firstColumn, lastColumn, firstRow, lastRow } = cellsBelow(mesh, t, grid)
  const lowest = sums.bounds[6 * holder + 2]!
  const top = Math.max(positions[a + 2]!, positions[b + 2]!, positions[c + 2]!)
  for (let row = firstRow; row <= lastRow; row++) {
    const from = starts[row * side + firstColumn]!
    const to = starts[row * side + lastColumn + 1]!
    effort.left -= to - from
    for (let point = from; point < to; point++) {
      // Bounds lie anywhere in memory, points side by side.
      const z = points.z[point]!
      if (z < lowest || z >= top) continue
      const height = heightAt(positions, a, b, c, points.x[point]!, points.y[point]!)
      if (!(height > z)) continue
      const held = points.body[point]!
      if (held === holder || !within(sums.bounds, held, holder)) continue
      tell(point, facesUp(positions, a, b, c) ? 1 : -1)
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
interface Grid {
  readonly side: number
  readonly column: (x: number) => number
  readonly row: (y: number) => number
  /** Cell after cell, row after row. */
  readonly points: Points
  /** First point of each cell, and where the last one ends. */
  readonly starts: Uint32Array
}

function sortIntoCells({ count, body, x, y, z }: Points): Grid {
  const side = Math.min(512, Math.ceil(Math.sqrt(count)))
  const column = scaleToCells(x, side)
  const row = scaleToCells(y, side)
  const cells = new Uint32Array(count)
  const starts = new Uint32Array(side * side + 1)
  for (let point = 0; point < count; point++) {
    const cell = row(y[point]!) * side + column(x[point]!)
    cells[point] = cell
    starts[cell]!++
  }
  for (let cell = 1; cell < starts.length; cell++) starts[cell]! += starts[cell - 1]!
  const points = createPoints(count)
  for (let point = 0; point < count; point++) {
    const at = --starts[cells[point]!]!
    points.body[at] = body[point]!
    points.x[at] = x[point]!
    points.y[at] = y[point]!
    points.z[at] = z[point]!
  }
  return { side, column, row, points, starts }
}

/** The cells that the bounds of a triangle meet. */
function cellsBelow({ positions, indices }: Mesh, t: number, { column, row }: Grid) {
  const a = 3 * indices[3 * t]!
  const b = 3 * indices[3 * t + 1]!
  const c = 3 * indices[3 * t + 2]!
  const [ax, ay] = [positions[a]!, positions[a + 1]!]
  const [bx, by] = [positions[b]!, positions[b + 1]!]
  const [cx, cy] = [positions[c]!, positions[c + 1]!]
  return {
    firstColumn: column(Math.min(ax, bx, cx)),
    lastColumn: column(Math.max(ax, bx, cx)),
    firstRow: row(Math.min(ay, by, cy)),
    lastRow: row(Math.max(ay, by, cy)),
  }
}

/** Points in the cells below all triangles, told without going through any. */
function countLooks(mesh: Mesh, triangles: Uint32Array, grid: Grid): number {
  const { side, starts } = grid
  // Points left of a column and below a row (F. C. Crow, “Summed-area tables for texture mapping”,
  // SIGGRAPH 1984).
  const wide = side + 1
  const before = new Uint32Array(wide * wide)
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++) {
      const inRow = starts[row * side + column + 1]! - starts[row * side]!
      before[(row + 1) * wide + column + 1] = before[row * wide + column + 1]! + inRow
    }
  }
  let looks = 0
  for (const t of triangles) {
    const { firstColumn, lastColumn, firstRow, lastRow } = cellsBelow(mesh, t, grid)
    const [below, above] = [firstRow * wide, (lastRow + 1) * wide]
    looks += before[above + lastColumn + 1]! - before[above + firstColumn]!
    looks -= before[below + lastColumn + 1]! - before[below + firstColumn]!
  }
  return looks
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
