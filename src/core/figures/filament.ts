/** Cross-section of filament, mm². */
export function filamentAreaMm2(diameterMm: number): number {
  return (Math.PI * diameterMm * diameterMm) / 4
}

/** Metres of filament in a volume of plastic. */
export function filamentLengthM(volumeMm3: number, diameterMm: number): number {
  return volumeMm3 / filamentAreaMm2(diameterMm) / 1000
}
