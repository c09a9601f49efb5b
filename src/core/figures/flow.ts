/**
 * Plastic laid a second, mm³/s, by a line of rectangular section `lineMm` × `layerMm` at
 * `speedMmS`.
 */
export function flowMm3S(lineMm: number, layerMm: number, speedMmS: number): number {
  return lineMm * layerMm * speedMmS
}

/**
 * The speed a line can be laid at: the wanted one, or as fast as the hot end melts. `flow` below 1
 * needs less plastic.
 */
export function meltSpeedMmS(
  wantedMmS: number,
  limitMm3S: number,
  lineMm: number,
  layerMm: number,
  flow: number,
): number {
  return Math.min(wantedMmS, limitMm3S / (flowMm3S(lineMm, layerMm, 1) * flow))
}
