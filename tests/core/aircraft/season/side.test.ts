import { describe, expect, it } from 'vitest'
import { exactRange, ZERO_RANGE } from '../../../../src/core/model/ranges.ts'
import { poissonBeyond } from '../../../../src/core/aircraft/season/poisson.ts'
import { seededRandom } from '../../../../src/core/aircraft/season/random.ts'
import type { SeasonLine } from '../../../../src/core/aircraft/season/side.ts'
import { seasonSide } from '../../../../src/core/aircraft/season/side.ts'
import { playSeasons } from '../../../../src/core/aircraft/season/simulate.ts'

const ARM: SeasonLine = {
  partId: 'arm',
  name: 'Arm',
  breaksPerCrash: 0.4,
  spares: 2,
  pieceCost: { low: 0.8, mid: 1, high: 1.2 },
  waitDays: exactRange(0.25),
}
const BOOM: SeasonLine = {
  partId: 'boom',
  name: 'Boom',
  breaksPerCrash: 0.15,
  spares: 0,
  pieceCost: exactRange(2),
  waitDays: exactRange(0.5),
}
const LINES = [BOOM, ARM]
const SEASON = { flights: 60, crashesPerFlight: 0.1 }

describe('a season on one frame', () => {
  const side = seasonSide(SEASON, LINES, exactRange(16))

  it('breaks crashes × chance of each part', () => {
    expect(side.crashes).toBeCloseTo(6, 12)
    expect(side.lines.find(({ partId }) => partId === 'arm')?.breaks).toBeCloseTo(2.4, 12)
    expect(side.lines.find(({ partId }) => partId === 'boom')?.breaks).toBeCloseTo(0.9, 12)
  })

  it('puts first what breaks first, and says after how many flights', () => {
    expect(side.lines.map(({ partId }) => partId)).toEqual(['arm', 'boom'])
    const damaging = 1 - 0.6 * 0.85
    expect(side.lines[0]?.firstToBreak).toBeCloseTo((0.4 * 0.85 + 0.06 / 2) / damaging, 12)
    expect(side.flightsToFirst).toBeCloseTo(1 / (0.1 * damaging), 12)
  })

  it('wants spares that keep running out below 5 %', () => {
    // Mean 2.4: P(N ≤ 4) = 0.9041, P(N ≤ 5) = 0.9643. Mean 0.9: P(N ≤ 2) = 0.9371, P(N ≤ 3) =
    // 0.9865.
    expect(side.lines.map(({ sparesWanted }) => sparesWanted)).toEqual([5, 3])
    // P(N ≤ 2) at 2.4 = e^−2.4 (1 + 2.4 + 2.88).
    expect(side.lines[0]?.runOut).toBeCloseTo(1 - Math.exp(-2.4) * 6.28, 12)
  })

  it('costs frame, spares and pieces beyond the spares, and their waits', () => {
    const arms = poissonBeyond(2, 2.4)
    expect(side.cost.mid).toBeCloseTo(16 + 2 + arms + 0.9 * 2, 12)
    expect(side.groundedDays.mid).toBeCloseTo(arms * 0.25 + 0.9 * 0.5, 12)
  })

  it('has a band round the mean that starts at what is paid anyway', () => {
    expect(side.cost.low).toBeCloseTo(16 + 1.6, 12)
    expect(side.cost.high).toBeGreaterThan(side.cost.mid)
    expect(side.groundedDays.low).toBe(0)
    expect(side.groundedDays.high).toBeGreaterThan(side.groundedDays.mid)
  })

  it('plays the same every time', () => {
    expect(seasonSide(SEASON, LINES, exactRange(16))).toEqual(side)
  })

  it('with spares enough is never grounded in nine seasons of ten', () => {
    const kept = [{ ...ARM, spares: 5 }]
    const covered = seasonSide(SEASON, kept, ZERO_RANGE)
    expect(covered.lines[0]?.runOut).toBeLessThan(0.05)
    expect(covered.groundedDays.high).toBeLessThan(0.05)
  })

  it('without crashes or parts costs the frame and grounds nobody', () => {
    const calm = seasonSide({ flights: 50, crashesPerFlight: 0 }, LINES, exactRange(16))
    expect(calm.cost).toEqual({ low: 17.6, mid: 18, high: 18.4 })
    expect(calm.groundedDays).toEqual(ZERO_RANGE)
    expect(calm.flightsToFirst).toBeNull()
    expect(seasonSide(SEASON, [], exactRange(16)).cost).toEqual(exactRange(16))
  })

  it('survives senseless numbers', () => {
    const wild = seasonSide(
      { flights: Number.NaN, crashesPerFlight: -1 },
      [{ ...ARM, breaksPerCrash: 7, spares: -3 }],
      exactRange(1),
    )
    expect(wild.crashes).toBe(0)
    expect(wild.cost).toEqual(exactRange(1))
    const many = seasonSide({ flights: 1e9, crashesPerFlight: 1 }, [BOOM], ZERO_RANGE)
    expect(Number.isFinite(many.cost.high)).toBe(true)
    expect(many.lines[0]?.sparesWanted).toBeGreaterThan(15_000)
  })
})

describe('made-up seasons', () => {
  const crashes = 6
  const { seasons, breaks } = playSeasons(crashes, LINES, seededRandom(7))
  const beyond = (line: number, spares: number) =>
    Array.from({ length: seasons }, (_, s) => Math.max(0, breaks[s * 2 + line]! - spares))
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length
  const error = (values: readonly number[]) => {
    const middle = mean(values)
    return Math.sqrt(mean(values.map((value) => (value - middle) ** 2)) / values.length)
  }

  it.each([
    ['arms broken', 1, 0, 2.4],
    ['arms beyond two spares', 1, 2, poissonBeyond(2, 2.4)],
    ['booms broken', 0, 0, 0.9],
    ['booms beyond one spare', 0, 1, poissonBeyond(1, 0.9)],
  ] as const)(
    'agree with the closed form on %s within three standard errors',
    (_, line, spares, expected) => {
      const values = beyond(line, spares)
      expect(seasons).toBe(2000)
      expect(Math.abs(mean(values) - expected)).toBeLessThan(3 * error(values))
    },
  )

  it('spread as Poisson counts do: variance equal to the mean', () => {
    const arms = beyond(1, 0)
    const variance = mean(arms.map((value) => (value - mean(arms)) ** 2))
    // The standard error of a variance of 2000 Poisson counts of mean 2.4 is about 0.08.
    expect(Math.abs(variance - 2.4)).toBeLessThan(0.25)
  })

  it('break two parts in one crash as often as chance says', () => {
    const arms = beyond(1, 0)
    const booms = beyond(0, 0)
    const shared = mean(arms.map((value, s) => value * booms[s]!)) - mean(arms) * mean(booms)
    // Covariance of marks on the same crashes: mean crashes × 0.4 × 0.15.
    expect(Math.abs(shared - 6 * 0.4 * 0.15)).toBeLessThan(0.12)
  })

  it('are fewer where crashes are many, so that a play draws no more than about half a million chances', () => {
    const lines = Array.from({ length: 12 }, () => ARM)
    let drawn = 0
    const random = seededRandom(3)
    const counted = () => {
      drawn += 1
      return random()
    }
    const played = playSeasons(1000, lines, counted)
    expect(played.seasons).toBeGreaterThanOrEqual(20)
    // Poisson scatter of 38 seasons of 1000 crashes is half a per cent.
    expect(drawn).toBeLessThan(520_000)
  })

  it('give the same seasons for the same seed and others for another', () => {
    expect(playSeasons(crashes, LINES, seededRandom(7)).breaks).toEqual(breaks)
    expect(playSeasons(crashes, LINES, seededRandom(8)).breaks).not.toEqual(breaks)
  })
})
