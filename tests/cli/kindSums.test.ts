import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { PriceReport, PricedPart } from '../../src/cli/report.ts'
import type { VolumeKind } from '../../src/core/frame/pieceSum.ts'
import { runPriceHere } from '../support/priceCommand.ts'
import { rubble } from '../support/rubble.ts'
import { loadManifold } from '../support/solidCensus.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

/*
 * Plastic by kind, as `price --json` tells it. `depositMm3` is wall, skin, infill, support and brim
 * together and nothing else; gap lines lie inside the walls, strands inside the skins.
 */
type Kinds = Pick<PricedPart, VolumeKind>

/** What adding five numbers in another order may change, as a share. */
const ROUNDING = 1e-14
const SAMPLES = readdirSync('public/demo')
  .filter((file) => /\.(stl|obj|3mf)$/.test(file))
  .map((file) => resolve('public/demo', file))
const PLAIN = '{"infillPct":20,"brimMm":0}'

let folder = ''
let heaps: string[] = []
beforeAll(async () => {
  const wasm = await loadManifold()
  folder = mkdtempSync(join(tmpdir(), 'preweigh-'))
  // The first is the heap that regions are held against polygons on.
  heaps = [20261125, 1, 2, 3].map((seed) => {
    const { vertProperties, triVerts } = rubble(wasm, seed).getMesh()
    const file = join(folder, `${seed}.stl`)
    writeFileSync(file, writeStlBinary({ positions: vertProperties, indices: triVerts }))
    return file
  })
})
afterAll(() => rmSync(folder, { recursive: true }))

/** The parts' kinds, each one's sums held, and the total's with them. */
async function heldKinds(files: readonly string[], ...settings: string[]): Promise<PricedPart[]> {
  const { code, out } = await runPriceHere(folder, ['--json', ...settings, ...files])
  expect(code).toBe(0)
  const { parts, total } = JSON.parse(out) as PriceReport
  expect(parts).toHaveLength(files.length)
  const priced = parts as PricedPart[]
  for (const part of priced) expectHeld(part, part.file)
  expectHeld(total, 'all of them')
  for (const kind of ['wallMm3', 'gapMm3', 'skinMm3', 'strandMm3', 'infillMm3'] as const) {
    const sum = priced.reduce((mm3, part) => mm3 + part[kind], 0)
    expectSame(total[kind], sum, `all of them: ${kind}`)
  }
  return priced
}

function expectHeld(kinds: Kinds, name: string): void {
  const { depositMm3, wallMm3, gapMm3, skinMm3, strandMm3, infillMm3, supportMm3, brimMm3 } = kinds
  const disjoint = [wallMm3, skinMm3, infillMm3, supportMm3, brimMm3]
  expectSame(
    depositMm3,
    disjoint.reduce((sum, mm3) => sum + mm3),
    name,
  )
  for (const mm3 of [...disjoint, gapMm3, strandMm3]) expect(mm3, name).toBeGreaterThanOrEqual(0)
  expect(depositMm3, name).toBeGreaterThan(0)
  expect(gapMm3, name).toBeLessThanOrEqual(wallMm3)
  expect(strandMm3, name).toBeLessThanOrEqual(skinMm3)
}

function expectSame(told: number, sum: number, name: string): void {
  expect(Math.abs(told - sum), name).toBeLessThanOrEqual(ROUNDING * Math.abs(sum))
}

/** Filament of 1.75 mm that is pushed (ISO 80000-3, π/4·d²·l). mm³ */
const pushedMm3 = (filamentM: number) => (Math.PI / 4) * 1.75 ** 2 * filamentM * 1000

it('tells kinds of every sample that come to the deposit, and to the filament', async () => {
  const parts = await heldKinds(SAMPLES)
  expect(parts.length).toBeGreaterThanOrEqual(20)
  for (const { file, depositMm3, filamentM } of parts) {
    expect(Math.abs(pushedMm3(filamentM) / depositMm3 - 1), file).toBeLessThan(1e-12)
  }
  // Each kind is there to be held.
  for (const kind of ['gapMm3', 'strandMm3', 'infillMm3'] as const) {
    expect(Math.max(...parts.map((part) => part[kind])), kind).toBeGreaterThan(0)
  }
}, 300_000)

it('tells kinds of random heaps that come to the deposit, brim and supports with them', async () => {
  const recipe = '{"supports":true,"brimMm":4,"infillPct":35}'
  const parts = await heldKinds(heaps, '--recipe', recipe)
  for (const part of parts) {
    expect(part.supportMm3).toBeGreaterThan(0)
    expect(part.brimMm3).toBeGreaterThan(0)
    expect(part.strandMm3).toBeGreaterThan(0)
  }
}, 300_000)

it('keeps gap lines inside walls and strands inside skins', async () => {
  const [plain] = await heldKinds(heaps.slice(0, 1), '--recipe', PLAIN)
  const without = (habits: string) =>
    heldKinds(heaps.slice(0, 1), '--recipe', PLAIN, '--habits', habits)
  const [open] = await without('{"gapLines":false}')
  expect(open!.gapMm3).toBe(0)
  expectSame(open!.skinMm3, plain!.skinMm3, 'skins without gap lines')
  expect(Math.abs(plain!.wallMm3 - open!.wallMm3 - plain!.gapMm3)).toBeLessThan(
    1e-12 * plain!.wallMm3,
  )
  const [flat] = await without('{"strandShare":1}')
  // The default's 1.3 is laid on the same area.
  expect(Math.abs(plain!.strandMm3 - 1.3 * flat!.strandMm3)).toBeLessThan(1e-9 * plain!.strandMm3)
  const thicker = plain!.strandMm3 - flat!.strandMm3
  expect(Math.abs(plain!.skinMm3 - flat!.skinMm3 - thicker)).toBeLessThan(1e-9 * plain!.skinMm3)
  expect(plain!.wallMm3).toBe(flat!.wallMm3)
}, 300_000)
