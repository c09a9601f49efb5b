import { describe, expect, test } from 'vitest'
import { MATERIALS } from '../../../../src/core/data/materials.ts'
import { firstTone } from '../../../../src/core/stiffness/knock/firstTone.ts'
import { knockedModulus, knockTeaches } from '../../../../src/core/stiffness/knock/knockTeaches.ts'
import { spectrumOf } from '../../../../src/core/stiffness/knock/spectrum.ts'
import { seededRandom } from '../../../support/random.ts'

const RATE = 8000
const random = seededRandom(31)
/** Nearly normal. */
const noise = (): number => random() + random() + random() + random() - 2

interface Knock {
  readonly hz: number
  /** Share of critical damping. */
  readonly damping: number
  readonly noise: number
}

/** Silence, a click, then a tone that dies out (m ẍ + c ẋ + k x = 0), and one higher. */
function knock({ hz, damping, noise: loud }: Knock): Float64Array {
  const at = Math.floor(0.2 * RATE)
  const decay = 2 * Math.PI * hz * damping
  return Float64Array.from({ length: Math.floor(1.2 * RATE) }, (_, i) => {
    const t = (i - at) / RATE
    const click = t >= 0 && t < 0.003 ? 3 * noise() : 0
    const ring =
      t < 0
        ? 0
        : Math.exp(-decay * t) * Math.sin(2 * Math.PI * hz * t) +
          0.3 * Math.exp(-4 * decay * t) * Math.sin(2 * Math.PI * 6.3 * hz * t)
    return click + ring + loud * noise()
  })
}

describe('spectrum', () => {
  test('of a sine is one peak where it is, and holds its power (Parseval)', () => {
    const samples = Float64Array.from({ length: 1000 }, (_, i) =>
      Math.sin((2 * Math.PI * 200 * i) / RATE),
    )
    const { stepHz, power } = spectrumOf(samples, RATE)
    const peak = power.indexOf(Math.max(...power))
    expect(Math.abs(peak * stepHz - 200)).toBeLessThan(stepHz)
    // Σ |X|² over all bins is the length times Σ x²: both halves, the window on.
    const windowed = samples.reduce(
      (sum, x, i) => sum + (x * ((1 + Math.cos((Math.PI * i) / 999)) / 2)) ** 2,
      0,
    )
    const both = 2 * power.reduce((a, b) => a + b) - power[0]!
    expect(Math.abs(both / (2 * power.length * windowed) - 1)).toBeLessThan(1e-6)
  })
})

describe('a knock', () => {
  test('is heard where it rings: nineteen of twenty within twice what it is unsure by', () => {
    let heard = 0
    let within = 0
    let far = 0
    const rounds = 120
    for (let round = 0; round < rounds; round++) {
      const hz = 40 + 260 * random()
      const tone = firstTone(
        knock({ hz, damping: 0.01 + 0.03 * random(), noise: 0.02 + 0.1 * random() }),
        RATE,
        hz * (0.75 + 0.5 * random()),
      )
      if (tone === null) continue
      heard++
      if (Math.abs(tone.hz - hz) <= 2 * tone.doubtHz) within++
      if (Math.abs(tone.hz / hz - 1) > 0.03) far++
    }
    expect(heard).toBeGreaterThan(0.9 * rounds)
    expect(within).toBeGreaterThan(0.95 * heard)
    expect(far).toBeLessThan(0.02 * rounds)
  })

  test('is not heard in noise, nor in too little sound', () => {
    let heard = 0
    for (let round = 0; round < 60; round++) {
      const hiss = Float64Array.from({ length: RATE }, noise)
      if (firstTone(hiss, RATE, 90) !== null) heard++
    }
    expect(heard).toBeLessThan(3)
    expect(firstTone(new Float64Array(100).fill(0.1), RATE, 90)).toBeNull()
  })
})

describe('what a knock teaches', () => {
  const petg = MATERIALS.find(({ id }) => id === 'petg')!

  test('the plastic takes its share: sd 10 % of it against 7.5 % of the hold, by hand', () => {
    const lesson = knockTeaches({ hz: 110, doubtHz: 0.2 }, 100, petg)
    const share = 0.01 / (0.01 + 0.005625 + (0.4 / 110) ** 2)
    expect(lesson.share).toBeCloseTo(share, 6)
    expect(lesson.youngsGPa.mid).toBeCloseTo(2.117 * 1.1 ** (2 * share), 6)
    expect(lesson.isOdd).toBe(false)
    // Surer than before: ±20 % was the table's.
    expect(lesson.youngsGPa.high / lesson.youngsGPa.mid - 1).toBeCloseTo(
      0.2 * Math.sqrt(1 - share),
      6,
    )
  })

  test('taken up, the same knock says the rest of what it says, and less each time', () => {
    const heard = { hz: 110, doubtHz: 0.2 }
    const lesson = knockTeaches(heard, 100, petg)
    const taken = { ...petg, youngsGPa: knockedModulus(lesson, 'Arm') }
    expect(taken.youngsGPa).toMatchObject({ mark: 'user', source: 'knock test of Arm' })
    const nowHz = 100 * Math.sqrt(taken.youngsGPa.value / petg.youngsGPa.value)
    const again = knockTeaches(heard, nowHz, taken)
    expect(again.share).toBeLessThan(lesson.share)
    expect(again.ratio).toBeLessThan(lesson.ratio)
  })

  test('twice the tone is not the plastic', () => {
    expect(knockTeaches({ hz: 200, doubtHz: 1 }, 100, petg).isOdd).toBe(true)
  })
})
