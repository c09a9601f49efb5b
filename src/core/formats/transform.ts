/**
 * An affine map as 3MF writes it: twelve numbers, four rows of three, for a row vector on the left:
 * x' = x·m0 + y·m3 + z·m6 + m9, and so on for y' and z'. (3MF Core Specification, "3D Matrices".)
 */
export type Transform = readonly number[]

export const IDENTITY: Transform = [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0]

/** The map that does `first` and then `second`. */
export function chain(first: Transform, second: Transform): Transform {
  const result: number[] = []
  for (let row = 0; row < 4; row++) {
    for (let column = 0; column < 3; column++) {
      let sum = row === 3 ? second[9 + column]! : 0
      for (let k = 0; k < 3; k++) sum += first[3 * row + k]! * second[3 * k + column]!
      result.push(sum)
    }
  }
  return result
}

/** Enlarges by `factor` about the origin. */
export function scaling(factor: number): Transform {
  return [factor, 0, 0, 0, factor, 0, 0, 0, factor, 0, 0, 0]
}

/** Volume after over volume before: negative where the map mirrors, zero where it flattens. */
export function determinant(m: Transform): number {
  return (
    m[0]! * (m[4]! * m[8]! - m[5]! * m[7]!) -
    m[1]! * (m[3]! * m[8]! - m[5]! * m[6]!) +
    m[2]! * (m[3]! * m[7]! - m[4]! * m[6]!)
  )
}
