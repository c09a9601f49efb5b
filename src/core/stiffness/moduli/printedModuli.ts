import type { Pattern } from '../../model/settings.ts'
import { elasticOf, type Elastic } from './elastic.ts'
import { infillStiffnessAlong, infillStiffnessUp, toSolid } from './infillStiffness.ts'

/** A printed plastic, laid solid. */
export interface PlasticModuli {
  /** In the layer plane. MPa */
  readonly youngsMPa: number
  /** Across the layers over in plane. */
  readonly acrossShare: number
}

/** Most unfilled thermoplastics lie between 0.33 and 0.40 (common practice, no source). */
export const POISSON = 0.36
/**
 * Infill lines lie at this angle to the bed's sides, and across it (common practice, no source).
 */
const LINES_DEG = 45

/**
 * Walls and skins: alike in the layer plane, softer across. Shear across goes by the geometric mean
 * (ours).
 */
export function solidElastic({ youngsMPa, acrossShare }: PlasticModuli): Elastic {
  const shear = youngsMPa / (2 * (1 + POISSON))
  const across = shear * Math.sqrt(acrossShare)
  return elasticOf({
    e1: youngsMPa,
    e2: youngsMPa,
    e3: youngsMPa * acrossShare,
    nu12: POISSON,
    nu13: POISSON,
    nu23: POISSON,
    g12: shear,
    g13: across,
    g23: across,
  })
}

/**
 * Infill as an even material, about axes turned by `turnDeg` from the bed's. In plane it resists
 * being spread evenly like the best there is (Z. Hashin, S. Shtrikman 1963; f/4 where walls are
 * thin, which squares, triangles and hexagons all reach: Gibson and Ashby, Cellular Solids), and
 * stretching by its pattern (`infillStiffnessAlong`); what shears follows from both. Up it carries
 * by its area, in shear across by half of it (the walls that lie that way). Null for empty rooms.
 *
 * About axes between a grid's lines and half-way of them, shear and stretch are coupled; that
 * coupling is left out.
 */
export function infillElastic(
  pattern: Pattern,
  share: number,
  plastic: PlasticModuli,
  turnDeg = 0,
): Elastic | null {
  if (!(share > 0)) return null
  if (share >= 1) return solidElastic(plastic)
  const { youngsMPa, acrossShare } = plastic
  const along = infillStiffnessAlong(pattern, share, 0)
  const between = infillStiffnessAlong(pattern, share, LINES_DEG)
  const isFoam = pattern === 'gyroid'
  const nu = isFoam ? POISSON : 1 - along / (2 * spreadBound(share))
  const shear = 1 / (4 / between - (2 * (1 - nu)) / along)
  const turned = turnSheet({ along, nu, shear }, LINES_DEG - turnDeg)
  const up = infillStiffnessUp(pattern, share)
  const solidShear = (acrossShare ** 0.5 * youngsMPa) / (2 * (1 + POISSON))
  const acrossShear = solidShear * (isFoam || pattern === 'lines' ? up : toSolid(share / 2, share))
  const e1 = turned.along * youngsMPa
  const e3 = up * acrossShare * youngsMPa
  // Pulled up, walls narrow as their plastic does, less where they stand on each other here and
  // there only; a foam does the same any way it is pulled.
  const nu13 = isFoam ? POISSON : POISSON * Math.min(1, e1 / e3) * (up / share)
  return elasticOf({
    e1,
    e2: e1,
    e3,
    nu12: turned.nu,
    nu13,
    nu23: nu13,
    g12: turned.shear * youngsMPa,
    g13: acrossShear,
    g23: acrossShear,
  })
}

/**
 * Most that cells in a plane resist being spread evenly, over the solid's Young's modulus (Hashin
 * and Shtrikman).
 */
function spreadBound(share: number): number {
  const spread = 1 / (2 * (1 - POISSON))
  const shear = 1 / (2 * (1 + POISSON))
  return (share * spread * shear) / (shear + (1 - share) * spread)
}

interface Sheet {
  readonly along: number
  readonly nu: number
  readonly shear: number
}

/**
 * A sheet alike along both of its lines, about axes turned by an angle (transformed stiffness, any
 * text).
 */
function turnSheet({ along, nu, shear }: Sheet, deg: number): Sheet {
  const angle = (deg * Math.PI) / 180
  const both = (Math.sin(2 * angle) / 2) ** 2
  const q11 = along / (1 - nu * nu)
  const q12 = nu * q11
  const c11 = q11 * (1 - 2 * both) + 2 * (q12 + 2 * shear) * both
  const c12 = q12 * (1 - 2 * both) + (2 * q11 - 4 * shear) * both
  const g12 = shear * (1 - 4 * both) + (2 * q11 - 2 * q12) * both
  return { along: c11 - (c12 * c12) / c11, nu: c12 / c11, shear: g12 }
}
