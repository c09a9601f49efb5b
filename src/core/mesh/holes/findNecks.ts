import type { Mesh, Vec3 } from '../../model/mesh.ts'
import { turnedOver } from '../turnedOver.ts'
import { nextBore } from './boreEnds.ts'
import { findHoles } from './findHoles.ts'

/** A round waist between two flanges, as a damper has: a plate's hole sits on it. mm */
export interface Neck {
  readonly axis: Vec3
  readonly centreMm: Vec3
  readonly diameterMm: number
  /** Of the groove. */
  readonly widthMm: number
}

/** A waist longer than this share of its diameter is a shaft between two collars. */
const LONGEST = 1
/** A flange is wider than its neck by this factor at least. */
const FLANGE = 1.1
/** Wider ones are bodies. mm */
const WIDEST_MM = 30

/** @param mesh in mm, faced outwards. */
export function findNecks(mesh: Mesh): readonly Neck[] {
  const rounds = findHoles(turnedOver(mesh))
  return rounds.flatMap((round): Neck[] => {
    const { axis, centre, diameter, depth } = round
    if (diameter > WIDEST_MM || depth > LONGEST * diameter) return []
    const isFlanged = ([-1, 1] as const).every((way) => {
      const next = nextBore(round, way, rounds)
      return next !== null && next.diameter > FLANGE * diameter
    })
    if (!isFlanged) return []
    return [{ axis, centreMm: centre, diameterMm: diameter, widthMm: depth }]
  })
}
