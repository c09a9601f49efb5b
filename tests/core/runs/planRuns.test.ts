import { describe, expect, test } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { RUNS_DEFAULTS } from '../../../src/core/data/runs.ts'
import { powerOf } from '../../../src/core/figures/power.ts'
import { placeMesh } from '../../../src/core/mesh/pose.ts'
import type { Printer } from '../../../src/core/model/figures.ts'
import { POSE_AS_DRAWN } from '../../../src/core/model/settings.ts'
import { outlineOf } from '../../../src/core/runs/outline.ts'
import type { RunPart, RunWorkshop } from '../../../src/core/runs/planBeds.ts'
import { planRuns } from '../../../src/core/runs/planRuns.ts'
import { box } from '../../support/meshes.ts'

const PLA = MATERIALS.find(({ id }) => id === 'pla')!
const PETG = MATERIALS.find(({ id }) => id === 'petg')!
const LAYERS = 100

/** Blocks of 20 mm of an hour each: 100 layers of 36 s. */
function blocks(id: string, count: number, material = PLA): RunPart {
  const outline = outlineOf(placeMesh(box(20, 20, 20), 1, POSE_AS_DRAWN))
  if (outline === null) throw new Error('A block without a size.')
  const ownS = new Float64Array(LAYERS).fill(36)
  const work = { ownS, slowestS: ownS }
  return {
    id,
    count,
    outline,
    brimMm: 0,
    material,
    layerMm: 0.2,
    firstLayerMm: 0.2,
    works: { [PRINTER.id]: work },
    spoolG: 10,
    waits: 0,
  }
}

/** Nothing between two pieces takes longer than a quarter of a second. */
const PRINTER: Printer = { ...PRINTER_DEFAULT, startS: 0, layerChangeS: 0, retractS: 0 }
const workshop = (printer: Partial<Printer>, failurePctPerHour = 0): RunWorkshop => ({
  printer: { ...PRINTER, ...printer },
  prices: { ...PRICES_DEFAULTS, failurePctPerHour },
  settings: { ...RUNS_DEFAULTS, eveningH: 4 },
})

describe('pieces divided into runs', () => {
  test.each([
    // Of 1 h and something for the ways, three go into an evening of 4 h.
    { clockFactor: null, each: 3 },
    // Of 1.5 h two do.
    { clockFactor: 1.5, each: 2 },
    // Of 0.7 h five do.
    { clockFactor: 0.7, each: 5 },
  ])('evenings hold what the printer’s clock $clockFactor lets them', ({ clockFactor, each }) => {
    const runs = planRuns([blocks('a', 6)], workshop({ clockFactor }), 'evenings')!
    expect(Math.max(...runs.map(({ spots }) => spots.length))).toBe(each)
    expect(runs).toHaveLength(Math.ceil(6 / each))
    for (const { timeS, spots } of runs) {
      const laidS = spots.length * 3600 * (clockFactor ?? 1)
      expect(timeS).toBeGreaterThanOrEqual(laidS)
      expect(timeS).toBeLessThan(laidS + 0.25 * LAYERS * spots.length)
      expect(timeS).toBeLessThanOrEqual(4 * 3600)
    }
  })

  test('a print that outlasts the evening has the night', () => {
    const runs = planRuns([blocks('a', 4)], workshop({ clockFactor: 4.5 }), 'evenings')!
    // 4.5 h each: two are done within ten hours, three are not.
    expect(runs.map(({ spots }) => spots.length)).toEqual([2, 2])
  })

  test('where many fail, the least is lost one by one; where none does, with one start', () => {
    const lay = (failurePct: number) =>
      planRuns([blocks('a', 4)], workshop({ startS: 600 }, failurePct), 'least loss')!
    expect(lay(0).map(({ spots }) => spots.length)).toEqual([4])
    expect(lay(20).map(({ spots }) => spots.length)).toEqual([1, 1, 1, 1])
  })

  test('each is of one plastic, the shortest first', () => {
    const runs = planRuns([blocks('a', 3), blocks('b', 2, PETG)], workshop({}), 'fewest beds')!
    expect(runs.map(({ materialId, spots }) => [materialId, spots.length])).toEqual([
      ['petg', 2],
      ['pla', 3],
    ])
  })

  test('by hand: a full bed that fails at its end loses four pieces, a near-empty one one', () => {
    // 10 g at the table's price with its waste, an hour of draw and wear, of each piece.
    const alone = expectedCost(1, 600, 5)
    const full = expectedCost(4, 600, 5)
    const laid = planRuns([blocks('a', 4)], workshop({ startS: 600 }, 5), 'least loss')!
    const runs = laid.map(({ spots }) => spots.length)
    expect(full.lost).toBeGreaterThan(3.8 * alone.lost)
    // Four hours and ten minutes of such prints: 1 − 0.95^(4 1/6) of them fail.
    expect(full.failing).toBeCloseTo(1 - 0.95 ** (4 + 1 / 6), 9)
    const chosen = runs.reduce((sum, count) => sum + expectedCost(count, 600, 5).cost, 0)
    expect(chosen).toBeLessThanOrEqual(Math.min(full.cost, 4 * alone.cost) + 0.001)
  })

  test('alike pieces are divided for the least expected loss that there is', () => {
    for (const failurePct of [0, 1, 3, 6, 10, 20]) {
      for (const startS of [60, 600, 1800]) {
        const laid = planRuns([blocks('a', 6)], workshop({ startS }, failurePct), 'least loss')!
        const chosen = laid.reduce(
          (sum, { spots }) => sum + expectedCost(spots.length, startS, failurePct).cost,
          0,
        )
        // Every way to write 6 as a sum; ways from piece to piece cost a thousandth.
        const least = Math.min(
          ...partitionsOf(6).map((counts) =>
            counts.reduce((sum, count) => sum + expectedCost(count, startS, failurePct).cost, 0),
          ),
        )
        const of = `${failurePct} % an hour, start ${startS} s: ${laid.map(({ spots }) => spots.length).join(' + ')}`
        expect(chosen / least, of).toBeLessThan(1.002)
      }
    }
  })
})

/** By hand: what so many blocks of an hour cost, with the failed prints before a good one. */
function expectedCost(count: number, startS: number, failurePct: number) {
  const hours = count + startS / 3600
  const { electricityPerKwh, wearPerHour, wastePct } = PRICES_DEFAULTS
  const filament = count * 0.01 * PLA.pricePerKg.value * (1 + wastePct / 100)
  const lost = filament + hours * ((powerOf(PRINTER, PLA) / 1000) * electricityPerKwh + wearPerHour)
  const failing = 1 - (1 - failurePct / 100) ** hours
  return { lost, failing, cost: lost / (1 - failing) }
}

function partitionsOf(sum: number, most = sum): readonly (readonly number[])[] {
  if (sum === 0) return [[]]
  return Array.from({ length: Math.min(sum, most) }, (_, i) => i + 1).flatMap((first) =>
    partitionsOf(sum - first, first).map((rest): readonly number[] => [first, ...rest]),
  )
}
