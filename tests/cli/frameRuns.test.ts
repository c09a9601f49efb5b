import { expect, test } from 'vitest'
import { loadFrame } from '../../src/cli/loadFrame.ts'
import { priceFrame } from '../../src/cli/priceFrame.ts'
import { frameTableOf } from '../../src/cli/frameTable.ts'
import { RUNS_DEFAULTS } from '../../src/core/data/runs.ts'
import { emptyFrame } from '../../src/state/store/emptyFrame.ts'
import { withPrinters } from '../../src/core/runs/runPrinters.ts'
import { printedPart } from '../support/ledgerParts.ts'
import { box } from '../support/meshes.ts'
import { writeStlBinary } from '../support/writeMesh.ts'
import { isFailed } from '../../src/cli/report.ts'

test('a second printer halves the waiting, not the hours, and is named on its runs', () => {
  const bytes = writeStlBinary(box(30, 20, 8))
  const part = (id: string, quantity: number) => {
    const { part: own } = printedPart(id, 1, quantity)
    return { ...own, meshHash: 'box', fileName: 'box.stl' }
  }
  const alone = { ...emptyFrame('f'), parts: [part('block', 3), part('clip', 3)] }
  const runs = { ...RUNS_DEFAULTS, way: 'evenings', eveningH: 0.5 } as const
  const frame = { ...alone, printers: withPrinters(alone, [alone.printer]), runs }
  expect(frame.printers.map(({ id }) => id)).toEqual([`${alone.printer.id}-2`])
  const loaded = { frame, meshes: new Map([['box', bytes]]), complaints: [] }
  const report = priceFrame(loaded, () => undefined, 'en-US')
  const { finish, totalWithSpares } = report
  const names = [alone.printer.name, `${alone.printer.name} 2`]
  expect([...new Set(report.runs.map(({ printer }) => printer))].toSorted()).toEqual(names)
  const busy = names.map((name) =>
    report.runs.reduce((sum, { printer, hours }) => sum + (printer === name ? hours.mid : 0), 0),
  )
  expect(finish.inTurnHours).toBeCloseTo(busy[0]! + busy[1]!, 9)
  expect(finish.sideBySideHours).toBeCloseTo(Math.max(...busy), 9)
  expect(finish.inTurnHours).toBeCloseTo(totalWithSpares.timeS.mid / 3600, 8)
  // Six alike on two alike: three each.
  expect(finish.sideBySideHours).toBeCloseTo(finish.inTurnHours / 2, 2)
  const table = frameTableOf(report, 'en-US')
  expect(table).toContain('side by side done in')
  expect(table).toContain(names[1])
})

/** The sample is invented: only what must hold of any frame is asked of it. */
test('runs of a frame hold every piece once, one plastic each, and are the frame’s hours', async () => {
  const loaded = await loadFrame('sandpiper', '.', 'en-US')
  if (!loaded.ok) throw new Error(loaded.problem.message)
  const { frame } = loaded.value
  const shelf = [{ id: '1', materialId: 'petg', grossG: 1223, emptyG: 223 }]
  const report = priceFrame(loaded.value, () => undefined, 'en-US', [], false, 'none', shelf)
  const laid = new Map<string, number>()
  for (const { part, count } of report.runs.flatMap(({ pieces }) => pieces)) {
    laid.set(part, (laid.get(part) ?? 0) + count)
  }
  expect(laid).toEqual(
    new Map(frame.parts.map(({ name, quantity, spares }) => [name, quantity + spares])),
  )
  const plastics = new Set(report.runs.map(({ material }) => material))
  expect(plastics.size).toBe(new Set(frame.parts.map(({ materialId }) => materialId)).size)
  const massG = report.runs.reduce((sum, run) => sum + run.massG, 0)
  expect(massG).toBeCloseTo(report.totalWithSpares.massG.mid, 6)
  const hours = report.runs.reduce((sum, run) => sum + run.hours.mid, 0)
  // Head, rows and runs are one sum.
  expect(hours).toBeCloseTo(report.totalWithSpares.timeS.mid / 3600, 8)
  expect(report.totalWithSpares.timeS.mid).toBeCloseTo(
    report.parts.reduce(
      (sum, part) => sum + (isFailed(part) ? 0 : (part.quantity + part.spares) * part.timeS.mid),
      0,
    ),
    4,
  )
  for (const { hours: own, bedShare, printer } of report.runs) {
    expect(own.low).toBeLessThanOrEqual(own.mid)
    expect(own.mid).toBeLessThanOrEqual(own.high)
    expect(bedShare).toBeLessThanOrEqual(1)
    expect(printer).toBe(frame.printer.name)
  }
  // Of one spool, PETG alone is finished; the others are to be bought.
  const taken = report.runs.filter(({ spool }) => spool === 1)
  expect(taken.map(({ material }) => material)).toEqual(taken.map(() => 'PETG'))
  const offG = taken.reduce((sum, { spoolG }) => sum + spoolG.high, 0)
  expect(report.shelf?.spools[0]?.leftG).toBeCloseTo(1000 - 20 - offG, 6)
  const others = report.runs.filter(({ spool }) => spool === null)
  const buyG = report.shelf?.toBuy.reduce((sum, { neededG }) => sum + neededG, 0)
  expect(buyG).toBeCloseTo(
    others.reduce((sum, { spoolG }) => sum + spoolG.high, 0),
    6,
  )
  const told = frameTableOf(report, 'en-US')
  expect(told).toContain('To buy, for runs that no spool finishes')
  expect(told).toContain(`in ${report.runs.length} prints, spares too`)
}, 480_000)
