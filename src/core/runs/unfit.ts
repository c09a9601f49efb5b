import { poseOptions } from '../mesh/poseOptions.ts'
import { FACE_POSES, placeMesh } from '../mesh/pose.ts'
import type { Mesh } from '../model/mesh.ts'
import type { Pose } from '../model/settings.ts'
import { hullOf, turnedBox } from './hull.ts'
import { goesOn } from './nest.ts'
import type { Bed, PieceOutline, Unfit } from './types.ts'

/**
 * Why a piece goes on none of the beds, and a pose in which it would go on one: those that lie well
 * first, then the six sides. Told of the bed that takes such a pose, else of the largest. Null
 * where it goes on one as it lies.
 *
 * @param mesh as drawn, in mm, faced outwards.
 */
export function unfitOf(
  partId: string,
  mesh: Mesh,
  outline: PieceOutline,
  { brimMm, supportAngleDeg }: { readonly brimMm: number; readonly supportAngleDeg: number },
  beds: readonly Bed[],
): Unfit | null {
  if (beds.some((bed) => goesOn(outline, brimMm, bed))) return null
  const ways: readonly { readonly name: string; readonly pose: Pose }[] = [
    ...poseOptions(mesh, supportAngleDeg),
    ...FACE_POSES,
  ]
  let wayOut: Unfit['wayOut'] = null
  let [bed] = beds.toSorted((a, b) => b.widthMm * b.depthMm - a.widthMm * a.depthMm)
  for (const { name, pose } of ways) {
    const lying = hulled(placeMesh(mesh, 1, pose))
    const takes = beds.find((one) => goesOn(lying, brimMm, one))
    if (takes === undefined) continue
    wayOut = { name, pose }
    bed = takes
    break
  }
  if (bed === undefined) return null
  const isTall = outline.heightMm > bed.heightMm
  const { widthMm, depthMm } = turnedBox(outline.hullMm, 0)
  return {
    partId,
    why: isTall ? 'too tall' : 'too long',
    partMm: isTall ? outline.heightMm : Math.max(widthMm, depthMm) + 2 * brimMm,
    limitMm: isTall ? bed.heightMm : Math.max(bed.widthMm, bed.depthMm) - 2 * bed.marginMm,
    wayOut,
  }
}

function hulled(mesh: Mesh): Pick<PieceOutline, 'hullMm' | 'heightMm'> {
  let heightMm = 0
  for (const index of mesh.indices) {
    heightMm = Math.max(heightMm, mesh.positions[3 * index + 2] ?? 0)
  }
  return { hullMm: hullOf(mesh), heightMm }
}
