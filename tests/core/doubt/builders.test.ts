import { describe, expect, it } from 'vitest'
import type { DoubtLine } from '../../../src/core/doubt/lines.ts'
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

function runBuilders(weighings: number): { held: number; width: number; off: number } {
  const tally = { parts: 0, held: 0, width: 0, off: 0 }
  for (let builder = 0; builder < BUILDERS; builder++) {
    const normal = seededNormal(1000 + builder)
    const lines = partsOf(seededRandom(5000 + builder))
    const truth = weigh(lines, normal)
    const readings = lines.slice(0, weighings).map(({ id }) => {
      return weighed(id, Math.round((truth.get(id)?.[0] ?? 0) * 10) / 10)
    })
    const known = understand(lines, readings)
    // Always the same parts, so that the columns can be compared.
    for (const { id } of lines.slice(10)) {
      const { mean, sigma } = known.bell(known.line(id))
      const totalG = truth.get(id)?.reduce((sum, one) => sum + one, 0) ?? 0
      tally.parts++
      if (Math.abs(totalG - mean) <= Z90 * sigma) tally.held++
      tally.width += (2 * Z90 * sigma) / mean
      tally.off += Math.abs(totalG / mean - 1)
    }
  }
  const { parts, held, width, off } = tally
  return { held: held / parts, width: width / parts, off: off / parts }
}

describe('200 simulated builders with hidden factors', () => {
  const runs = [0, 1, 3, 10].map((weighings) => ({ weighings, ...runBuilders(weighings) }))

  it.each(runs)('holds 90 % of unweighed parts after $weighings weighings', ({ held }) => {
    expect(held).toBeGreaterThanOrEqual(0.86)
    expect(held).toBeLessThanOrEqual(0.94)
  })

  it('is narrower after each of them, and its middle nearer', () => {
    for (const key of ['width', 'off'] as const) {
      const values = runs.map((run) => run[key])
      expect(values).toEqual(values.toSorted((a, b) => b - a))
      expect(values[3]!).toBeLessThan(0.6 * values[0]!)
    }
  })
})
