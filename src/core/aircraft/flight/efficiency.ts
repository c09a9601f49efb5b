import type { Range } from '../../model/figures.ts'
import { GRAVITY } from './air.ts'
import { diskAreaM2 } from './hoverPower.ts'
import { beyondMeasured } from './measuredSpan.ts'

/** How much of the pack's power ends up in lifting, and how far that is to be believed. */
export interface Efficiency {
  /** Ideal hover power over electrical power, 0–1. A range of about 95 %. */
  readonly share: Range
  /** Whether mass and propeller diameter lie among those of measured craft. */
  readonly validated: boolean
  /** d ln share / d ln mass: a heavier load is carried a little better. */
  readonly perMass: number
}

/**
 * share = LARGE / (1 + LOSS / (d^1.5 √w)), d the propeller's diameter in 100 mm, w the disk loading
 * in 100 N/m².
 *
 * Two things fall with size: the propeller's figure of merit with the Reynolds number of its tips,
 * which goes with d √w, and the efficiency of motor and controller with the motor's size, taken as
 * √d. Least squares in ln share over the eleven fitted rows of `HOVER_ROWS`, 31 to 381 mm.
 * Exponents 1.25–2.25 of d and 0.25–0.6 of w fit about as well (error of a row left out 0.12–0.14)
 * and change the share at 5 inch by 0.02. Least absolute errors give a share within 8 % of this at
 * every row; one row misread by 30 % moves it by 14 % at most, inside its range.
 */
const LARGE = 0.52
const LOSS = 0.58

/**
 * Of ln share, either side. A row left out of the fit is missed by 0.124 (root mean square of 16,
 * an eight-rotor craft among them; the worst 0.23); times 2.26, 95 % of Student's t with nine
 * degrees of freedom, with the fit's own error: 0.30.
 */
const WIDTH = 0.3
/**
 * More of it for every power of e outside the measured craft: exponents of mass from 0 to 0.6 were
 * seen on single propellers, where the fit takes up to 0.5 (ours).
 */
const WIDTH_BEYOND = 0.3

/** Overall efficiency to expect of a craft of `motors` open propellers side by side, in hover. */
export function hoverEfficiency(auwG: number, motors: number, propDiameterMm: number): Efficiency {
  const loadingNm2 = ((auwG / 1000) * GRAVITY) / diskAreaM2(motors, propDiameterMm)
  const loss = LOSS / ((propDiameterMm / 100) ** 1.5 * Math.sqrt(loadingNm2 / 100))
  const mid = LARGE / (1 + loss)
  const beyond = beyondMeasured(propDiameterMm, auwG / motors)
  const factor = Math.exp(WIDTH + WIDTH_BEYOND * beyond)
  return {
    share: { low: mid / factor, mid, high: Math.min(MOST, mid * factor) },
    validated: beyond === 0,
    perMass: (0.5 * loss) / (1 + loss),
  }
}

/**
 * Power of propellers in pairs on one axis over that of as many side by side.
 *
 * Two rotors in one plane take 1.41 times as much by momentum theory (two disks as one), 1.28 with
 * the lower in the full wake of the upper; the best measured pair of helicopter rotors 1.16
 * (Leishman, Principles of Helicopter Aerodynamics, ch. 2, from memory). One whole craft of 301 g
 * on a pair of 342 mm took 36.3 W, about 2.0 times (public specification text). The middle is ours,
 * between those.
 */
export const PAIRED_POWER: Range = { low: 1.15, mid: 1.5, high: 2.1 }

/**
 * `hoverEfficiency` of a craft whose propellers sit in pairs, one above the other; never validated.
 */
export function pairedEfficiency(auwG: number, motors: number, propDiameterMm: number): Efficiency {
  const { share, perMass } = hoverEfficiency(auwG, motors, propDiameterMm)
  const mid = share.mid / PAIRED_POWER.mid
  const reach = (own: number, paired: number): number =>
    Math.exp(Math.hypot(Math.log(own), Math.log(paired)))
  return {
    share: {
      low: mid / reach(share.mid / share.low, PAIRED_POWER.high / PAIRED_POWER.mid),
      mid,
      high: Math.min(MOST, mid * reach(share.mid / share.low, PAIRED_POWER.mid / PAIRED_POWER.low)),
    },
    validated: false,
    perMass,
  }
}

/**
 * Nobody measured more: figure of merit 0.8 of a helicopter's rotor times 0.9 of a large motor
 * (common practice, no source).
 */
const MOST = 0.72
