/**
 * Seconds for a straight move of `lengthMm` at up to `speedMmS` with `accelMmS2`, entered and left at `endsMmS` (0: from
 * rest to rest). Exact: speed up, cruise, slow down; where the move is too short to reach its speed, a triangle.
 * From rest: L/v + v/a when L ≥ v²/a, else 2·√(L/a).
 */
export function moveTime(
  lengthMm: number,
  speedMmS: number,
  accelMmS2: number,
  endsMmS = 0,
): number {
  if (lengthMm <= 0) return 0
  const ends = Math.min(endsMmS, speedMmS)
  const rampsMm = (speedMmS * speedMmS - ends * ends) / accelMmS2
  if (lengthMm >= rampsMm) {
    return lengthMm / speedMmS + (speedMmS - ends) ** 2 / (speedMmS * accelMmS2)
  }
  const peak = Math.sqrt(ends * ends + accelMmS2 * lengthMm)
  return (2 * (peak - ends)) / accelMmS2
}
