import type { Mesh } from '../../src/core/model/mesh.ts'

/**
 * The textbook sum of the tetrahedra between each triangle and the origin: positive when the faces
 * look outward.
 */
export function signedVolume({ positions, indices }: Mesh): number {
  let six = 0
  for (let i = 0; i < indices.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => {
      const v = 3 * (indices[i + k] ?? NaN)
      return [positions[v] ?? NaN, positions[v + 1] ?? NaN, positions[v + 2] ?? NaN] as const
    }) as [Corner, Corner, Corner]
    six +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0])
  }
  return six / 6
}

type Corner = readonly [number, number, number]
