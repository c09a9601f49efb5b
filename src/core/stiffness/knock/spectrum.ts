/** Power over frequency: bin k lies at k · `stepHz`. */
export interface Spectrum {
  readonly stepHz: number
  readonly power: Float64Array
}

/** So many times as long with nothing added: peaks are drawn round. */
const PADDED = 4

/**
 * Power spectrum of a sound that dies out: under the falling half of J. von Hann's window, so that
 * its beginning counts (F. J. Harris, Proc. IEEE 66, 1978), by J. W. Cooley and J. W. Tukey's
 * transform (Math. Comp. 19, 1965).
 *
 * @param samples any unit; at least two. @param rateHz samples a second.
 */
export function spectrumOf(samples: ArrayLike<number>, rateHz: number): Spectrum {
  const count = samples.length
  let size = 2
  while (size < PADDED * count) size *= 2
  const real = new Float64Array(size)
  const imaginary = new Float64Array(size)
  const mean = Array.from(samples).reduce((sum, value) => sum + value, 0) / count
  for (let i = 0; i < count; i++) {
    const window = (1 + Math.cos((Math.PI * i) / (count - 1))) / 2
    real[i] = (samples[i]! - mean) * window
  }
  transform(real, imaginary)
  const power = Float64Array.from(
    { length: size / 2 },
    (_, k) => real[k]! ** 2 + imaginary[k]! ** 2,
  )
  return { stepHz: rateHz / size, power }
}

/** In place; the length is a power of two. */
function transform(real: Float64Array, imaginary: Float64Array): void {
  const size = real.length
  for (let i = 1, j = 0; i < size; i++) {
    let bit = size >> 1
    for (; (j & bit) !== 0; bit >>= 1) j ^= bit
    j ^= bit
    if (i < j) {
      ;[real[i], real[j]] = [real[j]!, real[i]!]
      ;[imaginary[i], imaginary[j]] = [imaginary[j]!, imaginary[i]!]
    }
  }
  for (let long = 2; long <= size; long *= 2) {
    const half = long / 2
    for (let k = 0; k < half; k++) {
      const cos = Math.cos((-2 * Math.PI * k) / long)
      const sin = Math.sin((-2 * Math.PI * k) / long)
      for (let at = k; at < size; at += long) {
        const other = at + half
        const re = real[other]! * cos - imaginary[other]! * sin
        const im = real[other]! * sin + imaginary[other]! * cos
        real[other] = real[at]! - re
        imaginary[other] = imaginary[at]! - im
        real[at] = real[at]! + re
        imaginary[at] = imaginary[at]! + im
      }
    }
  }
}
