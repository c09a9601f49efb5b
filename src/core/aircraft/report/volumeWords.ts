/** `2.4 mm³`, `30 mm³`, `1.2 cm³`: metric and in English numbers, see `toldWords`. */
export function volumeWords(volumeMm3: number): string {
  if (volumeMm3 >= 1000) return `${(volumeMm3 / 1000).toFixed(1)} cm³`
  return `${volumeMm3.toFixed(volumeMm3 < 10 ? 1 : 0)} mm³`
}
