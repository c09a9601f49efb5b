import { expect, test } from 'vitest'
import { loadFrame } from '../../src/cli/loadFrame.ts'
import { priceFrame } from '../../src/cli/priceFrame.ts'
import { frameTableOf } from '../../src/cli/frameTable.ts'

/** The sample is invented: only what must hold of any frame is asked of it. */
test('runs of a frame hold every piece once, one plastic each, and take less than one by one', async () => {
  const loaded = await loadFrame('sandpiper', '.', 'en-US')
  if (!loaded.ok) throw new Error(loaded.problem.message)
  const { frame } = loaded.value
  const report = priceFrame(loaded.value, () => undefined, 'en-US')
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
  const pieces = [...laid.values()].reduce((sum, count) => sum + count, 0)
  const starts = (pieces - report.runs.length) * (frame.printer.startS / 3600)
  // Starts saved, less at most a tenth for ways between pieces; shared layer times save more.
  const singly = report.totalWithSpares.timeS.mid / 3600
  expect(hours).toBeLessThan(singly)
  expect(hours).toBeGreaterThan(0.5 * (singly - starts))
  for (const { hours: own, bedShare, printer } of report.runs) {
    expect(own.low).toBeLessThanOrEqual(own.mid)
    expect(own.mid).toBeLessThanOrEqual(own.high)
    expect(bedShare).toBeLessThanOrEqual(1)
    expect(printer).toBe(frame.printer.name)
  }
  const told = frameTableOf(report, 'en-US')
  expect(told).toContain(`in ${report.runs.length} prints, spares too`)
}, 120_000)
