import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { FrameReport } from '../../src/cli/frameReport.ts'
import { isFailed } from '../../src/cli/report.ts'
import type { Lesson } from '../../src/core/doubt/lessons.ts'
import { lessonFile } from '../../src/state/storage/lessonSchema.ts'
import { runPriceHere } from '../support/priceCommand.ts'

const SAMPLE = resolve('tests/samples/projects/v2.preweigh')
let folder = ''
const price = (...args: readonly string[]) => runPriceHere(folder, args)

async function priced(...args: readonly string[]): Promise<FrameReport> {
  const { code, out, err } = await price('--frame', SAMPLE, '--json', ...args)
  expect([code, err]).toEqual([0, ''])
  return JSON.parse(out) as FrameReport
}

/** Every spool of a printer 10 % heavy, known well. */
const lesson = (materialId: string, printerId: string): Lesson => ({
  id: `elsewhere/${materialId}`,
  of: 'mass',
  materialIds: [materialId],
  printerId,
  shared: [{ id: `density:${materialId}`, name: 'Density', effect: 0.06 }],
  ratio: 1.1,
  noise: 0.005,
})

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'preweigh-lessons-'))
  writeFileSync(join(folder, 'no.json'), '{"frames": []}')
})
afterAll(() => rmSync(folder, { recursive: true }))

describe('price --frame --lessons', () => {
  it('weighs by what other frames taught, and says what was calculated before', async () => {
    const before = await priced()
    const spools = ['pla', 'petg', 'pla-plus', 'asa', 'pa-cf', 'tpu-95a']
    const lessons = spools.map((id) => lesson(id, 'ordinary'))
    writeFileSync(join(folder, 'shop.json'), await lessonFile(lessons).text())
    const after = await priced('--lessons', 'shop.json')
    expect(after.learned.length).toBeGreaterThan(before.learned.length)
    for (const { factor, from } of after.learned) {
      expect(from).toBeGreaterThan(0)
      expect(factor.low).toBeLessThan(factor.high)
    }
    const moved = after.parts.filter((part, i) => {
      const was = before.parts[i]
      if (was === undefined || isFailed(part) || isFailed(was)) return false
      expect(part.calculatedG).toBe(was.calculatedG)
      return part.massG.mid > 1.03 * was.massG.mid
    })
    expect(moved.length).toBeGreaterThan(0)
    expect(after.total.massG.mid).toBeGreaterThan(before.total.massG.mid)
  })

  it('hears the readings of a saved frame, but a frame never its own twice', async () => {
    const taught = await priced('--lessons', SAMPLE)
    expect(taught.total.massG).toEqual((await priced()).total.massG)
  })

  it('refuses what holds no lessons, naming the file', async () => {
    const wrong = await price('--frame', SAMPLE, '--lessons', 'no.json')
    expect(wrong.code).toBe(1)
    expect(wrong.err).toContain('“no.json” holds no list of lessons')
    const gone = await price('--frame', SAMPLE, '--lessons', 'gone.json')
    expect([gone.code, gone.out]).toEqual([1, ''])
    expect(gone.err).toContain('gone.json')
    expect((await price('--lessons', 'no.json', 'arm.stl')).code).toBe(2)
  })
})
