import { spectrumOf, type Spectrum } from './spectrum.ts'

/** What a knock rang at. */
export interface HeardTone {
  readonly hz: number
  /** Standard deviation. Hz */
  readonly doubtHz: number
  /** Of the peak's power over the noise beside it. dB */
  readonly overNoiseDb: number
  readonly spectrum: Spectrum
}

/** A tone is looked for so far below and above what is expected. */
export const REACH = 2.2
/** Below it no laptop's or phone's microphone hears much. Hz */
export const LEAST_HZ = 15
/** A peak that is this little above the noise is none: noise has some of 10. dB */
const LEAST_DB = 14
/** Sound after the knock itself, s: what it is struck with clicks, and is gone by then. */
const CLICK_S = 0.012
/** What is listened to: so many swings of what is expected, but no longer than that. s */
const SWINGS = 30
const LISTEN_S = 0.8
/**
 * Share of a peak's width that its middle may be off by however loud it is (ours, by made-up
 * knocks).
 */
const SHAPE = 0.04

/**
 * The tone of a knock: the highest peak near what is expected, after the loudest moment of a sound.
 * Null where none stands out of the noise.
 *
 * @param samples one channel. @param expectedHz what the model says.
 */
export function firstTone(
  samples: ArrayLike<number>,
  rateHz: number,
  expectedHz: number,
): HeardTone | null {
  let loudest = 0
  for (let i = 1; i < samples.length; i++) {
    if (Math.abs(samples[i]!) > Math.abs(samples[loudest]!)) loudest = i
  }
  const from = loudest + Math.round(CLICK_S * rateHz)
  const longS = Math.min(LISTEN_S, SWINGS / expectedHz)
  const heard = Array.from(samples).slice(from, from + Math.round(longS * rateHz))
  if (heard.length < 4 * (rateHz / Math.max(LEAST_HZ, expectedHz / REACH))) return null
  const spectrum = spectrumOf(heard, rateHz)
  const { stepHz, power } = spectrum
  const low = Math.ceil(Math.max(LEAST_HZ, expectedHz / REACH) / stepHz)
  const high = Math.min(power.length - 2, Math.floor((expectedHz * REACH) / stepHz))
  let peak = low
  for (let k = low; k <= high; k++) if (power[k]! > power[peak]!) peak = k
  // At an end of the band it is the flank of something else.
  if (peak <= low || peak >= high) return null
  const noise = median(power.subarray(low, high + 1))
  const overNoiseDb = 10 * Math.log10(power[peak]! / noise)
  if (!(overNoiseDb > LEAST_DB)) return null
  const [a, b, c] = [power[peak - 1]!, power[peak]!, power[peak + 1]!].map(Math.log) as [
    number,
    number,
    number,
  ]
  const hz = (peak + (a - c) / (2 * (a - 2 * b + c))) * stepHz
  const widthHz = stepHz * halfWidth(power, peak)
  const doubtHz = widthHz * Math.hypot(SHAPE, 1 / Math.sqrt(power[peak]! / noise))
  return { hz, doubtHz, overNoiseDb, spectrum }
}

/** Bins over which a peak holds half of its power. */
function halfWidth(power: Float64Array, peak: number): number {
  const half = power[peak]! / 2
  let low = peak
  let high = peak
  while (low > 0 && power[low]! > half) low--
  while (high + 1 < power.length && power[high]! > half) high++
  return high - low
}

function median(values: Float64Array): number {
  return values.toSorted()[Math.floor(values.length / 2)] ?? 0
}
