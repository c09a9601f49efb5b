import type { Range } from '../../model/figures.ts'

/** How much of the pack's power ends up in lifting, and how far that is to be believed. */
export interface Efficiency {
  /** Ideal hover power over electrical power, 0–1. */
  readonly share: Range
  /** False where no measured flight of such a craft stands behind it. */
  readonly validated: boolean
}

/**
 * Hover of four whole quadrotors, 1.2 to 2.9 kg, with the electrical power measured: 0.364 to 0.513, mean 0.444
 * (Russell et al., NASA/TM-2018-219758, runs 27/9, 28/11, 29/12, 119/11). The 0.45 was chosen with those rows in view;
 * the ends are the measured ones rounded outwards, so that every measured craft lies inside.
 */
const MEASURED: Range = { low: 0.36, mid: 0.45, high: 0.52 }

/**
 * A 28.6 g rig of four brushed motors took 7.74 W, 0.149 overall and 0.171 without its idle power (Bitcraze,
 * crazyflie-firmware docs, pwm-to-thrust). One craft: the band is ours.
 */
const NANO_BRUSHED: Range = { low: 0.13, mid: 0.16, high: 0.2 }

/** Below this nothing but the nano rig was found to check against. g */
const VALIDATED_FROM_G = 100
/** Below this motors are taken as brushed unless the builder says otherwise. g */
const NANO_BELOW_G = 60

/**
 * Overall efficiency to expect at an all-up mass. Below 100 g the band reaches down to the nano rig's, because small fast
 * propellers lose more; below 60 g with brushed motors it is the nano rig's alone.
 */
export function hoverEfficiency(auwG: number, brushed: boolean | undefined): Efficiency {
  if (auwG >= VALIDATED_FROM_G) return { share: MEASURED, validated: true }
  if (auwG < NANO_BELOW_G && brushed !== false) return { share: NANO_BRUSHED, validated: false }
  return { share: { ...MEASURED, low: NANO_BRUSHED.low }, validated: false }
}
