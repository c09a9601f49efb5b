import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { FindReport, FoundSolution } from '../../src/cli/findReport.ts'
import { findTableOf } from '../../src/cli/findTable.ts'
import type { FrameReport } from '../../src/cli/frameReport.ts'
import { runPriceHere } from '../support/priceCommand.ts'

let folder = ''
/** Two parts; one was weighed, the frame too, and a print timed. */
const WEIGHED = resolve('tests/samples/projects/v5.preweigh')
/** The same without what scale and clock said. */
const PLAIN = 'plain.preweigh'

interface SavedPart {
  name: string
  recipe: Record<string, unknown>
  materialId: string
  weighIn?: unknown
}
interface SavedFrame {
  parts: SavedPart[]
  aircraft?: { flight: unknown }
  wholes?: unknown
  clocks?: unknown
}

function change(from: string, name: string, edit: (frame: SavedFrame) => void): string {
  const inside = unzipSync(Uint8Array.from(readFileSync(resolve(folder, from))))
  const project = JSON.parse(strFromU8(inside['project.json']!)) as { frame: SavedFrame }
  edit(project.frame)
  const changed = { ...inside, 'project.json': strToU8(JSON.stringify(project)) }
  writeFileSync(join(folder, name), zipSync(changed))
  return name
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'preweigh-find-'))
  change(WEIGHED, PLAIN, (frame) => {
    delete frame.wholes
    delete frame.clocks
    for (const part of frame.parts) delete part.weighIn
  })
})
afterAll(() => rmSync(folder, { recursive: true }))

async function solutions(ask: object, frame = PLAIN) {
  const args = ['--frame', frame, '--find', JSON.stringify(ask), '--json']
  const { code, out, err } = await runPriceHere(folder, args)
  return { code, err, front: JSON.parse(out) as readonly FoundSolution[] }
}

/** The saved frame with the recipes of a solution, as somebody would type them. */
const adopt = (from: string, { recipes }: FoundSolution): string =>
  change(from, 'adopted.preweigh', ({ parts }) => {
    for (const part of parts) {
      const { material, ...recipe } = recipes[part.name]!
      part.recipe = { ...part.recipe, ...recipe }
      part.materialId = material
    }
  })

async function frameOf(path: string): Promise<FrameReport> {
  const { out } = await runPriceHere(folder, ['--frame', path, '--json'])
  return JSON.parse(out) as FrameReport
}

async function expectAdopted(from: string, one: FoundSolution): Promise<void> {
  const adopted = await frameOf(adopt(from, one))
  expect(adopted.total.massG.mid).toBeCloseTo(one.massG, 6)
  // Runs are laid anew, and pieces of half a gram wait for their layers to set: a search takes
  // hours and money as the runs lay. Measured here: hours off by 14 %, money, nearly all of it
  // hours, by 13 %.
  expect(Math.abs(adopted.totalWithSpares.timeS.mid / 3600 / one.hours - 1)).toBeLessThan(0.15)
  expect(Math.abs(adopted.totalWithSpares.cost.mid / one.cost - 1)).toBeLessThan(0.15)
}

const SMALL = { walls: [1, 3], skins: [2], infillPct: [10, 30, 60] }

describe('price --find', () => {
  it('lists recipes none of which is beaten, and each weighs what the frame then weighs', async () => {
    const { code, front } = await solutions(SMALL)
    expect(code).toBe(0)
    expect(front.length).toBeGreaterThan(3)
    const asGood = (a: FoundSolution, b: FoundSolution): boolean =>
      a.massG <= b.massG &&
      a.hours <= b.hours &&
      a.cost <= b.cost &&
      (a.stiffness ?? Infinity) >= (b.stiffness ?? Infinity)
    for (const one of front) {
      expect(front.some((other) => other !== one && asGood(other, one))).toBe(false)
    }
    await expectAdopted(PLAIN, front[0]!)
    await expectAdopted(PLAIN, front.at(-1)!)
  })

  it('knows what the scale says of a weighed part once its recipe is another', async () => {
    const { front } = await solutions(SMALL, WEIGHED)
    await expectAdopted(WEIGHED, front[0]!)
  })

  it('keeps to what is asked, and to what is to stay', async () => {
    const now = await frameOf(PLAIN)
    const [first] = now.parts
    const asked = { ...SMALL, stiffness: 0.5, keepParts: ['1'] }
    const [lightest] = (await solutions(asked)).front
    const printedG = (lightest!.massG + now.total.massG.mid) / 2
    expect(printedG).toBeLessThan(now.total.massG.mid - 0.01)
    const { front } = await solutions({ ...asked, printedG })
    expect(front.length).toBeGreaterThan(0)
    for (const { massG, stiffness, recipes } of front) {
      expect(massG).toBeLessThanOrEqual(printedG + 1e-6)
      expect(stiffness ?? 1).toBeGreaterThanOrEqual(0.5)
      expect(recipes[first!.name]).toEqual(front[0]!.recipes[first!.name])
    }
  })

  it('says what stands in the way where there is nothing', async () => {
    const { code, err, front } = await solutions({ ...SMALL, printedG: 0.2 })
    expect([code, front]).toEqual([1, []])
    expect(err).toMatch(/Grams stand in the way: with all else as asked the least is [\d.]+ g/)
  })

  it('keeps a part to how far it may give, by its solid model, and tells it of every solution', async () => {
    const part = (await frameOf(PLAIN)).parts[0]!.name
    const few = { walls: [1], skins: [2], infillPct: [10, 60] }
    const free = await solutions({ ...few, deflectionMm: { 1: 1000 } })
    const gives = free.front.map((one) => one.gives![part]!.deflectionMm)
    // Lighter ones give more; half-way between the softest and the stiffest some must go.
    const most = (Math.min(...gives) + Math.max(...gives)) / 2
    const kept = await solutions({ ...few, deflectionMm: { 1: most }, firstHz: { 1: 1 } })
    expect(kept.front.length).toBeGreaterThan(0)
    for (const one of kept.front) {
      expect(one.gives![part]!.deflectionMm).toBeLessThanOrEqual(most * (1 + 1e-6))
    }
    const none = await solutions({ ...few, deflectionMm: { 1: Math.min(...gives) / 2 } })
    expect(none.code).toBe(1)
    expect(none.err).toMatch(/stands in the way: with all else as asked the least is [\d.]+ mm/)
  })

  it('asks arms to ring clear of their propellers’ turns, where it knows them', async () => {
    change(PLAIN, 'grounded.preweigh', (frame) => (frame.aircraft!.flight = null))
    const args = ['--frame', 'grounded.preweigh', '--find', '{"firstHz":{"1":"turns"}}']
    const { code, err } = await runPriceHere(folder, args)
    expect(code).toBe(2)
    expect(err).toContain('the frame says nothing of motors and propeller')
  })

  it.each([
    ['{"firstHz":{"1":"high"}}', 'it must be a number of Hz'],
    ['{"deflectionMm":{"1":0}}', 'deflectionMm.1 is 0; it must be a number from 0.001'],
    ['{"printedG":"light"}', 'printedG is "light"; it must be a number from 0.1'],
    ['{"grams":3}', '“grams” is not a key it knows'],
    ['[1]', 'it must be a JSON object such as {"printedG": 145, "hours": 9}'],
    ['{"keepParts":["wing"]}', 'no part is named “wing”'],
    ['{"materials":["wood"]}', 'there is no plastic “wood”'],
    ['{"keepSettings":["colour"]}', 'holds "colour"; it must be of walls, skins, infill'],
    ['{"stiffness":0}', 'stiffness is 0; it must be a number from 0.01'],
  ])('refuses %s', async (ask, words) => {
    const { code, err } = await runPriceHere(folder, ['--frame', PLAIN, '--find', ask])
    expect(code).toBe(2)
    expect(err).toContain(words)
  })

  it('goes with a frame only', async () => {
    const { code, err } = await runPriceHere(folder, ['--find', '{}', 'part.stl'])
    expect([code, err]).toEqual([2, '--find goes with --frame only; see --help.\n'])
  })
})

describe('findTableOf', () => {
  const recipe = {
    walls: 2,
    topSkins: 4,
    bottomSkins: 4,
    infillPct: 30,
    layerMm: 0.2,
    material: 'pla',
  }
  const now = { massG: 50, hours: 2, cost: 3, stiffness: 1, recipes: { Arm: recipe } }
  const report: FindReport = {
    currency: 'EUR',
    names: new Map(),
    solutions: [
      {
        massG: 45.5,
        hours: 1.5,
        cost: 2.5,
        stiffness: 0.872,
        recipes: { Arm: { ...recipe, walls: 1, topSkins: 3, infillPct: 12.5, layerMm: 0.25 } },
      },
    ],
    massG: [{ low: 40, mid: 45.5, high: 51 }],
    count: 7,
    now,
    bindings: [],
    notes: [],
  }

  it('shows each solution with its range and what it changes, in the locale’s numbers', () => {
    const text = findTableOf(report, 'de-DE')
    expect(text).toContain('1 of 7 solutions')
    expect(text).toMatch(/1 +45,5 g +40,0 g – 51,0 g +1 h 30 min +2,50 € +87 % +1\n/)
    expect(text).toContain('Arm: 1 wall, 3 and 4 skins, 12,5 % infill, layers of 0,25 mm')
  })

  it('says by how much nothing was found', () => {
    const none = {
      ...report,
      solutions: [],
      massG: [],
      bindings: [
        { limit: 'massG', asked: 40, reachable: 42, alone: 41 },
        { limit: 'stiffness', asked: 1, reachable: 0.9, alone: 1.2 },
        { limit: 'timeS', asked: 3600, reachable: null, alone: 3000 },
      ] as const,
    }
    const text = findTableOf(none, 'en-GB')
    expect(text).toContain('the least is 42.0 g, 2.0 g more than the 40.0 g asked for.')
    expect(text).toContain('90 % of what is asked of it can be kept.')
    expect(text).not.toContain('Hours')
  })
})
