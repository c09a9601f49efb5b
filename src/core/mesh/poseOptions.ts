import type { Mesh, Vec3 } from '../model/mesh.ts'
import type { Pose } from '../model/settings.ts'
import { restingFaces, type RestingFace } from './faces.ts'
import { findHoles, type Hole } from './holes/findHoles.ts'
import { findOverhang } from './overhang.ts'
import { FACE_POSES } from './pose.ts'

/** A way to lay a part down, and what speaks for it. */
export interface PoseOption {
  /** Such as “On its left side”. */
  readonly name: string
  readonly pose: Pose
  /** On the bed. */
  readonly flatAreaMm2: number
  readonly heightMm: number
  /**
   * Surface that faces down more steeply than it may and does not lie on the bed; roofs that bridge
   * a gap are in it.
   */
  readonly overhangMm2: number
  /** Round bores that stand upright, of all. */
  readonly holesUpright: number
  readonly holes: number
}

const MOST_OPTIONS = 6
const UPRIGHT_COS = Math.cos((5 * Math.PI) / 180)

/**
 * The ways a part can lie, best first: much flat on the bed, little overhang, round holes upright,
 * where they come out round.
 *
 * @param mesh in mm, faced outwards.
 */
export function poseOptions(mesh: Mesh, supportAngleDeg: number): readonly PoseOption[] {
  const faces = restingFaces(mesh)
  const holes = findHoles(mesh)
  const areaMm2 = faces.reduce((most, face) => Math.max(most, face.flatAreaMm2), 0)
  const options = faces
    .slice(0, 2 * MOST_OPTIONS)
    .map((face) => ({ option: describe(mesh, face, holes, supportAngleDeg), face }))
  return options
    .map(({ option }) => ({ option, score: scoreOf(option, areaMm2) }))
    .toSorted((a, b) => b.score - a.score)
    .slice(0, MOST_OPTIONS)
    .map(({ option }) => option)
}

/**
 * Overhang costs more than contact brings: it is paid in support and in a rough underside. Ours.
 */
function scoreOf(option: PoseOption, largestFlatMm2: number): number {
  const upright = option.holes === 0 ? 1 : option.holesUpright / option.holes
  return (
    option.flatAreaMm2 / largestFlatMm2 - (2 * option.overhangMm2) / largestFlatMm2 + 0.5 * upright
  )
}

function describe(
  mesh: Mesh,
  { normal, flatAreaMm2, heightMm, pose }: RestingFace,
  holes: readonly Hole[],
  supportAngleDeg: number,
): PoseOption {
  const upright = holes.filter(
    ({ axis }) =>
      Math.abs(axis[0] * normal[0] + axis[1] * normal[1] + axis[2] * normal[2]) > UPRIGHT_COS,
  )
  return {
    name: nameOf(pose, normal),
    pose,
    flatAreaMm2,
    heightMm,
    overhangMm2: findOverhang(mesh, normal, supportAngleDeg).areaMm2,
    holesUpright: upright.length,
    holes: holes.length,
  }
}

function nameOf(pose: Pose, normal: Vec3): string {
  const known = FACE_POSES.find((face) =>
    face.pose.rotateDeg.every((angle, i) => angle === pose.rotateDeg[i]),
  )
  if (known !== undefined) return known.name
  const sides: readonly (readonly [number, string])[] = [
    [-normal[2], 'bottom'],
    [normal[2], 'top'],
    [-normal[1], 'front'],
    [normal[1], 'back'],
    [-normal[0], 'left'],
    [normal[0], 'right'],
  ]
  const [, nearest] = sides.reduce((best, side) => (side[0] > best[0] ? side : best))
  return `On a slanted face, ${nearest}`
}
