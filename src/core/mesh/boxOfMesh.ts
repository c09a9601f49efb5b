import type { Bounds, Mesh, Vec3 } from '../model/mesh.ts'

/**
 * Box round the vertices that triangles use; a file may list others. Infinite and empty without
 * triangles.
 */
export function boxOfMesh({ positions, indices }: Mesh): Bounds {
  const min: [number, number, number] = [Infinity, Infinity, Infinity]
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  for (const index of indices) {
    for (let k = 0; k < 3; k++) {
      const value = positions[3 * index + k]!
      if (value < min[k]!) min[k] = value
      if (value > max[k]!) max[k] = value
    }
  }
  return { min, max }
}

/** The same in mm. */
export function boxInMm(mesh: Mesh, scaleToMm: number): Bounds {
  const { min, max } = boxOfMesh(mesh)
  const scaled = ([x, y, z]: Vec3): Vec3 => [x * scaleToMm, y * scaleToMm, z * scaleToMm]
  return { min: scaled(min), max: scaled(max) }
}

export function middleOf({ min, max }: Bounds): Vec3 {
  return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2]
}

const AXES = { x: 0, y: 1, z: 2 } as const

/** A coordinate so far (0–1) along a side of a box, mm. */
export function alongBox({ min, max }: Bounds, axis: 'x' | 'y' | 'z', share: number): number {
  const k = AXES[axis]
  return min[k] + share * (max[k] - min[k])
}
