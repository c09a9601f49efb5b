/*
 * Propeller coefficients as wind-tunnel tables give them (Brandt and Selig, AIAA 2011-1255): with n
 * in turns a second and the diameter D in metres, thrust = CT ρ n² D⁴ and shaft power = CP ρ n³ D⁵.
 */

/** Static thrust in newton. `densityKgM3` is the air's, `diameterM` in metres. */
export function propThrustN(
  thrustCoefficient: number,
  densityKgM3: number,
  rpm: number,
  diameterM: number,
): number {
  return thrustCoefficient * densityKgM3 * (rpm / 60) ** 2 * diameterM ** 4
}

/** Static shaft power in watt. */
export function propPowerW(
  powerCoefficient: number,
  densityKgM3: number,
  rpm: number,
  diameterM: number,
): number {
  return powerCoefficient * densityKgM3 * (rpm / 60) ** 3 * diameterM ** 5
}

/**
 * Figure of merit of a hovering propeller, ideal over real shaft power (0–1), from its
 * coefficients: √(2/π) · CT^1.5 / CP (Leishman, Principles of Helicopter Aerodynamics, in propeller
 * coefficients).
 */
export function figureOfMerit(thrustCoefficient: number, powerCoefficient: number): number {
  return (Math.sqrt(2 / Math.PI) * thrustCoefficient ** 1.5) / powerCoefficient
}
