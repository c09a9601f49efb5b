/**
 * To a millionth of a millimetre or of a degree: the last bits of sine and cosine are the engine's
 * own, the files' bytes must not be.
 */
export function tidy(value: number): number {
  return Math.round(value * 1e6) / 1e6
}
