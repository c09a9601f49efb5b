import { describe, expect, it } from 'vitest'
import { clockDoubt } from '../../../src/core/doubt/factors.ts'
import type { DoubtLine } from '../../../src/core/doubt/lines.ts'
import type { Reading } from '../../../src/core/doubt/readings.ts'
import { understand } from '../../../src/core/doubt/understand.ts'
import { printedLine, weighed } from '../../support/doubtLines.ts'
import { materialOf } from '../../support/ledgerParts.ts'
import { seededNormal, seededRandom } from '../../support/random.ts'

const BUILDERS = 200
/** To each side of the middle, in deviations, for 90 % of cases. */
const Z90 = 1.645
const plastics = ['pla', 'petg'].map(materialOf)

/** Fifteen parts of two plastics on one printer, each made up differently. */
function partsOf(random: () => number): DoubtLine[] {
  return Array.from({ length: 15 }, (_, i) =>
    printedLine(`part ${i}`, 3 + 40 * random(), 1 + Math.floor(4 * random()), plastics[i % 2], {
      packed: 0.3 + 0.7 * random(),
      firstLayer: 0.2 * random(),
      count: 0.025 + 0.05 * random(),
      turns: 0.2 * random(),
    }),
  )
}

/** What one builder's pieces weigh: factors multiply here, where the model adds them. */
function weigh(lines: readonly DoubtLine[], normal: () => number): Map<string, number[]> {
  const hidden = new Map<string, number>()
  const draw = (id: string): number => {
    if (!hidden.has(id)) hidden.set(id, normal())
    return hidden.get(id) ?? 0
  }
  return new Map(
    lines.map(({ id, each, quantity, doubt, scatter }) => {
      const shared = doubt.shared.reduce((product, one) => {
        return product * (1 + one.effect * draw(one.id))
      }, 1)
      const design = each * shared * (1 + doubt.own * normal())
      return [id, Array.from({ length: quantity }, () => design * (1 + scatter * normal()))]
    }),
  )
}

interface Score {
  readonly held: number
  readonly width: number
  readonly off: number
  /** Share of builders of whom just the spoilt reading was set aside. */
  readonly caught: number
}

/** `spoil` makes a reading wrong: the third, by this factor. */
function runBuilders(
  weighings: number,
  makeLines: (random: () => number) => DoubtLine[] = partsOf,
  read: (lineId: string, value: number) => Reading = weighedPiece,
  spoil = 1,
): Score {
  const tally = { parts: 0, held: 0, width: 0, off: 0, caught: 0 }
  for (let builder = 0; builder < BUILDERS; builder++) {
    const normal = seededNormal(1000 + builder)
    const lines = makeLines(seededRandom(5000 + builder))
    const truth = weigh(lines, normal)
    const readings = lines.slice(0, weighings).map(({ id }, i) => {
      return read(id, (truth.get(id)?.[0] ?? 0) * (i === 2 ? spoil : 1))
    })
    const known = understand(lines, readings)
    const strays = known.strays.map(({ id }) => id)
    if (strays.length === 1 && strays[0] === readings[2]?.id) tally.caught++
    // Always the same parts, so that the columns can be compared.
    for (const { id } of lines.slice(10)) {
      const { mean, sigma } = known.bell(known.line(id))
      const total = truth.get(id)?.reduce((sum, one) => sum + one, 0) ?? 0
      tally.parts++
      if (Math.abs(total - mean) <= Z90 * sigma) tally.held++
      tally.width += (2 * Z90 * sigma) / mean
      tally.off += Math.abs(total / mean - 1)
    }
  }
  const { parts, held, width, off, caught } = tally
  return { held: held / parts, width: width / parts, off: off / parts, caught: caught / BUILDERS }
}

/** On a scale of 0.1 g. */
function weighedPiece(lineId: string, massG: number): Reading {
  return weighed(lineId, Math.round(massG * 10) / 10)
}

/** By a clock read to the minute, as `clockReadings` has it. */
function timedPrint(lineId: string, timeS: number): Reading {
  const of = { kind: 'run', pieces: [{ lineId, pieces: 1 }] } as const
  return {
    id: `timed ${lineId}`,
    value: Math.round(timeS / 60) * 60,
    noise: 30,
    of,
    trusted: false,
  }
}

/** Fifteen prints of twenty minutes to five hours, of long lines and of short ones. */
function printsOf(random: () => number): DoubtLine[] {
  return Array.from({ length: 15 }, (_, i) => ({
    id: `print ${i}`,
    name: `print ${i}`,
    quantity: 1,
    each: 1200 + 16_800 * random(),
    doubt: clockDoubt({ id: 'printer', clockFactor: null }, 0.2 * random()),
    scatter: 0,
  }))
}

const COUNTS = [0, 1, 3, 10]

describe.each([
  ['grams by the scale', partsOf, weighedPiece],
  ['hours by the clock', printsOf, timedPrint],
] as const)('200 simulated builders with hidden factors: %s', (_, makeLines, read) => {
  const runs = COUNTS.map((readings) => ({ readings, ...runBuilders(readings, makeLines, read) }))

  it.each(runs)('holds 90 % of what was not read after $readings readings', ({ held }) => {
    expect(held).toBeGreaterThanOrEqual(0.86)
    expect(held).toBeLessThanOrEqual(0.94)
  })

  it('is narrower after each of them, and its middle nearer', () => {
    for (const key of ['width', 'off'] as const) {
      const values = runs.map((run) => run[key])
      for (const [i, value] of values.slice(1).entries()) expect(value).toBeLessThan(values[i]!)
      expect(values[3]!).toBeLessThan(0.6 * values[0]!)
    }
  })
})

describe('200 simulated builders with one of five readings a third too high', () => {
  const spoilt = runBuilders(5, partsOf, weighedPiece, 1.33)
  const sound = runBuilders(5)

  it('set it aside and no other', () => {
    expect(spoilt.caught).toBeGreaterThan(0.95)
    expect(sound.caught).toBeLessThan(0.02)
  })

  it('are told the rest as well as by the other four alone: 90 % held, the middle as near', () => {
    expect(spoilt.held).toBeGreaterThanOrEqual(0.86)
    expect(spoilt.held).toBeLessThanOrEqual(0.94)
    expect(spoilt.off).toBeLessThan(1.1 * sound.off)
  })
})
