import type { Mesh } from '../model/mesh.ts'

/** Every triangle facing the other way: what turns inwards on it turns outwards on the part. */
export function turnedOver({ positions, indices }: Mesh): Mesh {
  const turned = indices.slice()
  for (let i = 0; i < turned.length; i += 3) {
    turned[i + 1] = indices[i + 2]!
    turned[i + 2] = indices[i + 1]!
  }
  return { positions, indices: turned }
}
