import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { RUNS_DEFAULTS } from '../../../src/core/data/runs.ts'
import { clockDoubt, onPrinter } from '../../../src/core/doubt/factors.ts'
import { layerWork } from '../../../src/core/figures/hours.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { lessonsOf } from '../../../src/core/frame/lessonsOf.ts'
import { weighFrame } from '../../../src/core/frame/weighFrame.ts'
import { placeMesh } from '../../../src/core/mesh/pose.ts'
import type { Printer, Range } from '../../../src/core/model/figures.ts'
import type { ClockTime } from '../../../src/core/model/readings.ts'
import type { RunWay } from '../../../src/core/model/runs.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { bedFaults } from '../../../src/core/runs/bedFaults.ts'
import { finishOf } from '../../../src/core/runs/finish.ts'
import { outlineOf } from '../../../src/core/runs/outline.ts'
import type { RunPart, RunWorkshop } from '../../../src/core/runs/planBeds.ts'
import { planRuns } from '../../../src/core/runs/planRuns.ts'
import { reckonRuns } from '../../../src/core/runs/reckonRuns.ts'
import { bedOf, printerOf } from '../../../src/core/runs/runPrinters.ts'
import { soonestDone } from '../../../src/core/runs/soonestDone.ts'
import { tellRuns } from '../../../src/core/runs/tellRuns.ts'
import { bareFrame, printedPart } from '../../support/ledgerParts.ts'
import { box } from '../../support/meshes.ts'

const PLA = MATERIALS.find(({ id }) => id === 'pla')!
const PETG = MATERIALS.find(({ id }) => id === 'petg')!
const WAYS: readonly RunWay[] = ['fewest beds', 'evenings', 'least loss']
const QUICK = { startS: 0, layerChangeS: 0, retractS: 0 }
/** Nothing between two pieces takes longer than a quarter of a second. */
const LEFT: Printer = { ...PRINTER_DEFAULT, ...QUICK, id: 'left', name: 'Left' }
const RIGHT: Printer = { ...LEFT, id: 'right', name: 'Right' }
const LARGE: Printer = { ...LEFT, id: 'large', name: 'Large', bedMm: [400, 300, 300] }
const HOUR_LAYERS = new Float64Array(100).fill(36)

/** Blocks of an hour each on any printer. */
function blocks(id: string, count: number, sideMm = 20, material = PLA): RunPart {
  const outline = outlineOf(placeMesh(box(sideMm, 20, 20), 1, POSE_AS_DRAWN))
  if (outline === null) throw new Error('A block without a size.')
  const work = { ownS: HOUR_LAYERS, slowestS: HOUR_LAYERS }
  const works = { left: work, right: work, large: work }
  const laid = { outline, brimMm: 0, layerMm: 0.2, firstLayerMm: 0.2, spoolG: 10, waits: 0 }
  return { id, count, material, works, ...laid }
}

const workshop = (printers: readonly Printer[], printer = LEFT): RunWorkshop => ({
  printer,
  printers,
  prices: { ...PRICES_DEFAULTS, failurePctPerHour: 2 },
  settings: { ...RUNS_DEFAULTS, eveningH: 4 },
})
const hours = (timeS: number) => timeS / 3600

describe('which printer a run goes on', () => {
  test('is done as soon as by any way there is, of up to six runs on up to three printers', () => {
    const timeS = fc.option(fc.integer({ min: 1, max: 50 }), { freq: 5 })
    const all = fc.integer({ min: 1, max: 3 }).chain((printers) =>
      fc.array(
        fc
          .tuple(
            fc.array(timeS, { minLength: printers, maxLength: printers }),
            fc.nat(printers - 1),
          )
          // Each goes on one of them at least.
          .map(([own, sure]) => own.with(sure, own[sure] ?? 25)),
        { minLength: 1, maxLength: 6 },
      ),
    )
    fc.assert(
      fc.property(all, (timesS) => {
        expect(endOf(timesS, soonestDone(timesS))).toBe(leastEnd(timesS))
      }),
    )
  })

  test('six hours of three runs by hand: 3 and 2 + 1 on two alike, not 3 + 2 and 1', () => {
    const places = soonestDone([
      [3, 3],
      [2, 2],
      [1, 1],
    ])
    expect(
      endOf(
        [
          [3, 3],
          [2, 2],
          [1, 1],
        ],
        places,
      ),
    ).toBe(3)
  })
})

describe('pieces on several printers', () => {
  test('by hand: six pieces of an hour, in evenings of four, are done in three on two printers', () => {
    const runs = planRuns([blocks('a', 6)], workshop([RIGHT]), 'evenings')!
    expect(runs.map(({ spots }) => spots.length)).toEqual([3, 3])
    expect(new Set(runs.map(({ printerId }) => printerId))).toEqual(new Set(['left', 'right']))
    const { inTurnS, sideBySideS } = finishOf(runs)
    expect(hours(inTurnS)).toBeCloseTo(6, 1)
    expect(hours(sideBySideS)).toBeCloseTo(3, 1)
    const alone = planRuns([blocks('a', 6)], workshop([]), 'evenings')!
    expect(hours(finishOf(alone).sideBySideS)).toBeCloseTo(6, 1)
  })

  test('a printer twice as fast has twice as many', () => {
    const fast = { ...RIGHT, clockFactor: 0.5 }
    const runs = planRuns([blocks('a', 6)], workshop([fast]), 'evenings')!
    const on = (id: string) =>
      runs.filter(({ printerId }) => printerId === id).reduce((n, { spots }) => n + spots.length, 0)
    expect([on('left'), on('right')]).toEqual([2, 4])
    expect(hours(finishOf(runs).sideBySideS)).toBeCloseTo(2, 1)
  })

  test('beds stay as few; what goes on one bed of each plastic is printed side by side', () => {
    const parts = [blocks('a', 3), blocks('b', 3, 20, PETG)]
    const runs = planRuns(parts, workshop([RIGHT]), 'fewest beds')!
    expect(runs).toHaveLength(2)
    expect(hours(finishOf(runs).sideBySideS)).toBeCloseTo(3, 1)
  })

  test.each(WAYS)(
    '%s: all pieces once, each on a bed that takes it, long ones on the large one',
    (way) => {
      const parts = [blocks('bar', 3, 320), blocks('a', 7), blocks('b', 2, 60, PETG)]
      const shop = workshop([RIGHT, LARGE])
      const runs = planRuns(parts, shop, way)!
      const counts = Object.fromEntries(parts.map(({ id }) => [id, 0]))
      for (const { spots, printerId, materialId } of runs) {
        const bed = bedOf(printerOf(shop, printerId), shop.settings)
        const pieceOf = (id: string) => parts.find((part) => part.id === id) ?? null
        expect(bedFaults(spots, pieceOf, bed)).toEqual([])
        for (const { partId, printerId: on = 'left' } of spots) {
          counts[partId] = (counts[partId] ?? 0) + 1
          expect(on).toBe(printerId)
          expect(pieceOf(partId)?.material.id).toBe(materialId)
          if (partId === 'bar') expect(printerId).toBe('large')
        }
      }
      expect(counts).toEqual({ bar: 3, a: 7, b: 2 })
    },
  )

  test('coupons are printed before all others and with none of them', () => {
    const parts = [blocks('long', 1), { ...blocks('coupon', 1), isCoupon: true }, blocks('a', 4)]
    const [first, ...rest] = planRuns(parts, workshop([]), 'fewest beds')!
    expect(first!.spots.map(({ partId }) => partId)).toEqual(['coupon'])
    expect(rest.flatMap(({ spots }) => spots).map(({ partId }) => partId)).not.toContain('coupon')
  })

  test('how far hours may be off is the clock of the printer they are printed on', () => {
    const timed = { ...RIGHT, clockFactor: 1.1 }
    const on = onPrinter(clockDoubt(LEFT, 0.2), LEFT, timed)
    expect(on.shared.map(({ id }) => id)).toEqual(['pace:right', 'acceleration:right'])
    expect(on).toEqual(clockDoubt(timed, 0.2))
    expect(onPrinter(clockDoubt(LEFT, 0.2), LEFT, RIGHT)).toEqual(clockDoubt(RIGHT, 0.2))
  })
})

type Times = readonly (readonly (number | null)[])[]

function endOf(timesS: Times, places: readonly number[]): number {
  const loads = (timesS[0] ?? []).map(() => 0)
  for (const [i, own] of timesS.entries()) {
    const k = places[i]!
    loads[k] = loads[k]! + (own[k] ?? Infinity)
  }
  return Math.max(...loads)
}

/** Every assignment there is. */
function leastEnd(timesS: Times): number {
  const printers = timesS[0]!.length
  let least = Infinity
  for (let code = 0; code < printers ** timesS.length; code++) {
    const places = timesS.map((_, i) => Math.floor(code / printers ** i) % printers)
    least = Math.min(least, endOf(timesS, places))
  }
  return least
}

describe('what the clock of one printer says', () => {
  const census = countAllLayers(box(20, 20, 8), RECIPE_DEFAULTS)
  const [own, other] = [PRINTER_DEFAULT, { ...PRINTER_DEFAULT, id: 'other', name: 'Other' }]
  const printers = { printer: own, printers: [other] }
  const made = ['a', 'b'].map((id) => {
    const figures = partFigures(census, RECIPE_DEFAULTS, PLA, own, PRICES_DEFAULTS)
    const workOn = (printer: Printer) => layerWork(census, RECIPE_DEFAULTS, PLA, printer)
    return { id, pieces: 1, material: PLA, figures, workOn }
  })
  const run = (partId: string, printerId: string) => {
    const spots = [{ partId, xMm: 50, yMm: 50, turnDeg: 0 }]
    return { printerId, materialId: 'pla', layerMm: 0.2, spots }
  }
  const shop = { ...printers, prices: PRICES_DEFAULTS, settings: RUNS_DEFAULTS }
  const { runs, shares } = reckonRuns(made, [run('a', own.id), run('b', 'other')], shop)
  const rows = made.map(({ id, figures }) => ({
    ...printedPart(id, 1, 1, { material: PLA }),
    figures,
    share: shares.get(id)!,
  }))
  const told = (clocks: readonly ClockTime[]) => {
    const sum = weighFrame(rows, { ...bareFrame(), printer: own, clocks })
    return { sum, hours: tellRuns(runs, sum, new Map(), printers).map(({ timeS }) => timeS) }
  }
  const before = told([])
  const CLOCK: ClockTime = {
    id: 'clock',
    pieces: { b: 1 },
    timeS: 1.2 * runs[1]!.timeS,
    calculatedS: runs[1]!.timeS,
    date: null,
    trusted: true,
    beside: true,
  }
  const after = told([{ ...CLOCK, printerId: 'other' }])

  test('moves the hours of its own runs and of no other', () => {
    expect(runs[1]!.timeS).toBeCloseTo(runs[0]!.timeS, 6)
    expect(after.hours[0]).toEqual(before.hours[0])
    expect(after.hours[1]!.mid).toBeGreaterThan(1.1 * before.hours[1]!.mid)
    const width = ({ low, mid, high }: Range) => (high - low) / mid
    expect(width(after.hours[1]!)).toBeLessThan(width(before.hours[1]!))
  })

  test('stays with its printer when its pieces are printed on another by now', () => {
    const both = reckonRuns(made, [run('a', own.id), run('b', own.id)], shop)
    const onOwn = rows.map((row) => ({ ...row, share: both.shares.get(row.part.id)! }))
    const clocks = [{ ...CLOCK, printerId: 'other' }]
    const sum = weighFrame(onOwn, { ...bareFrame(), printer: own, clocks })
    const [first] = tellRuns(both.runs, sum, new Map(), printers)
    expect(first!.timeS).toEqual(before.hours[0])
    expect(sum.learnedHours).toBeNull()
    // Of the frame's own printer the same time moves both.
    const ofOwn = weighFrame(onOwn, { ...bareFrame(), printer: own, clocks: [CLOCK] })
    expect(tellRuns(both.runs, ofOwn, new Map(), printers)[0]!.timeS.mid).toBeGreaterThan(
      1.1 * before.hours[0]!.mid,
    )
  })

  test('is told of that printer, and teaches later frames of it', () => {
    expect(after.sum.learnedHours).toBeNull()
    const [lesson] = lessonsOf(after.sum.doubt, 'f', own.id)
    expect(lesson).toMatchObject({ of: 'time', printerId: 'other' })
    expect(lesson!.shared.map(({ id }) => id)).toContain('pace:other')
  })
})
