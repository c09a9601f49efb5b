/**
 * Seconds for a straight move of `lengthMm` at up to `speedMmS` with `accelMmS2`, entered at
 * `entryMmS` and left at `exitMmS` (0: from rest to rest). Exact: speed up, cruise, slow down;
 * where the move is too short to reach its speed, a triangle; where it is too short even to get
 * from one end speed to the other, the faster end gives way. From rest: L/v + v/a when L ≥ v²/a,
 * else 2·√(L/a).
 */
export function moveTime(
  lengthMm: number,
  speedMmS: number,
  accelMmS2: number,
  entryMmS = 0,
  exitMmS = entryMmS,
): number {
  if (lengthMm <= 0) return 0
  const slow = Math.min(entryMmS, exitMmS, speedMmS)
  const fast = Math.min(Math.max(entryMmS, exitMmS), speedMmS)
  const gain = 2 * accelMmS2 * lengthMm
  if (fast * fast - slow * slow >= gain) {
    return (Math.sqrt(slow * slow + gain) - slow) / accelMmS2
  }
  const peak2 = (gain + slow * slow + fast * fast) / 2
  if (peak2 <= speedMmS * speedMmS) {
    return (2 * Math.sqrt(peak2) - slow - fast) / accelMmS2
  }
  const rampsMm = (2 * speedMmS * speedMmS - slow * slow - fast * fast) / (2 * accelMmS2)
  return (2 * speedMmS - slow - fast) / accelMmS2 + (lengthMm - rampsMm) / speedMmS
}
