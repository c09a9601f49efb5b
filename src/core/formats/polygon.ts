/** Steps of looking for corners in ears that the faces of one file may still take. */
export interface FaceEffort {
  left: number
}

/**
 * Some four seconds; a comb of 20,000 corners, the worst shape known, takes 122 million and 1.6 s.
 */
const MOST_STEPS = 300_000_000
/**
 * Steps of most faces, a corner: gears, spirals and noise took 24 to 300, so these do not count.
 */
const STEPS_A_CORNER = 300

/** What is to be handed over with every face of a file. */
export function faceEffort(): FaceEffort {
  return { left: MOST_STEPS }
}

/**
 * Splits one face into triangles that keep its winding: a fan where the face is convex, else ear
 * clipping. (G. H. Meisters, "Polygons have ears", 1975: every simple polygon with more than three
 * corners has two.)
 *
 * `positions` is x, y, z per vertex; `corners` are vertex numbers in order round the face. Calls
 * `emit` n − 2 times whatever the face is like. A face that crosses itself has no proper triangles;
 * the ones emitted then still have its outline as their boundary, so volumes stay right. The same
 * holds once `effort` is used up: corners that turn left are then cut off without looking what lies
 * in them.
 */
export function splitFace(
  positions: Float64Array,
  corners: Uint32Array,
  effort: FaceEffort,
  emit: (a: number, b: number, c: number) => void,
): void {
  const n = corners.length
  if (n < 3) return
  if (n === 3) {
    emit(corners[0]!, corners[1]!, corners[2]!)
    return
  }
  const { u, v } = project(positions, corners)
  let convex = true
  for (let i = 0; i < n && convex; i++) {
    convex = turn(u, v, (i + n - 1) % n, i, (i + 1) % n) > 0
  }
  if (convex && turnsOnce(u, v)) {
    for (let i = 1; i < n - 1; i++) emit(corners[0]!, corners[i]!, corners[i + 1]!)
    return
  }
  clipEars(u, v, effort, (a, b, c) => emit(corners[a]!, corners[b]!, corners[c]!))
}

/**
 * Drops the axis in which the face's area vector (Newell's sum) is longest; the flat face turns
 * left.
 */
function project(positions: Float64Array, corners: Uint32Array) {
  const n = corners.length
  const u = new Float64Array(n)
  const v = new Float64Array(n)
  // Measured from the first corner, so that a face far away loses nothing.
  const o = 3 * corners[0]!
  const at = (i: number, axis: number) => positions[3 * corners[i]! + axis]! - positions[o + axis]!
  let x = 0
  let y = 0
  let z = 0
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n
    x += (at(i, 1) - at(j, 1)) * (at(i, 2) + at(j, 2))
    y += (at(i, 2) - at(j, 2)) * (at(i, 0) + at(j, 0))
    z += (at(i, 0) - at(j, 0)) * (at(i, 1) + at(j, 1))
  }
  const axis =
    Math.abs(x) >= Math.abs(y) && Math.abs(x) >= Math.abs(z)
      ? 0
      : Math.abs(y) >= Math.abs(z)
        ? 1
        : 2
  const along = [x, y, z][axis]! < 0 ? -1 : 1
  for (let i = 0; i < n; i++) {
    u[i] = along * at(i, (axis + 1) % 3)
    v[i] = at(i, (axis + 2) % 3)
  }
  return { u, v }
}

/** Twice the signed area of the triangle a, b, c: positive where the path turns left at b. */
function turn(u: Float64Array, v: Float64Array, a: number, b: number, c: number): number {
  return (u[b]! - u[a]!) * (v[c]! - v[b]!) - (v[b]! - v[a]!) * (u[c]! - u[b]!)
}

/**
 * An outline that only turns left may still go round twice, as a five-pointed star does: a convex
 * one meets each v at most twice.
 */
function turnsOnce(u: Float64Array, v: Float64Array): boolean {
  let changes = 0
  const n = u.length
  for (let i = 0; i < n; i++) {
    const before = v[i]! - v[(i + n - 1) % n]!
    const after = v[(i + 1) % n]! - v[i]!
    if (before > 0 !== after > 0) changes++
  }
  return changes <= 2
}

/**
 * Only a corner that turns right can lie in an ear, and a cut changes its two neighbours only.
 * Those corners are looked up by cells, so that a gear of 20,000 corners takes 0.04 s, a spiral 0.2
 * s and a comb 1 s, where looking through all of them took 3, 8 and 5 s. The kept library for this
 * work (earcut) leaves out corners on straight lines, and the faces next to them would then stand
 * open.
 */
function clipEars(
  u: Float64Array,
  v: Float64Array,
  effort: FaceEffort,
  emit: (a: number, b: number, c: number) => void,
): void {
  const n = u.length
  const next = Int32Array.from({ length: n }, (_, i) => (i + 1) % n)
  const previous = Int32Array.from({ length: n }, (_, i) => (i + n - 1) % n)
  const given = effort.left
  effort.left += n * STEPS_A_CORNER
  const reflex = createCells(u, v, effort)
  const ear = new Uint8Array(n)

  const samePlace = (i: number, j: number) => u[i] === u[j] && v[i] === v[j]
  const isEar = (b: number): boolean => {
    const a = previous[b]!
    const c = next[b]!
    if (!(turn(u, v, a, b, c) > 0)) return false
    if (effort.left <= 0) return true
    return !reflex.some(a, b, c, (p) => {
      if (p === a || p === b || p === c) return false
      // A corner doubled by a bridge to a hole touches the ear and does not lie in it.
      if (samePlace(p, a) || samePlace(p, b) || samePlace(p, c)) return false
      return turn(u, v, a, b, p) >= 0 && turn(u, v, b, c, p) >= 0 && turn(u, v, c, a, p) >= 0
    })
  }
  const judge = (i: number) => {
    if (turn(u, v, previous[i]!, i, next[i]!) > 0) reflex.delete(i)
    else reflex.add(i)
  }

  for (let i = 0; i < n; i++) judge(i)
  for (let i = 0; i < n; i++) ear[i] = isEar(i) ? 1 : 0

  let at = 0
  let idle = 0
  for (let left = n; left > 3;) {
    // With no ear left (the outline crosses or touches itself) the corner at hand goes: the
    // boundary stays whole.
    if (ear[at] === 1 || idle > left) {
      const a = previous[at]!
      const c = next[at]!
      emit(a, at, c)
      next[a] = c
      previous[c] = a
      reflex.delete(at)
      judge(a)
      judge(c)
      ear[a] = isEar(a) ? 1 : 0
      ear[c] = isEar(c) ? 1 : 0
      left--
      idle = 0
      // Going on beyond the neighbour spreads the cuts instead of fanning needles from one corner.
      at = next[c]!
    } else {
      at = next[at]!
      idle++
    }
  }
  emit(previous[at]!, at, next[at]!)
  effort.left = Math.min(given, effort.left)
}

/** Corners sorted into square cells, about as many as there are corners. */
interface Cells {
  add(corner: number): void
  delete(corner: number): void
  /** Whether any of them that may lie in the triangle passes the test. */
  some(a: number, b: number, c: number, test: (corner: number) => boolean): boolean
}

const NONE = -1

function createCells(u: Float64Array, v: Float64Array, effort: FaceEffort): Cells {
  const n = u.length
  const [uLow, uHigh] = endsOf(u)
  const [vLow, vHigh] = endsOf(v)
  const side = Math.sqrt(((uHigh - uLow) * (vHigh - vLow)) / n)
  const cellOf = (at: number, low: number, high: number): number => {
    const most = Math.min(n - 1, Math.floor((high - low) / side))
    return side > 0 ? Math.min(most, Math.floor((at - low) / side)) : 0
  }
  const columnOf = (at: number): number => cellOf(at, uLow, uHigh)
  const rowOf = (at: number): number => cellOf(at, vLow, vHigh)
  const columns = columnOf(uHigh) + 1
  // Each cell's corners are a list: the first one by cell, the others by the corner before them.
  const first = new Int32Array(columns * (rowOf(vHigh) + 1)).fill(NONE)
  const after = new Int32Array(n).fill(NONE)
  const before = new Int32Array(n).fill(NONE)
  const isIn = new Uint8Array(n)
  const cell = (corner: number): number => rowOf(v[corner]!) * columns + columnOf(u[corner]!)
  return {
    add(corner) {
      if (isIn[corner] === 1) return
      isIn[corner] = 1
      const at = cell(corner)
      const second = first[at]!
      first[at] = corner
      before[corner] = NONE
      after[corner] = second
      if (second !== NONE) before[second] = corner
    },
    delete(corner) {
      if (isIn[corner] === 0) return
      isIn[corner] = 0
      const [left, right] = [before[corner]!, after[corner]!]
      if (left === NONE) first[cell(corner)] = right
      else after[left] = right
      if (right !== NONE) before[right] = left
    },
    some(a, b, c, test) {
      const lastColumn = columnOf(Math.max(u[a]!, u[b]!, u[c]!))
      const lastRow = rowOf(Math.max(v[a]!, v[b]!, v[c]!))
      const firstColumn = columnOf(Math.min(u[a]!, u[b]!, u[c]!))
      for (let row = rowOf(Math.min(v[a]!, v[b]!, v[c]!)); row <= lastRow; row++) {
        effort.left -= lastColumn - firstColumn + 1
        for (let column = firstColumn; column <= lastColumn; column++) {
          for (let p = first[row * columns + column]!; p !== NONE; p = after[p]!) {
            effort.left--
            if (test(p)) return true
          }
        }
      }
      return false
    },
  }
}

function endsOf(values: Float64Array): readonly [low: number, high: number] {
  let low = Infinity
  let high = -Infinity
  for (const value of values) {
    if (value < low) low = value
    if (value > high) high = value
  }
  return [low, high]
}
