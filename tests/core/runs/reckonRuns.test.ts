import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { RUNS_DEFAULTS } from '../../../src/core/data/runs.ts'
import { layerWork } from '../../../src/core/figures/hours.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { weighFrame } from '../../../src/core/frame/weighFrame.ts'
import type { FramePart } from '../../../src/core/frame/types.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import type { PrintOrder, Spot } from '../../../src/core/model/runs.ts'
import type { LaidRun } from '../../../src/core/runs/handRuns.ts'
import { reckonRuns, type ReckonedPart } from '../../../src/core/runs/reckonRuns.ts'
import { tellRuns } from '../../../src/core/runs/tellRuns.ts'

import { bareFrame, printedPart } from '../../support/ledgerParts.ts'
import { box, tube } from '../../support/meshes.ts'

const PLA = MATERIALS.find(({ id }) => id === 'pla')!
const SHAPES = [box(20, 20, 8), box(60, 8, 4), tube(4, 2.5, 12, 24), tube(15, 11, 3, 32)].map(
  (mesh) => countAllLayers(mesh, RECIPE_DEFAULTS),
)

interface Case {
  readonly parts: readonly ReckonedPart[]
  readonly rows: readonly FramePart[]
  readonly runs: readonly LaidRun[]
}

/** Pieces in runs at random, some in none, some spots of pieces that are gone. */
const cases = fc
  .record({
    kinds: fc.array(
      fc.record({
        shape: fc.nat(SHAPES.length - 1),
        quantity: fc.nat(4),
        spares: fc.nat(2),
        infillPct: fc.integer({ min: 0, max: 100 }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
    runOf: fc.array(fc.nat(3), { minLength: 40, maxLength: 40 }),
    order: fc.constantFrom<PrintOrder>('together', 'one at a time'),
    clockFactor: fc.constantFrom(null, 0.8, 1.3),
    failurePctPerHour: fc.constantFrom(0, 2, 15),
  })
  .map(({ kinds, runOf, order, clockFactor, failurePctPerHour }) => {
    const printer = { ...PRINTER_DEFAULT, clockFactor }
    const prices = { ...PRICES_DEFAULTS, failurePctPerHour }
    const made = kinds.map(({ shape, quantity, spares, infillPct }, i) => {
      const recipe = { ...RECIPE_DEFAULTS, infillPct }
      const census = SHAPES[shape]!
      const figures = partFigures(census, recipe, PLA, printer, prices)
      const work = layerWork(census, recipe, PLA, printer)
      const id = `part ${i}`
      const row = { ...printedPart(id, 1, quantity, { spares, material: PLA }), figures }
      return {
        row,
        part: { id, pieces: quantity + spares, material: PLA, figures, workOn: () => work },
      }
    })
    const spots: Spot[][] = [[], [], []]
    let next = 0
    for (const { part } of made) {
      for (let k = 0; k < part.pieces + 1; k++) {
        const run = runOf[next++ % runOf.length]!
        spots[run]?.push({ partId: part.id, xMm: 7 * next, yMm: 3 * k, turnDeg: 0 })
      }
    }
    const runs = spots.map((own) => ({
      printerId: printer.id,
      materialId: 'pla',
      layerMm: 0.2,
      spots: own,
    }))
    const one: Case = {
      parts: made.map(({ part }) => part),
      rows: made.map(({ row }) => row),
      runs,
    }
    return { ...one, workshop: { printer, prices, settings: { ...RUNS_DEFAULTS, order } } }
  })

describe('shares of print runs', () => {
  test('rows add up to the runs and to what is printed alone, in hours and in money', () => {
    fc.assert(
      fc.property(cases, ({ parts, rows, runs, workshop }) => {
        const { runs: reckoned, shares } = reckonRuns(parts, runs, workshop)
        const frame = { ...bareFrame(), printer: workshop.printer }
        const sum = weighFrame(
          rows.map((row) => ({ ...row, ...shareOf(shares, row.part.id) })),
          frame,
        )
        const inRuns = new Map<string, number>()
        for (const { spots } of reckoned) {
          for (const { partId } of spots) inRuns.set(partId, (inRuns.get(partId) ?? 0) + 1)
        }
        const alone = (of: (part: ReckonedPart) => number) =>
          parts.reduce((all, p) => all + (p.pieces - (inRuns.get(p.id) ?? 0)) * of(p), 0)
        const timeS = reckoned.reduce((all, run) => all + run.timeS, 0)
        const cost = reckoned.reduce((all, run) => all + run.cost, 0)
        const wholeS = timeS + alone(({ figures }) => figures.timeS.mid)
        const whole = cost + alone(({ figures }) => figures.cost.mid)
        expect(sum.withSpares.timeS.mid).toBeCloseTo(wholeS, 5)
        expect(sum.withSpares.cost.mid).toBeCloseTo(whole, 8)
        const column = (of: 'timeS' | 'cost') =>
          sum.rows.reduce((all, row) => all + row.withSpares[of].mid, 0)
        expect(column('timeS')).toBeCloseTo(wholeS, 5)
        expect(column('cost')).toBeCloseTo(whole, 8)
        // What is told of the runs is out of the same model.
        const told = tellRuns(reckoned, sum, new Map(), workshop)
        for (const [i, run] of told.entries()) {
          expect(run.timeS.mid).toBeCloseTo(reckoned[i]!.timeS, 5)
          expect(run.cost.mid).toBeCloseTo(reckoned[i]!.cost, 8)
          expect(run.timeS.high).toBeGreaterThan(run.timeS.mid)
        }
      }),
      { numRuns: 60 },
    )
  })

  test('a piece alone in its run takes and costs what it does alone', () => {
    fc.assert(
      fc.property(cases, ({ parts, workshop }) => {
        const [part] = parts
        if (part === undefined || part.pieces === 0) return
        const spot = { partId: part.id, xMm: 0, yMm: 0, turnDeg: 0 }
        const printerId = workshop.printer.id
        const run = { printerId, materialId: 'pla', layerMm: 0.2, spots: [spot] }
        const share = reckonRuns([{ ...part, pieces: 1 }], [run], workshop).shares.get(part.id)!
        expect(share.timeS.mid).toBeCloseTo(part.figures.timeS.mid, 6)
        expect(share.cost.mid).toBeCloseTo(part.figures.cost.mid, 8)
        expect(share.cost.high).toBeCloseTo(part.figures.cost.high, 8)
      }),
      { numRuns: 30 },
    )
  })

  test('a failure takes the whole run: four hours of it by hand', () => {
    const prices = {
      ...PRICES_DEFAULTS,
      failurePctPerHour: 10,
      wearPerHour: 1,
      electricityPerKwh: 0,
      wastePct: 0,
    }
    const printer = { ...PRINTER_DEFAULT, startS: 0, layerChangeS: 0, retractS: 0, leastLayerS: 0 }
    const ownS = new Float64Array(100).fill(72)
    const figures = partFigures(SHAPES[0]!, RECIPE_DEFAULTS, PLA, printer, prices)
    const part = (id: string): ReckonedPart => ({
      id,
      pieces: 1,
      material: { ...PLA, pricePerKg: { ...PLA.pricePerKg, value: 0 } },
      figures,
      workOn: () => ({ ownS, slowestS: ownS }),
    })
    const spots = ['a', 'b'].map((partId) => ({ partId, xMm: 50, yMm: 50, turnDeg: 0 }))
    const { runs } = reckonRuns(
      [part('a'), part('b')],
      [{ printerId: printer.id, materialId: 'pla', layerMm: 0.2, spots }],
      { printer, prices, settings: RUNS_DEFAULTS },
    )
    // Two pieces of 100 layers of 72 s: 4 h at 1 an hour, and 0.9^4 of such prints succeed.
    expect(runs[0]!.timeS).toBeCloseTo(4 * 3600, 0)
    expect(runs[0]!.cost).toBeCloseTo(4 / 0.9 ** 4, 2)
    expect(runs[0]!.lostAtEnd).toBeCloseTo(4, 2)
  })
})

function shareOf(shares: ReturnType<typeof reckonRuns>['shares'], id: string) {
  const share = shares.get(id)
  return share === undefined ? {} : { share }
}
