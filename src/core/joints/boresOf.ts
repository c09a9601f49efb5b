import { findHoles } from '../mesh/holes/findHoles.ts'
import type { BoreMark } from '../model/joints.ts'
import type { Mesh } from '../model/mesh.ts'
import { lengthOf, minus } from '../model/vectors.ts'
import { markOf } from './findMouths.ts'
import { scaleBore } from './scaleEnd.ts'

/** A bore that moved or widened by less is the one it was. mm */
const SAME_MM = 0.05

/**
 * The round bores of a mesh as joints keep them, in mm. @param mesh faced outwards; `scaleToMm`
 * makes it mm.
 */
export function boresOf(mesh: Mesh, scaleToMm: number): readonly BoreMark[] {
  return findHoles(mesh).map((hole) => scaleBore(markOf(hole, 'bore'), scaleToMm))
}

/** Whether two marks of one part are of the same bore. */
export function isSameBore(one: BoreMark, other: BoreMark): boolean {
  return (
    lengthOf(minus(one.centreMm, other.centreMm)) < SAME_MM &&
    Math.abs(one.diameterMm - other.diameterMm) < SAME_MM
  )
}
