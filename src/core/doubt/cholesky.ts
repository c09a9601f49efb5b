/**
 * A symmetric positive matrix as the triangle below its diagonal, row by row: entry (i, j ≤ i) at
 * i·(i + 1)/2 + j.
 */
export type Triangle = Float64Array

const at = (i: number, j: number): number => (i * (i + 1)) / 2 + j

/** L of A = L·Lᵗ (A.-L. Cholesky). Throws a RangeError when the matrix is not positive. */
export function factorise(size: number, entry: (i: number, j: number) => number): Triangle {
  const lower = new Float64Array(at(size, 0))
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = entry(i, j)
      for (let k = 0; k < j; k++) rest -= (lower[at(i, k)] ?? 0) * (lower[at(j, k)] ?? 0)
      if (i === j && !(rest > 0)) throw new RangeError(`row ${i} of the matrix is not positive`)
      lower[at(i, j)] = i === j ? Math.sqrt(rest) : rest / (lower[at(j, j)] ?? 1)
    }
  }
  return lower
}

/** y of L·y = b. Then aᵗ·A⁻¹·b is the product of the two solutions. */
export function forwards(lower: Triangle, b: ArrayLike<number>): Float64Array {
  const y = Float64Array.from(b)
  for (let i = 0; i < y.length; i++) {
    let rest = y[i] ?? 0
    for (let k = 0; k < i; k++) rest -= (lower[at(i, k)] ?? 0) * (y[k] ?? 0)
    y[i] = rest / (lower[at(i, i)] ?? 1)
  }
  return y
}

/** x of Lᵗ·x = y. */
export function backwards(lower: Triangle, y: ArrayLike<number>): Float64Array {
  const x = Float64Array.from(y)
  for (let i = x.length - 1; i >= 0; i--) {
    let rest = x[i] ?? 0
    for (let k = i + 1; k < x.length; k++) rest -= (lower[at(k, i)] ?? 0) * (x[k] ?? 0)
    x[i] = rest / (lower[at(i, i)] ?? 1)
  }
  return x
}

/** Product of two vectors of one length. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0)
  return sum
}
