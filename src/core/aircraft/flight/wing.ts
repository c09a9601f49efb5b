import type { WingSetup } from '../../model/aircraft.ts'
import type { Range } from '../../model/figures.ts'
import { AIR_DENSITY, GRAVITY } from './air.ts'

/** How heavily a plane sits on its wing. */
export interface WingLoading {
  readonly areaLoadingGDm2: number
  /** Mass over area^1.5, which compares planes of different size. oz/ft³ */
  readonly cubeLoadingOzFt3: number
  /** Level flight speed at which the wing lets go, m/s: low end with the best lift coefficient. */
  readonly stallMS: Range
}

/**
 * Lift coefficient a small wing reaches before it stalls: 1.1, between 0.9 and 1.3 (common
 * practice, no source).
 */
const LIFT_AT_STALL: Range = { low: 0.9, mid: 1.1, high: 1.3 }

/**
 * Grams in one ounce and decimetres in one foot: exact (international yard and pound agreement,
 * 1959).
 */
const G_PER_OZ = 28.349523125
const DM_PER_FT = 3.048

/** Level flight at the edge of stall, m/s: √(2 m g / (ρ S CL)) (any text on flight mechanics). */
export function stallSpeedMS(
  massG: number,
  areaDm2: number,
  liftCoefficient: number,
  densityKgM3 = AIR_DENSITY,
): number {
  const weightN = (massG / 1000) * GRAVITY
  return Math.sqrt((2 * weightN) / (densityKgM3 * (areaDm2 / 100) * liftCoefficient))
}

/** Null without a wing area or a mass above zero. */
export function wingLoading(
  wing: Pick<WingSetup, 'areaDm2'>,
  auwG: number,
  liftAtStall: Range = LIFT_AT_STALL,
): WingLoading | null {
  const { areaDm2 } = wing
  if (!(areaDm2 > 0) || !(auwG > 0)) return null
  const areaFt2 = areaDm2 / DM_PER_FT ** 2
  return {
    areaLoadingGDm2: auwG / areaDm2,
    cubeLoadingOzFt3: auwG / G_PER_OZ / areaFt2 ** 1.5,
    stallMS: {
      low: stallSpeedMS(auwG, areaDm2, liftAtStall.high),
      mid: stallSpeedMS(auwG, areaDm2, liftAtStall.mid),
      high: stallSpeedMS(auwG, areaDm2, liftAtStall.low),
    },
  }
}
