/**
 * Splits one face into triangles that keep its winding: a fan where the face is convex, else ear clipping.
 * (G. H. Meisters, "Polygons have ears", 1975: every simple polygon with more than three corners has two.)
 *
 * `positions` is x, y, z per vertex; `corners` are vertex numbers in order round the face.
 * Calls `emit` n − 2 times whatever the face is like. A face that crosses itself has no proper triangles;
 * the ones emitted then still have its outline as their boundary, so volumes stay right.
 */
export function splitFace(
  positions: Float64Array,
  corners: Uint32Array,
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
  clipEars(u, v, (a, b, c) => emit(corners[a]!, corners[b]!, corners[c]!))
}

/** Drops the axis in which the face's area vector (Newell's sum) is longest; the flat face turns left. */
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

/** An outline that only turns left may still go round twice, as a five-pointed star does: a convex one meets each v at most twice. */
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

/** O(n · reflex corners): only a corner that turns right can lie in an ear, and a cut changes its two neighbours only. */
function clipEars(
  u: Float64Array,
  v: Float64Array,
  emit: (a: number, b: number, c: number) => void,
): void {
  const n = u.length
  const next = Int32Array.from({ length: n }, (_, i) => (i + 1) % n)
  const previous = Int32Array.from({ length: n }, (_, i) => (i + n - 1) % n)
  const reflex = new Set<number>()
  const ear = new Uint8Array(n)

  const samePlace = (i: number, j: number) => u[i] === u[j] && v[i] === v[j]
  const isEar = (b: number): boolean => {
    const a = previous[b]!
    const c = next[b]!
    if (!(turn(u, v, a, b, c) > 0)) return false
    for (const p of reflex) {
      if (p === a || p === b || p === c) continue
      // A corner doubled by a bridge to a hole touches the ear and does not lie in it.
      if (samePlace(p, a) || samePlace(p, b) || samePlace(p, c)) continue
      if (turn(u, v, a, b, p) >= 0 && turn(u, v, b, c, p) >= 0 && turn(u, v, c, a, p) >= 0) {
        return false
      }
    }
    return true
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
    // With no ear left (the outline crosses or touches itself) the corner at hand goes: the boundary stays whole.
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
}
