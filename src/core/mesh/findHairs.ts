import type { Mesh } from '../model/mesh.ts'
import { judgeBodies } from './judgeBodies.ts'
import { boxGapMm, type BodyJudgement } from './measureFindings.ts'
import { bodiesTouch, touchBody, type TouchBody } from './split/touch.ts'
import type { Apart } from './takeApart.ts'

/** No line is laid thinner (0.4 mm is the common width; common practice, no source). */
const LINE_MM = 0.4
/** Nothing that flies is smaller: 1 mm³ of plastic weighs about a milligram. Ours. */
const MOST_MM3 = 1
/** Of the largest body's volume, so that a part drawn small keeps its pieces. Ours. */
const MOST_SHARE = 1e-3
/** More are lettering, a grille or a broken mesh, and no slips of the drawing. */
const MOST_HAIRS = 50

/**
 * Closed bodies that no line can lay, off from all others: slips of the drawing. One of them below
 * a part would become the first layer and lift the part off the bed, so they are left out unless
 * the part keeps them (see `outwardMesh`). Their grams are lost in any rounding: 1 mm³ and a
 * thousandth of the part at most, each.
 *
 * @returns numbers of the bodies in `apart`.
 */
export function findHairs(
  mesh: Mesh,
  { bodies, sums }: Apart,
  scaleToMm: number,
): ReadonlySet<number> {
  if (bodies.count < 2) return NONE
  const judged = judgeBodies(mesh, bodies, sums, scaleToMm)
  const largest = judged.reduce((best, body) => (body.volumeMm3 > best.volumeMm3 ? body : best))
  const thin = judged.flatMap((body, i) => (body !== largest && isHair(body, largest) ? [i] : []))
  if (thin.length === 0 || thin.length > MOST_HAIRS) return NONE
  const own = Array.from({ length: bodies.count }, (): number[] => [])
  bodies.bodyOf.forEach((body, t) => own[body]?.push(t))
  const ready: (TouchBody | undefined)[] = []
  const bodyAt = (body: number): TouchBody => (ready[body] ??= touchBody(mesh, own[body]!))
  const loose = thin.filter((i) =>
    judged.every(
      (body, k) =>
        k === i ||
        boxGapMm(body.boundsMm, judged[i]!.boundsMm) > 0 ||
        !bodiesTouch(mesh, bodyAt(i), bodyAt(k)),
    ),
  )
  return new Set(loose)
}

const NONE: ReadonlySet<number> = new Set()

/** Four times volume over area is the width of a rod and twice the thickness of a sheet. */
function isHair(
  { kind, volumeMm3, areaMm2, boundsMm }: BodyJudgement,
  largest: BodyJudgement,
): boolean {
  if (kind !== 'solid') return false
  if (volumeMm3 > MOST_MM3 || volumeMm3 > MOST_SHARE * largest.volumeMm3) return false
  const sides = [0, 1, 2].map((k) => boundsMm.max[k]! - boundsMm.min[k]!)
  return Math.min(...sides, (4 * volumeMm3) / areaMm2) < LINE_MM
}
