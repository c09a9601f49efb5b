import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { zipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { PACKING_MID } from '../../src/core/doubt/factors.ts'
import type { PriceReport, PricedPart } from '../../src/cli/report.ts'
import type { FrameReport } from '../../src/cli/frameReport.ts'
import { HABIT_DEFAULTS } from '../../src/core/model/habits.ts'
import { box, prism, scale, specimenOutline, translate } from '../support/meshes.ts'
import { runPriceHere, startPrice } from '../support/priceCommand.ts'
import { write3mf, writeStlBinary } from '../support/writeMesh.ts'

let folder = ''

const price = (...args: readonly string[]) => runPriceHere(folder, args)

async function priceJson(...args: readonly string[]): Promise<PriceReport & { code: number }> {
  const { code, out } = await price('--json', ...args)
  return { ...(JSON.parse(out) as PriceReport), code }
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'preweigh-'))
  const bar = prism(specimenOutline('IV'), 4)
  writeFileSync(join(folder, 'cube.stl'), writeStlBinary(box(20, 20, 20)))
  writeFileSync(join(folder, 'inches.stl'), writeStlBinary(scale(box(20, 20, 20), 1 / 25.4)))
  writeFileSync(join(folder, 'bar.3mf'), write3mf(bar))
  writeFileSync(join(folder, 'broken.stl'), 'no mesh at all')
  writeFileSync(join(folder, 'whole.stl'), writeStlBinary(box(20, 20, 20)))
  writeFileSync(join(folder, 'half.stl'), writeStlBinary(box(20, 20, 10)))
  writeFileSync(join(folder, 'far.stl'), writeStlBinary(translate(box(5, 5, 5), [500, 0, 0])))
  const packed = zipSync({
    'arm/left.stl': writeStlBinary(box(10, 10, 2)),
    'arm/right.stl': writeStlBinary(box(10, 10, 2)),
  })
  writeFileSync(join(folder, 'arms.zip'), packed)
})

afterAll(() => rmSync(folder, { recursive: true }))

describe('price --json', () => {
  it('prices a cube by hand arithmetic and repeats it in the total', async () => {
    const recipe = '{"walls":2,"infillPct":100}'
    const material = '{"densityGCm3":1.24,"pricePerKg":22}'
    const settings = ['--recipe', recipe, '--material', material, '--quantity', '3']
    const { code, parts, total } = await priceJson(...settings, 'cube.stl')
    expect(code).toBe(0)
    const part = parts[0] as PricedPart
    expect(part).toMatchObject({
      file: 'cube.stl',
      format: 'stl-binary',
      triangles: 12,
      bodies: 1,
      boundsMm: { min: [0, 0, 0], max: [20, 20, 20] },
      watertight: true,
      layers: 100,
      supportMm3: 0,
      brimMm3: 0,
    })
    expect(part.volumeMm3).toBeCloseTo(8000, 6)
    expect(part.areaMm2).toBeCloseTo(2400, 6)
    const inside = 18.4 * 18.4
    const within = (value: number, hand: number) =>
      expect(Math.abs(value / hand - 1)).toBeLessThan(0.001)
    within(part.wallMm3, (400 - inside) * 20)
    // Skins and infill reach over the walls by a tenth of a line.
    const inner = inside + 4 * 18.4 * 0.04
    within(part.skinMm3, inner * 1.6)
    within(part.infillMm3, inner * 18.4)
    const laid = (400 - inside) * 20 + inner * 20
    // Solid all through: all but a quarter of the walls lies line beside line.
    const packed = laid - ((400 - inside) * 20) / 4
    const plasticMm3 = laid - (1 - PACKING_MID) * packed
    within(part.massG.mid, (plasticMm3 * 1.24) / 1000)
    // The printer is told to push all that is laid, channels or not.
    within(part.filamentM, laid / 2405.28)
    expect(part.massG.low).toBeLessThan(part.massG.mid)
    expect(part.cost.high).toBeGreaterThan(part.cost.mid)
    expect(part.cost.currency).toMatch(/^[A-Z]{3}$/)

    expect(total).toMatchObject({ quantity: 3, priced: 1, failed: 0 })
    expect(total.massG.mid).toBeCloseTo(3 * part.massG.mid, 9)
    expect(total.timeS.high).toBeCloseTo(3 * part.timeS.high, 6)
    expect(total.filamentM).toBeCloseTo(3 * part.filamentM, 9)
  })

  it('lays down plastic that sums up, support and brim with it', async () => {
    const recipe = '{"supports":true,"brimMm":5}'
    const { parts } = await priceJson('--recipe', recipe, 'bar.3mf')
    const part = parts[0] as PricedPart
    expect(part.format).toBe('3mf')
    expect(part.brimMm3).toBeGreaterThan(0)
    const sum = part.wallMm3 + part.skinMm3 + part.infillMm3 + part.supportMm3 + part.brimMm3
    expect(part.depositMm3).toBeCloseTo(sum, 6)
    const kept = part.wallMm3 + part.skinMm3 + part.infillMm3
    // Less what stays open between lines, of all that is kept at most.
    expect(part.massG.mid).toBeLessThan((kept * 1.24) / 1000)
    expect(part.massG.mid).toBeGreaterThan((kept * PACKING_MID * 1.24) / 1000)
  })

  it('prices the good files, reports the bad ones and exits with 1', async () => {
    const { code, parts, total } = await priceJson('broken.stl', 'cube.stl', 'gone.stl')
    expect(code).toBe(1)
    expect(parts.map(({ file }) => file)).toEqual(['broken.stl', 'cube.stl', 'gone.stl'])
    expect(parts[0]).toMatchObject({ error: { code: 'unknown-format' } })
    expect(parts[1]).toMatchObject({ triangles: 12 })
    expect(parts[2]).toMatchObject({ error: { code: 'unreadable-file' } })
    expect(total).toMatchObject({ priced: 1, failed: 2 })
    expect(total.massG.mid).toBeCloseTo((parts[1] as PricedPart).massG.mid, 9)
  })

  it('refuses what the page refuses: a part two kilometres long', async () => {
    const long = box(20, 10, 5)
    const bytes = writeStlBinary({ ...long, positions: long.positions.map((mm) => 1e5 * mm) })
    writeFileSync(join(folder, 'long.stl'), bytes)
    const { code, parts } = await priceJson('long.stl')
    expect(code).toBe(1)
    expect(parts).toMatchObject([{ error: { code: 'too-large' } }])
  })

  it('opens a ZIP of meshes', async () => {
    const { code, parts } = await priceJson('arms.zip')
    expect(code).toBe(0)
    expect(parts.map(({ file }) => file)).toEqual([
      'arms.zip/arm/left.stl',
      'arms.zip/arm/right.stl',
    ])
  })

  it('takes STL numbers in the unit that is given', async () => {
    const { parts } = await priceJson('--unit', 'inch', 'inches.stl')
    expect((parts[0] as PricedPart).volumeMm3).toBeCloseTo(8000, 1)
  })
})

describe('price', () => {
  it('prints an aligned table with ranges, and nothing on stderr when that is no terminal', async () => {
    const args = ['--currency', 'GBP', 'cube.stl', 'broken.stl']
    const { code, out, err } = await startPrice(folder, args)
    expect(code).toBe(1)
    expect(err).toBe('')
    const [head, cube, total] = out.split('\n')
    expect(head).toMatch(/^part +mass +likely +filament +cost +likely +time +likely$/)
    expect(cube).toMatch(/^cube\.stl +[\d.]+ g +[\d.]+ g – [\d.]+ g +[\d.]+ m +£0\.\d\d/)
    expect(total).toMatch(/^total, 1 piece /)
    expect(out).toMatch(/Not priced: broken\.stl: .+/)
  })

  it('says on stderr what counts as 0 in a currency without usual prices', async () => {
    const typed = await price('--currency', 'KRW', '--material', '{"pricePerKg":30000}', 'cube.stl')
    expect(typed.err).toBe('No prices are usual here in KRW: electricity and wear count as 0.\n')
    expect(typed.out).toContain('₩')
    const bare = await price('--currency', 'KRW', 'cube.stl')
    expect(bare.err).toContain('and so does filament')
  })

  it('exits with 2 and says why on bad usage', async () => {
    const { code, out, err } = await price('--recipe', '{"wals":2}', 'cube.stl')
    expect([code, out]).toEqual([2, ''])
    expect(err).toMatch(/“wals”/)
  })

  it('explains itself', async () => {
    const { code, out } = await price('--help')
    expect(code).toBe(0)
    for (const word of ['--recipe', 'infillPct', 'tpu-95a', 'mid-2010s', 'massG', 'depositMm3']) {
      expect(out).toContain(word)
    }
  })
})

describe('price --lines', () => {
  it('prints one line a part as they come, the same parts as --json', async () => {
    const files = ['cube.stl', 'broken.stl', 'bar.3mf', 'arms.zip', 'missing.stl', 'cube.stl']
    const { code, out } = await startPrice(folder, ['--lines', ...files])
    const lines = out.trimEnd().split('\n')
    expect(code).toBe(1)
    const sorted = (parts: readonly unknown[]): readonly string[] =>
      parts.map((part) => JSON.stringify(part)).toSorted()
    expect(sorted(lines.map((line): unknown => JSON.parse(line)))).toEqual(
      sorted((await priceJson(...files)).parts),
    )
    expect(lines.length).toBe(7)
  })
})

describe('a zone on the command line', () => {
  const recipe = '{"infillPct":20}'
  const massOf = async (...args: readonly string[]): Promise<number> => {
    const { parts } = await priceJson(...args)
    return (parts[0] as PricedPart).massG.mid
  }

  it('fills its inside by its own infill: all of a part as that infill, half of it half the way there', async () => {
    const sparse = await massOf('--recipe', '{"infillPct":20}', 'cube.stl')
    const dense = await massOf('--recipe', '{"infillPct":60}', 'cube.stl')
    const whole = await massOf('--zone', 'whole.stl=60', '--recipe', recipe, 'cube.stl')
    const half = await massOf('--zone', 'half.stl=60', '--recipe', recipe, 'cube.stl')
    expect(Math.abs(whole / dense - 1)).toBeLessThan(0.01)
    expect((half - sparse) / (dense - sparse)).toBeCloseTo(0.5, 1)
  })

  it('tells each zone and the room in it, and says which one misses', async () => {
    const zones = ['--zone', 'whole.stl=12', '--zone', 'half.stl=6', '--zone', 'far.stl']
    const { parts } = await priceJson(...zones, '--recipe', recipe, 'cube.stl')
    const told = (parts[0] as PricedPart).zones!
    expect(told).toMatchObject([
      { file: 'whole.stl', infillPct: 12 },
      { file: 'half.stl', infillPct: 6 },
      { file: 'far.stl', infillPct: 100, roomMm3: 0 },
    ])
    // The later one holds where both are, so each has half of what there is to fill.
    expect(told[1]!.roomMm3 / told[0]!.roomMm3).toBeCloseTo(1, 2)
    const { out } = await price(...zones, 'cube.stl')
    expect(out).toContain('The zone “far.stl” changes nothing')
    expect(out).not.toContain('“half.stl” changes nothing')
  })

  it('names a zone that cannot be read, and refuses an archive of several parts', async () => {
    const gone = await price('--json', '--zone', 'gone.stl', 'cube.stl')
    expect(gone.code).toBe(1)
    expect(gone.out).toMatch(/The zone “gone\.stl” could not be read: there is no “.*gone\.stl”/)
    const many = await price('--json', '--zone', 'half.stl', 'arms.zip')
    expect(many.code).toBe(1)
    expect(many.out).toContain('holds 2')
  })
})

describe('habits on the command line', () => {
  it('change the grams as they say, narrow their range, and are told', async () => {
    const recipe = ['--recipe', '{"infillPct":10,"pattern":"lines"}']
    const usual = await priceJson(...recipe, 'cube.stl')
    const told = await priceJson(...recipe, '--habits', '{"joinedShare":0}', 'cube.stl')
    expect(usual.habits).toEqual({ ...HABIT_DEFAULTS, known: [] })
    expect(told.habits).toEqual({ ...HABIT_DEFAULTS, joinedShare: 0, known: ['joinedShare'] })
    const [before, after] = [usual, told].map(({ parts }) => parts[0] as PricedPart)
    expect(after!.wallMm3).toBe(before!.wallMm3)
    // With nothing joined, infill is its share of the rooms: 18.4 mm wide and deep, 20 less eight
    // skins of 0.2 mm high.
    expect(after!.infillMm3 / (0.1 * 18.4 * 18.4 * 18.4)).toBeCloseTo(1, 1)
    expect(after!.infillMm3).toBeLessThan(before!.infillMm3)
    const width = ({ massG: { low, mid, high } }: PricedPart): number => (high - low) / mid
    expect(width(after!)).toBeLessThan(width(before!))
  })

  it('are told of a frame too', async () => {
    const frame = ['--frame', 'tern', '--json']
    const { out } = await price(...frame, '--habits', '{"strandShare":1}')
    const { habits } = JSON.parse(out) as FrameReport
    expect(habits).toEqual({ ...HABIT_DEFAULTS, strandShare: 1, known: ['strandShare'] })
  })
})
