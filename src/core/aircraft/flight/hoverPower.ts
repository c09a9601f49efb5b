import { AIR_DENSITY, GRAVITY } from './air.ts'

/** Area swept by all propellers together, m². */
export function diskAreaM2(motors: number, propDiameterMm: number): number {
  return (motors * Math.PI * (propDiameterMm / 1000) ** 2) / 4
}

/**
 * Least power that carries a thrust on an open disk at rest, W: T^1.5 / √(2 ρ A), momentum theory
 * after Rankine and Froude (Leishman, Principles of Helicopter Aerodynamics, ch. 2).
 */
export function idealPowerW(thrustN: number, diskM2: number, densityKgM3 = AIR_DENSITY): number {
  return thrustN ** 1.5 / Math.sqrt(2 * densityKgM3 * diskM2)
}

/** `idealPowerW` of an aircraft of that mass hanging still. */
export function idealHoverPowerW(
  massKg: number,
  diskM2: number,
  densityKgM3 = AIR_DENSITY,
): number {
  return idealPowerW(massKg * GRAVITY, diskM2, densityKgM3)
}
