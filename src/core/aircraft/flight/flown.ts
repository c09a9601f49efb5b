import type { FlightSetup, FlownHover } from '../../model/aircraft.ts'
import type { Range } from '../../model/figures.ts'
import { hoverEfficiency, pairedEfficiency, type Efficiency } from './efficiency.ts'
import { diskAreaM2, idealHoverPowerW } from './hoverPower.ts'

/** What a timed hover says of an aircraft's efficiency. */
export interface HoverLesson {
  /**
   * `used`: the efficiency follows it. `other-propellers`: it was flown on others than those set
   * now. `far`: farther from the estimate than both their errors explain, so something typed is
   * likely wrong.
   */
  readonly verdict: 'used' | 'other-propellers' | 'far'
  /**
   * Efficiency flown over that estimated; 0 where the electronics alone draw more than was used.
   */
  readonly factor: number
}

/** An efficiency after what was flown. */
export interface LearnedEfficiency extends Efficiency {
  /** Null where no hover was timed. */
  readonly lesson: HoverLesson | null
}

/** Standard deviations in a half width of 95 %. */
const IN_95 = 1.96
/**
 * Relative error of a timed hover, one standard deviation: share of the pack used, its real
 * capacity and voltage, how steadily it hung, each a few per cent (common practice, no source).
 */
const FLOWN_SD = 0.06
/**
 * A hover flown at another mass tells less: exponents of mass differ by 0.3 from craft to craft
 * (see `hoverEfficiency`).
 */
const SD_PER_MASS = 0.3 / IN_95
const FAR = 3

/**
 * Efficiency at `auwG` after a timed hover: the estimate and the hover, both log-normal, weighed by
 * their errors (the product of two normal densities). All in free air at `densityKgM3`.
 */
export function learnedEfficiency(
  setup: FlightSetup,
  auwG: number,
  densityKgM3: number,
): LearnedEfficiency {
  const { motors, propDiameterMm, coaxial = false, flown } = setup
  const guess = estimate(setup, auwG)
  if (flown === undefined) return { ...guess, lesson: null }
  const then = estimate(flown, flown.auwG)
  const factor = flownShare(setup, flown, densityKgM3) / then.share.mid
  const other =
    motors !== flown.motors ||
    propDiameterMm !== flown.propDiameterMm ||
    coaxial !== (flown.coaxial ?? false)
  if (other) return { ...guess, lesson: { verdict: 'other-propellers', factor } }
  const guessSd = Math.log(then.share.mid / then.share.low) / IN_95
  const both = Math.hypot(guessSd, FLOWN_SD)
  const off = factor > 0 ? Math.log(factor) : -Infinity
  if (Math.abs(off) > FAR * both) return { ...guess, lesson: { verdict: 'far', factor } }

  const mid = guess.share.mid * Math.exp(off * (guessSd / both) ** 2)
  const learnedSd = (guessSd * FLOWN_SD) / both
  const massSd = SD_PER_MASS * Math.abs(Math.log(auwG / flown.auwG))
  const width = Math.exp(IN_95 * Math.hypot(learnedSd, massSd))
  const share: Range = { low: mid / width, mid, high: Math.min(1, mid * width) }
  return { ...guess, share, lesson: { verdict: 'used', factor } }
}

type Propellers = Pick<FlightSetup, 'motors' | 'propDiameterMm' | 'coaxial'>

function estimate({ motors, propDiameterMm, coaxial }: Propellers, auwG: number): Efficiency {
  const of = coaxial === true ? pairedEfficiency : hoverEfficiency
  return of(auwG, motors, propDiameterMm)
}

/**
 * Ideal over electrical power of the timed hover, electronics taken off; 0 where they leave
 * nothing.
 */
function flownShare(setup: FlightSetup, flown: FlownHover, densityKgM3: number): number {
  const liftingW = (60 * flown.usedWh) / flown.minutes - Math.max(0, setup.avionicsW)
  const diskM2 = diskAreaM2(flown.motors, flown.propDiameterMm)
  return liftingW > 0 ? idealHoverPowerW(flown.auwG / 1000, diskM2, densityKgM3) / liftingW : 0
}
