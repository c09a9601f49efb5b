import type { Mesh } from '../model/mesh.ts'
import type { Pose } from '../model/settings.ts'
import type { ToolpathFigures } from '../model/toolpath.ts'
import { FACE_POSES, placeMesh } from '../mesh/pose.ts'
import { girthMisfitMm, girthOfMesh } from './girth.ts'

/** A part that a toolpath may be of. */
export interface Candidate {
  readonly mesh: Mesh
  readonly scaleToMm: number
  /** Of the mesh, mm³. */
  readonly volumeMm3: number
}

/** Which of the parts a toolpath prints, and which way up. */
export interface PartMatch {
  /** Its number among the candidates. */
  readonly part: number
  readonly pose: Pose
  /** How far height and plan are off at most. mm */
  readonly misfitMm: number
  /** Numbers of others that fit as well. */
  readonly alike: readonly number[]
}

/** A plan laid in lines is so much off at most: mm, or as a share of its size. */
const MOST_MM = 0.8
const MOST_SHARE = 0.01
/** A print is at most a layer taller or lower than the part, and this. mm */
const MOST_HEIGHT_MM = 0.1
/** Of two that fit, one this much further off is the other. mm */
const CLEARLY_MM = 0.15
/**
 * What a print encloses ÷ volume of the part: hollow shells of thin walls to brims and supports.
 */
const LEAST_FILL = 0.3
const MOST_FILL = 2

/**
 * Finds the part whose height and plan a toolpath has, in any of the six ways up and turned on the
 * bed in steps of 5°; of several that fit alike the one whose volume the print encloses.
 * null where none fits: several pieces on one bed are none of them.
 */
export function matchPart(
  figures: Pick<ToolpathFigures, 'layers' | 'girthMm' | 'envelopeMm3'>,
  candidates: readonly Candidate[],
): PartMatch | null {
  const top = figures.layers.at(-1)
  if (!top) return null
  const heightMm = top.topMm
  const layerMm = top.heightMm
  const size = Math.max(heightMm, ...figures.girthMm)
  const most = Math.max(MOST_MM, MOST_SHARE * size)
  const fits = candidates.flatMap(({ mesh, scaleToMm, volumeMm3 }, part) => {
    const fill = figures.envelopeMm3 / volumeMm3
    if (!(fill > LEAST_FILL && fill < MOST_FILL)) return []
    return FACE_POSES.flatMap(({ pose }) => {
      const { positions } = placeMesh(mesh, scaleToMm, pose)
      let tallMm = 0
      for (let i = 2; i < positions.length; i += 3) tallMm = Math.max(tallMm, positions[i]!)
      const off = Math.abs(tallMm - heightMm)
      if (off > layerMm + MOST_HEIGHT_MM) return []
      const misfitMm = Math.max(
        off - layerMm,
        girthMisfitMm(girthOfMesh(positions), figures.girthMm),
      )
      return misfitMm <= most ? [{ part, pose, misfitMm, fill }] : []
    })
  })
  const least = Math.min(...fits.map(({ misfitMm }) => misfitMm))
  const alike = fits.filter(({ misfitMm }) => misfitMm <= least + CLEARLY_MM)
  alike.sort((a, b) => Math.abs(Math.log(a.fill)) - Math.abs(Math.log(b.fill)))
  const [best] = alike
  if (!best) return null
  const others = new Set(alike.map(({ part }) => part))
  others.delete(best.part)
  return { part: best.part, pose: best.pose, misfitMm: best.misfitMm, alike: [...others] }
}
