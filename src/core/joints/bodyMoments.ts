import type { Mesh, Vec3 } from '../model/mesh.ts'
import { mapPoint, type RigidMap } from '../mesh/rigidMaps.ts'
import { lengthOf, minus } from '../model/vectors.ts'

/** How the solid lies about its middle: enough to tell whether a turn leaves it as it is. mm */
export interface BodyMoments {
  readonly centreMm: Vec3
  /** Mean square distance from the middle, its root. */
  readonly gyrationMm: number
  /** Means of x·x, x·y … (9) and of x·x·x, x·x·y … (27) about the middle. */
  readonly second: readonly number[]
  readonly third: readonly number[]
}

const AXES = [0, 1, 2] as const

/** Sums over the tetrahedra from one point to each triangle: exact for a closed mesh. */
export function bodyMoments(mesh: Mesh): BodyMoments {
  const first = sums(mesh, [0, 0, 0], false)
  const centreMm: Vec3 = [first.x / first.volume, first.y / first.volume, first.z / first.volume]
  const { volume, second, third } = sums(mesh, centreMm, true)
  return {
    centreMm,
    gyrationMm: Math.sqrt(Math.abs((second[0]! + second[4]! + second[8]!) / volume)),
    second: second.map((value) => value / volume),
    third: third.map((value) => value / volume),
  }
}

function sums({ positions, indices }: Mesh, about: Vec3, all: boolean) {
  let [volume, x, y, z] = [0, 0, 0, 0]
  const second = Array.from({ length: 9 }, () => 0)
  const third = Array.from({ length: 27 }, () => 0)
  const p = [0, 0, 0]
  const q = [0, 0, 0]
  const r = [0, 0, 0]
  const s = [0, 0, 0]
  for (let t = 0; t < indices.length; t += 3) {
    for (const k of AXES) {
      p[k] = positions[3 * indices[t]! + k]! - about[k]
      q[k] = positions[3 * indices[t + 1]! + k]! - about[k]
      r[k] = positions[3 * indices[t + 2]! + k]! - about[k]
      s[k] = p[k] + q[k] + r[k]
    }
    const six =
      p[0]! * (q[1]! * r[2]! - q[2]! * r[1]!) +
      p[1]! * (q[2]! * r[0]! - q[0]! * r[2]!) +
      p[2]! * (q[0]! * r[1]! - q[1]! * r[0]!)
    volume += six / 6
    x += (six * s[0]!) / 24
    y += (six * s[1]!) / 24
    z += (six * s[2]!) / 24
    if (!all) continue
    const pairs = (i: number, j: number) => p[i]! * p[j]! + q[i]! * q[j]! + r[i]! * r[j]!
    for (const i of AXES) {
      for (let j = i; j < 3; j++) {
        const ij = pairs(i, j)
        second[3 * i + j]! += (six * (ij + s[i]! * s[j]!)) / 120
        for (let k = j; k < 3; k++) {
          const ijk = p[i]! * p[j]! * p[k]! + q[i]! * q[j]! * q[k]! + r[i]! * r[j]! * r[k]!
          const mixed = ij * s[k]! + pairs(i, k) * s[j]! + pairs(j, k) * s[i]!
          third[9 * i + 3 * j + k]! += (six * (s[i]! * s[j]! * s[k]! + mixed + 2 * ijk)) / 720
        }
      }
    }
  }
  for (const i of AXES) {
    for (const j of AXES) {
      const [low, high] = i < j ? [i, j] : [j, i]
      second[3 * i + j] = second[3 * low + high]!
      for (const k of AXES) {
        const [a, b, c] = [i, j, k].toSorted((one, other) => one - other)
        third[9 * i + 3 * j + k] = third[9 * a! + 3 * b! + c!]!
      }
    }
  }
  return { volume, x, y, z, second, third }
}

/**
 * How far a figure of a body that fits on itself may differ, as a share of its size; its middle, in
 * mm.
 */
const SAME = 1e-4
const SAME_MM = 0.03

/** Whether a map lays the body on itself, as far as middle, second and third moments tell. */
export function isSymmetry(body: BodyMoments, map: RigidMap): boolean {
  const { centreMm, gyrationMm, second, third } = body
  const moved = mapPoint(map, centreMm)
  if (lengthOf(minus(moved, centreMm)) > SAME_MM) return false
  const m = map.matrix
  for (const i of AXES) {
    for (const j of AXES) {
      let sum = 0
      for (const a of AXES) {
        for (const b of AXES) sum += m[3 * i + a]! * m[3 * j + b]! * second[3 * a + b]!
      }
      if (Math.abs(sum - second[3 * i + j]!) > SAME * gyrationMm ** 2) return false
      for (const k of AXES) {
        let cubes = 0
        for (const a of AXES) {
          for (const b of AXES) {
            const ab = m[3 * i + a]! * m[3 * j + b]!
            for (const c of AXES) cubes += ab * m[3 * k + c]! * third[9 * a + 3 * b + c]!
          }
        }
        if (Math.abs(cubes - third[9 * i + 3 * j + k]!) > SAME * gyrationMm ** 3) return false
      }
    }
  }
  return true
}
