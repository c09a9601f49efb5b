import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { FrameReport } from '../../src/cli/frameReport.ts'
import { frameTableOf } from '../../src/cli/frameTable.ts'
import { isFailed } from '../../src/cli/report.ts'
import type { PricedPart } from '../../src/cli/report.ts'
import { runPriceHere, startPrice } from '../support/priceCommand.ts'

const SAMPLES = resolve('tests/samples/projects')
const SAMPLE = join(SAMPLES, 'v1.preweigh')

let folder = ''

const price = (...args: readonly string[]) => runPriceHere(folder, args)

async function frameJson(frame: string): Promise<FrameReport & { code: number }> {
  const { code, out } = await price('--frame', frame, '--json')
  return { ...(JSON.parse(out) as FrameReport), code }
}

let demoReport: ReturnType<typeof frameJson> | undefined
/** Priced once, for all who look at it. */
const demo = () => (demoReport ??= frameJson('demo'))

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'preweigh-frame-'))
  const entries = unzipSync(Uint8Array.from(readFileSync(SAMPLE)))
  const first = Object.keys(entries).find((path) => path.startsWith('meshes/'))
  const lost = Object.fromEntries(Object.entries(entries).filter(([path]) => path !== first))
  writeFileSync(join(folder, 'lost.preweigh'), zipSync(lost))
  writeFileSync(join(folder, 'nothing.txt'), 'no project at all')
  writeFileSync(join(folder, 'spoilt.preweigh'), 'no project at all')
  writeFileSync(join(folder, 'empty.preweigh'), '')
  writeFileSync(join(folder, 'other.zip'), zipSync({ 'notes.txt': strToU8('buy screws') }))
  const v2 = Uint8Array.from(readFileSync(join(SAMPLES, 'v2.preweigh')))
  writeFileSync(join(folder, 'cut.preweigh'), v2.subarray(0, v2.length - 700))
  writeFileSync(join(folder, 'stub.preweigh'), v2.subarray(0, 300))
  const inside = unzipSync(v2)
  type Project = { frame: { version: number; parts: unknown[]; aircraft: { items: object[] } } }
  const change = (name: string, edit: (project: Project) => void) => {
    const project = JSON.parse(strFromU8(inside['project.json']!)) as Project
    edit(project)
    const changed = { ...inside, 'project.json': strToU8(JSON.stringify(project)) }
    writeFileSync(join(folder, name), zipSync(changed))
  }
  change('later.preweigh', ({ frame }) => (frame.version = 99))
  change('odd.preweigh', ({ frame: { parts, aircraft } }) => {
    parts[0] = { ...(parts[0] as object), quantity: 'many' }
    // Sums of it would be infinite, which JSON cannot say.
    aircraft.items[0] = { ...aircraft.items[0], massG: 1e308, quantity: 1000 }
  })
})

afterAll(() => rmSync(folder, { recursive: true }))

/** Sums in the report, worked out again from its lines. */
function expectSums({ parts, total, totalWithSpares, ledger }: FrameReport): void {
  const priced = parts.filter((part) => !isFailed(part)) as (PricedPart & {
    quantity: number
    spares: number
  })[]
  const sum = (value: (part: (typeof priced)[number]) => number) =>
    priced.reduce((all, part) => all + value(part), 0)
  // What was weighed counts in mass, priced or not.
  const massive = parts.filter(({ massG }) => massG !== undefined)
  expect(total.quantity).toBe(massive.reduce((all, { quantity }) => all + quantity, 0))
  const massG = massive.reduce((all, part) => all + part.quantity * (part.massG?.mid ?? 0), 0)
  expect(total.massG.mid).toBeCloseTo(massG, 9)
  expect(total.cost.mid).toBeCloseTo(
    sum(({ quantity, cost }) => quantity * cost.mid),
    9,
  )
  // What parts are off by for themselves adds up to less than end to end.
  expect(total.cost.high).toBeLessThanOrEqual(
    sum(({ quantity, cost }) => quantity * cost.high) + 1e-9,
  )
  expect(totalWithSpares.timeS.mid).toBeCloseTo(
    sum(({ quantity, spares, timeS }) => (quantity + spares) * timeS.mid),
    6,
  )
  const { lines, basicMassG, growthG, predictedMassG, limitG, marginG } = ledger
  const printed = lines.filter(({ group }) => group === 'printed')
  expect(total.massG.mid).toBeCloseTo(
    printed.reduce((all, line) => all + line.quantity * line.massG, 0),
    9,
  )
  expect(basicMassG).toBeCloseTo(
    lines.reduce((all, line) => all + line.quantity * line.massG, 0),
    9,
  )
  expect(predictedMassG).toBeCloseTo(basicMassG + growthG, 9)
  if (limitG === null) expect(marginG).toBeNull()
  else expect(marginG).toBeCloseTo(limitG - predictedMassG, 9)
}

describe('price --frame --json', () => {
  it('prices the demo with its bought items, twin, balance and hover', async () => {
    const report = await demo()
    expect(report.code).toBe(0)
    expect(report.frame).toBe('Sandpiper')
    expectSums(report)
    const { parts, ledger, twin, balance, flight } = report
    expect(parts.map(({ name, quantity, spares }) => ({ name, quantity, spares }))).toEqual(
      (
        JSON.parse(readFileSync(resolve('public/demo/sandpiper.json'), 'utf8')) as {
          parts: { name: string; quantity: number; spares: number }[]
        }
      ).parts.map(({ name, quantity, spares }) => ({ name, quantity, spares })),
    )
    // Two parts of one spool were weighed; every other part of it follows, and says what was
    // before.
    const weighedG = new Map(report.parts.map((part) => [part.name, part]))
    for (const part of weighedG.values()) {
      if (isFailed(part)) continue
      expect(part.calculatedG).toBeGreaterThan(0)
    }
    expect(report.learned.map(({ spool, from }) => [spool, from])).toEqual([['petg', 2]])
    const [learned] = report.learned
    expect(learned!.factor.low).toBeLessThan(learned!.factor.mid)
    expect(learned!.factor.high).toBeGreaterThan(learned!.factor.mid)
    expect(ledger.limitG).toBe(610)
    expect(ledger.lines.find(({ name }) => name === 'Front arm')).toMatchObject({
      group: 'printed',
      status: 'weighed',
      quantity: 2,
      massG: 22.05,
    })
    expect(ledger.lines.find(({ name }) => name === 'Motor')).toMatchObject({
      group: 'drive',
      status: 'estimated',
      quantity: 3,
      massG: 30,
    })
    expect(twin.map(({ part }) => part)).toEqual([
      'Front arm',
      'Tail boom',
      'Lower deck',
      'Upper deck',
      'Camera tray',
    ])
    for (const one of twin) {
      expect(one.material).toBe('carbon')
      expect(Math.min(one.plateMm, one.massG, one.cost)).toBeGreaterThan(0)
    }
    expect(report.arms.map(({ part }) => part)).toEqual(['Front arm', 'Tail boom'])
    // One first tone of an arm, wherever it is told.
    expect(report.arms.map(({ printedHz }) => printedHz)).toEqual(
      report.stiffness.map(({ firstHz }) => firstHz),
    )
    for (const { printedHz, plateHz, hoverTurnHz } of report.arms) {
      expect(Math.min(printedHz.low, plateHz.low, hoverTurnHz.low)).toBeGreaterThan(5)
    }
    // How arms give: the first one rings near what its beam says, softer at its joints.
    expect(report.stiffness.map(({ part }) => part)).toEqual(['Front arm', 'Tail boom'])
    for (const { loadN, deflectionMm, firstHz, safety } of report.stiffness) {
      expect(loadN).toBeGreaterThan(1)
      expect(deflectionMm.low).toBeGreaterThan(0)
      expect(deflectionMm.high / deflectionMm.mid).toBeCloseTo(1 / 0.75, 9)
      expect(firstHz.high / firstHz.mid).toBeCloseTo(1.125, 9)
      expect(safety!.mid).toBeGreaterThan(1)
    }
    expect(report.notes.join(' ')).toContain('no licence to fly over people')
    // Built left and right alike, and so its balance is on the middle line, near the middle of the
    // motors.
    expect(Math.abs(balance?.cgMm[1] ?? 9)).toBeLessThan(0.5)
    expect(Math.abs(balance?.cgMm[0] ?? 99)).toBeLessThan(15)
    expect(balance?.massG).toBeCloseTo(ledger.basicMassG, 6)
    expect(balance?.unplaced).toEqual([])
    // Bought things hang on joints as printed ones do; nothing is in anything but the cups' rubber.
    for (const [a, b, count] of [
      ['Front arm', 'Motor', 4],
      ['Tail yoke', 'Motor', 4],
      ['Lower deck', 'Flight controller', 4],
      ['Camera tray', 'Action camera', 0],
      ['Battery pad', 'Pack, 3 cells, 2200 mAh', 0],
    ] as const) {
      expect(report.joints.find((one) => one.a === a && one.b === b)).toMatchObject({ count })
    }
    expect(report.clashes).toMatchObject([
      { code: 'squeeze', a: 'Camera tray', b: 'Damper cup', count: 4 },
    ])
    const [roll, pitch, yaw] = balance?.inertiaKgM2 ?? [0, 0, 0]
    expect(Math.min(roll, pitch)).toBeGreaterThan(0)
    // For any body no moment of inertia is larger than the two others together.
    expect(yaw).toBeLessThan(roll + pitch)
    expect(flight?.auwG).toBeCloseTo(ledger.basicMassG, 9)
    expect(flight?.thrustToWeight).toBeCloseTo(1860 / ledger.basicMassG, 9)
    expect(flight?.payloadG).toBeCloseTo(930 - ledger.basicMassG, 9)
    expect(flight?.hoverThrottle).toBeCloseTo(Math.sqrt(ledger.basicMassG / 1860), 9)
    expect(flight?.hoverThrottleLinear).toBeCloseTo(ledger.basicMassG / 1860, 9)
    // 24.42 Wh, 80 % of it flown.
    expect(flight?.hoverMin.mid).toBeCloseTo((60 * 24.42 * 0.8) / (flight?.hoverW.mid ?? 0), 6)
    expect(flight?.sPerGram).toBeLessThan(0)
  })

  it('names the screws that the joints of the demo ask for, and its table adds them up', async () => {
    const report = await demo()
    const { joints } = report
    // A deck of 4 mm and one diameter of thread in the insert: 7 mm or more.
    expect(joints.find(({ b }) => b === 'Front arm')).toEqual({
      a: 'Lower deck',
      b: 'Front arm',
      holes: 2,
      gripMm: 4,
      screw: 'M3 × 8',
      count: 2,
      warnings: [expect.stringContaining('Insert in open infill: 4 walls are 1.6 mm')],
    })
    const eights = joints.reduce((sum, one) => sum + (one.screw === 'M3 × 8' ? one.count : 0), 0)
    expect(frameTableOf(report, 'en-GB')).toContain(`Screws from joints: ${eights} × M3 × 8, `)
    // One list: the ledger has each once, with its mass by the DIN 912 weight chart, and nothing
    // hangs in the air.
    expect(
      report.ledger.lines.filter(({ name }) => name.startsWith('Screw M3 × 8,')),
    ).toMatchObject([{ group: 'fasteners', status: 'calculated', quantity: eights, massG: 0.8 }])
    const screws = report.ledger.lines.filter(({ name }) => name.startsWith('Screw '))
    expect(screws.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(
      joints.reduce((sum, { count }) => sum + count, 0),
    )
    expect(report.balance).toMatchObject({ unplacedG: 0, unplaced: [] })
  })

  it('balances the demo plane inside its range and has no hover for it', async () => {
    const report = await frameJson('tern')
    expect(report.code).toBe(0)
    expectSums(report)
    expect(report.flight).toBeNull()
    // Glued, plugged and slid on: nothing but the motor is screwed, through 3 mm of the nose.
    expect(report.joints.length).toBeGreaterThan(8)
    const screwed = report.joints.filter(({ screw, count }) => screw !== null || count > 0)
    expect(screwed).toMatchObject([
      { a: 'Pod nose', b: 'Motor with folding propeller', gripMm: 3, screw: 'M3 × 6', count: 4 },
    ])
    expect(report.clashes).toEqual([])
    // 57 to 67 mm behind the leading edge at the root.
    const x = report.balance?.cgMm[0] ?? 0
    expect(report.balance?.unplaced).toEqual([])
    expect(x).toBeLessThan(-57)
    expect(x).toBeGreaterThan(-67)
  })

  it.each(readdirSync(SAMPLES))('prices the kept sample %s, and its sums agree', async (name) => {
    const report = await frameJson(join(SAMPLES, name))
    expect(report.code).toBe(0)
    expect(report.parts.length).toBeGreaterThan(0)
    expectSums(report)
  })

  it('prices a saved project as it says itself', async () => {
    const report = await frameJson(SAMPLE)
    expect(report.code).toBe(0)
    expectSums(report)
    const { parts, total, totalWithSpares, balance, flight, ledger } = report
    expect(parts.map(({ name, quantity, spares }) => [name, quantity, spares])).toEqual([
      ['left arm', 4, 1],
      ['Deck “low”', 1, 0],
    ])
    // Blocks of 12 · 10 · 4 and 30 · 20 · 2 mm³.
    expect((parts[0] as PricedPart).volumeMm3).toBeCloseTo(480, 6)
    expect((parts[1] as PricedPart).volumeMm3).toBeCloseTo(1200, 6)
    expect([total.quantity, totalWithSpares.quantity]).toEqual([5, 6])
    expect([balance, flight, ledger.limitG]).toEqual([null, null, null])
  })

  it('prices the rest of a project that lost a mesh, says so and exits with 1', async () => {
    const report = await frameJson('lost.preweigh')
    expect(report.code).toBe(1)
    expectSums(report)
    expect(report.parts.filter(isFailed)).toMatchObject([{ error: { code: 'missing-mesh' } }])
    expect(report.total).toMatchObject({ priced: 1, failed: 1 })
    expect(report.ledger.lines).toHaveLength(1)
    expect(report.notes.join(' ')).toMatch(/missing from the file/)
    expect(report.notes.join(' ')).toMatch(/left out of every sum/)
  })

  it('leaves out what is damaged in a project, says what, and prices the rest', async () => {
    const report = await frameJson('odd.preweigh')
    expect(report.code).toBe(1)
    expectSums(report)
    expect(report.parts.map(({ name }) => name)).toEqual(['Deck “low”'])
    // A number out of range is brought into it, and that is said; what is no number is left out.
    expect(report.ledger.lines.map(({ name }) => name)).toEqual(['Deck “low”', 'Screw M3 × 8'])
    expect(report.notes[0]).toMatch(/“left arm” is damaged \(quantity: .*"many"/)
    expect(report.notes[1]).toMatch(/Item 1/)
  })

  it('prices what is left of a project cut short', async () => {
    const report = await frameJson('cut.preweigh')
    expect(report.code).toBe(1)
    expectSums(report)
    expect(report.notes.join(' ')).toMatch(/cut short/)
    expect(report.ledger.basicMassG).toBeGreaterThan(0)
  })

  it('tells the odds for the limit and every mass line, never yes or no within 3 % of one', async () => {
    const { odds, ledger } = await demo()
    expect(odds[0]).toMatchObject({ name: 'Your own limit', thresholdG: 610, readOn: null })
    expect(odds.map(({ thresholdG }) => thresholdG)).toContain(250)
    for (const { thresholdG, readOn, chanceBelow, verdict, name } of odds) {
      if (name !== 'Your own limit') expect(readOn).toMatch(/^\d{4}-\d\d-\d\d$/)
      expect(chanceBelow).toBeGreaterThanOrEqual(0)
      expect(chanceBelow).toBeLessThanOrEqual(1)
      if (Math.abs(ledger.basicMassG / thresholdG - 1) <= 0.03) {
        expect(verdict).toBe('too close to say')
      } else if (verdict !== 'too close to say') {
        expect(verdict).toBe(ledger.basicMassG < thresholdG ? 'below' : 'above')
      }
    }
    // The demo ends within a gram or two of its limit: the rule is put to the test.
    expect(Math.abs(ledger.basicMassG / 610 - 1)).toBeLessThan(0.03)
  })
})

describe('price --frame', () => {
  it('prints tables of parts and ledger', async () => {
    const { code, out, err } = await startPrice(folder, ['--frame', SAMPLE])
    expect([code, err]).toEqual([0, ''])
    expect(out).toMatch(/^4 × left arm +[\d.]+ g /m)
    expect(out).toMatch(/^total, 5 pieces /m)
    expect(out).toMatch(/^5 pieces and 1 spare /m)
    expect(out).toMatch(/^basic mass +[\d.]+ g$/m)
    expect(out).toMatch(/^EU 250 g +250 g +\d{4}-\d\d-\d\d +>99 % +stays below$/m)
    expect(out).not.toMatch(/Hover|Balance/)
  })

  it.each([
    ['nothing.txt', /“nothing\.txt” is something else, not a frame saved by the page/],
    ['spoilt.preweigh', /name is that of a saved frame, and its 17 bytes are none any more/],
    ['empty.preweigh', /“empty\.preweigh” is empty, not a frame/],
    ['other.zip', /“other\.zip” is something else, not a frame/],
    [resolve('tests/samples/inches.3mf'), /inches\.3mf” is a mesh.*without --frame/],
    [resolve('public/demo/feet.stl'), /feet\.stl” is a mesh.*without --frame/],
    ['stub.preweigh', /list of parts is damaged: .*ends at 300\. Take another copy/],
    ['later.preweigh', /version 99 .* version 8/],
    ['gone.preweigh', /“gone\.preweigh” could not be read/],
  ])('exits with 1 and says why for %s', async (file, words) => {
    const { code, out, err } = await price('--frame', file, '--json')
    expect([code, out]).toEqual([1, ''])
    expect(err).toMatch(words)
    expect(err).not.toMatch(/ at .*\.ts:/)
  })

  it('exits with 2 and says why when a mesh comes besides', async () => {
    const { code, out, err } = await price('--frame', 'demo', 'arm.stl')
    expect([code, out]).toEqual([2, ''])
    expect(err).toMatch(/“arm\.stl”/)
  })

  it('is in the help', async () => {
    const { out } = await price('--help')
    for (const word of ['--frame', 'tern', 'basicMassG', 'hoverThrottleLinear', 'inertiaKgM2']) {
      expect(out).toContain(word)
    }
  })
})

describe('a frame whose parts have zones', () => {
  it('prices them, tells each zone, and says which part lacks the mesh of one', async () => {
    const { parts } = await frameJson(join(SAMPLES, 'v4-zone.preweigh'))
    const [arm] = parts as readonly PricedPart[]
    expect(arm!.zones).toMatchObject([{ file: 'root.stl', infillPct: 60 }])
    expect(arm!.zones![0]!.roomMm3).toBeGreaterThan(0)
    const entries = unzipSync(Uint8Array.from(readFileSync(join(SAMPLES, 'v4-zone.preweigh'))))
    const zone = Object.keys(entries).filter((path) => path.startsWith('meshes/'))
    const { frame } = JSON.parse(strFromU8(entries['project.json']!)) as {
      frame: { parts: { zone: { meshHash: string } | null }[] }
    }
    const hash = frame.parts[0]!.zone!.meshHash
    expect(zone.some((path) => path.includes(hash))).toBe(true)
    const left = Object.fromEntries(
      Object.entries(entries).filter(([path]) => !path.includes(hash)),
    )
    writeFileSync(join(folder, 'zoneless.preweigh'), zipSync(left))
    const { out } = await price('--frame', 'zoneless.preweigh')
    expect(out).toMatch(/a zone of “?arm/)
  })
})
