export interface EigenPair {
  readonly value: number
  /** By vector of the basis. */
  readonly shares: Float64Array
}

/** Directions of the basis that are this near to being none. */
const SAME = 1e-10

/**
 * The smallest values of K·s = value·M·s over a small basis that may be nearly dependent: M is
 * diagonalised first and what has no size in it is left out. Ascending, at most `wanted`.
 */
export function smallestPairs(
  size: number,
  stiffness: (i: number, j: number) => number,
  mass: (i: number, j: number) => number,
  wanted: number,
): EigenPair[] {
  const scale = Float64Array.from({ length: size }, (_, i) => 1 / Math.sqrt(mass(i, i)))
  const usable = scale.map((value) => (Number.isFinite(value) ? value : 0))
  const square = (entry: (i: number, j: number) => number): Float64Array[] => {
    const rows = Array.from({ length: size }, () => new Float64Array(size))
    for (let i = 0; i < size; i++) {
      for (let j = 0; j <= i; j++) {
        const both = usable[i]! * usable[j]!
        const value = both > 0 ? entry(i, j) * both : 0
        rows[i]![j] = value
        rows[j]![i] = value
      }
    }
    return rows
  }
  const k = square(stiffness)
  const whiten = jacobiPairs(square(mass))
    .filter(({ value }) => value > SAME)
    .map(({ value, shares }) => shares.map((share) => share / Math.sqrt(value)))
  const reduced = whiten.map((a) => {
    const ka = k.map((row) => row.reduce((sum, value, j) => sum + value * a[j]!, 0))
    return Float64Array.from(whiten, (b) => b.reduce((sum, value, i) => sum + value * ka[i]!, 0))
  })
  return jacobiPairs(reduced)
    .toSorted((a, b) => a.value - b.value)
    .slice(0, wanted)
    .map(({ value, shares }) => ({
      value,
      shares: Float64Array.from(
        { length: size },
        (_, i) => usable[i]! * whiten.reduce((sum, a, w) => sum + shares[w]! * a[i]!, 0),
      ),
    }))
}

/**
 * All values and unit vectors of a small symmetric matrix, by rotations (C. G. J. Jacobi, 1846).
 */
function jacobiPairs(matrix: readonly Float64Array[]): EigenPair[] {
  const size = matrix.length
  const a = matrix.map((row) => row.slice())
  const v = Array.from({ length: size }, (_, i) => {
    const row = new Float64Array(size)
    row[i] = 1
    return row
  })
  for (let sweep = 0; sweep < 40; sweep++) {
    let off = 0
    let on = 0
    for (let i = 0; i < size; i++) {
      on += a[i]![i]! ** 2
      for (let j = 0; j < i; j++) off += a[i]![j]! ** 2
    }
    if (off <= 1e-26 * on) break
    for (let p = 0; p < size; p++) {
      for (let q = p + 1; q < size; q++) rotate(a, v, p, q)
    }
  }
  return v.map((shares, i) => ({ value: a[i]![i]!, shares }))
}

function rotate(
  a: readonly Float64Array[],
  v: readonly Float64Array[],
  p: number,
  q: number,
): void {
  const between = a[p]![q]!
  if (between === 0) return
  const theta = (a[q]![q]! - a[p]![p]!) / (2 * between)
  const t = Math.sign(theta || 1) / (Math.abs(theta) + Math.hypot(theta, 1))
  const c = 1 / Math.hypot(t, 1)
  const s = t * c
  for (const row of a) {
    const [x, y] = [row[p]!, row[q]!]
    row[p] = c * x - s * y
    row[q] = s * x + c * y
  }
  for (const rows of [a, v]) {
    const [rp, rq] = [rows[p]!, rows[q]!]
    for (let k = 0; k < rp.length; k++) {
      const [x, y] = [rp[k]!, rq[k]!]
      rp[k] = c * x - s * y
      rq[k] = s * x + c * y
    }
  }
}
