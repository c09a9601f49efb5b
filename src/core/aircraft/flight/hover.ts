import type { FlightSetup } from '../../model/aircraft.ts'
import type { Range } from '../../model/figures.ts'
import { AIR_DENSITY } from './air.ts'
import { learnedEfficiency, type HoverLesson } from './flown.ts'
import type { FlightNote } from './hoverNotes.ts'
import { hoverNotes } from './hoverNotes.ts'
import { diskAreaM2, idealHoverPowerW } from './hoverPower.ts'
import { packEnergyWh } from './pack.ts'
import type { ThrustVerdict } from './thrust.ts'
import { thrustVerdict } from './thrust.ts'

/** What an aircraft does hanging still in calm air. */
export interface HoverFigures {
  readonly auwG: number
  /** Full thrust of all motors over the all-up weight. */
  readonly thrustToWeight: number
  readonly verdict: ThrustVerdict
  readonly energyWh: number
  /** By momentum theory, without any loss. */
  readonly idealW: number
  /** Electrical, with losses and avionics. */
  readonly hoverW: Range
  /** Throttle (0–1) it hovers at by both published rules; above 1 it does not lift. */
  readonly hoverThrottle: HoverThrottle
  /** Zero where it cannot lift itself. */
  readonly hoverMin: Range
  /** Grams it may gain until thrust is twice the weight; below zero it is already over. */
  readonly payloadG: number
  /** Change of the middle hover time for one gram more; below zero, since mass costs time. */
  readonly sPerGram: number
  /** Ideal over electrical lifting power, 0–1. */
  readonly efficiency: Range
  /**
   * Whether mass and propeller lie among those of measured craft, which the efficiency is made
   * from.
   */
  readonly validated: boolean
  /** What a timed hover said of the efficiency; null where none was flown. */
  readonly lesson: HoverLesson | null
  readonly notes: readonly FlightNote[]
}

/** Small builders' sources disagree on how thrust follows the stick, so both are given. */
export interface HoverThrottle {
  /** Thrust goes with the square of the throttle (throttle sets the rpm). */
  readonly squareRoot: number
  /** Thrust goes straight with the throttle. */
  readonly linear: number
}

/**
 * Thrust over weight that payload is reckoned down to: hover near half throttle (ArduPilot wiki,
 * motor choice).
 */
const THRUST_TO_WEIGHT_WANTED = 2

/**
 * Hover of a multirotor at an all-up mass: momentum theory over the real disk area, divided by an
 * overall efficiency that follows propeller size and disk loading as measured (and a timed hover,
 * where there is one), plus avionics. Free air at `densityKgM3`, all rotors alike, side by side or
 * with a wide range in coaxial pairs; wind and manoeuvres are not covered. Null when a number
 * needed is missing or not above zero.
 */
export function hoverFigures(
  setup: FlightSetup,
  auwG: number,
  densityKgM3 = AIR_DENSITY,
): HoverFigures | null {
  const needed = [auwG, setup.motors, setup.motorThrustG, setup.propDiameterMm, densityKgM3]
  const packed = [setup.packCells, setup.packMah, setup.voltsPerCell, setup.usableShare]
  if (![...needed, ...packed].every((value) => Number.isFinite(value) && value > 0)) return null

  const thrustG = setup.motors * setup.motorThrustG
  const thrustToWeight = thrustG / auwG
  const efficiency = learnedEfficiency(setup, auwG, densityKgM3)
  const diskM2 = diskAreaM2(setup.motors, setup.propDiameterMm)
  const idealW = idealHoverPowerW(auwG / 1000, diskM2, densityKgM3)
  const avionicsW = Math.max(0, setup.avionicsW)
  const hoverW = {
    low: idealW / efficiency.share.high + avionicsW,
    mid: idealW / efficiency.share.mid + avionicsW,
    high: idealW / efficiency.share.low + avionicsW,
  }
  const energyWh = packEnergyWh(setup)
  const lifts = thrustToWeight >= 1
  const minutes = (watts: number): number =>
    lifts ? (60 * energyWh * Math.min(1, setup.usableShare)) / watts : 0
  const hoverMin = {
    low: minutes(hoverW.high),
    mid: minutes(hoverW.mid),
    high: minutes(hoverW.low),
  }
  // Lifting power goes with mass^1.5 over the efficiency, and avionics do not: d(E/P)/dm = −k · t ·
  // lifting / (P · m).
  const liftingW = hoverW.mid - avionicsW
  const powerPerMass = 1.5 - efficiency.perMass
  return {
    auwG,
    thrustToWeight,
    verdict: thrustVerdict(thrustToWeight),
    energyWh,
    idealW,
    hoverW,
    hoverThrottle: { squareRoot: Math.sqrt(1 / thrustToWeight), linear: 1 / thrustToWeight },
    hoverMin,
    payloadG: thrustG / THRUST_TO_WEIGHT_WANTED - auwG,
    sPerGram: lifts ? (-powerPerMass * 60 * hoverMin.mid * liftingW) / (hoverW.mid * auwG) : 0,
    efficiency: efficiency.share,
    validated: efficiency.validated,
    lesson: efficiency.lesson,
    notes: hoverNotes(setup, auwG, thrustToWeight, efficiency),
  }
}
