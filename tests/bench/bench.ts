import { execFileSync, spawnSync } from 'node:child_process'
import { linkSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { cpus, tmpdir, totalmem } from 'node:os'
import { join } from 'node:path'
import { STLLoader } from 'three/addons/loaders/STLLoader.js'
import { nodeWorkers } from '../../src/cli/nodeWorkers.ts'
import { parseOptions } from '../../src/cli/options.ts'
import type { FileAsk } from '../../src/cli/priceAll.ts'
import type { PartReport } from '../../src/cli/report.ts'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../src/core/data/printers.ts'
import { offerJoints } from '../../src/core/joints/offerJoints.ts'
import { partFigures } from '../../src/core/figures/part.ts'
import { weighFrame } from '../../src/core/frame/weighFrame.ts'
import { quickMeasure } from '../../src/core/formats/quick.ts'
import { readCorners } from '../../src/core/formats/stlBinary.ts'
import { countAllLayers } from '../../src/core/census/countAllLayers.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { createPool } from '../../src/jobs/pool.ts'
import { bareFrame, printedPart } from '../support/ledgerParts.ts'
import { loadManifold, solidCensus } from '../support/solidCensus.ts'
import { parseWithThreeStlLoader } from '../support/threeStlLoader.ts'
import { sphere } from '../support/meshes.ts'
import { writeStlBinary } from '../support/writeMesh.ts'
import { buildApp, shellKb } from './buildApp.ts'
import { feel } from './feel.ts'
import { blockOptions, countedBlocks, searchAll, smallFrame, tryAll } from './finder.ts'
import { alternate, busy, clock, logSlope, median } from './median.ts'
import { pageTimes, type PageTimes } from './pageTimes.ts'
import { holedPlate, organicPart, strangers, taperedArm } from './parts.ts'
import { solidArm } from './solidArm.ts'

/*
 * Every figure is a ratio of medians taken in turns in this one run, so that it means something on a busy machine too.
 * `npm run bench` prints a table, `npm run bench -- --json` the ratios alone.
 */

interface Row {
  readonly key: string
  readonly ratio: number
  readonly reach: string
  readonly detail: string
}

const json = process.argv.includes('--json')
const only = process.argv.find((argument) => argument.startsWith('--only='))?.slice(7)
const folder = mkdtempSync(join(tmpdir(), 'preweigh-bench-'))
const rows: Row[] = []
const mb = (bytes: number): string => `${(bytes / 1e6).toFixed(0)} MB`
const ms = (value: number): string => `${value.toFixed(value < 10 ? 2 : 0)} ms`

function report(key: string, ratio: number, reach: string, detail: string): void {
  rows.push({ key, ratio, reach, detail })
  if (!json)
    console.log(`${key.padEnd(26)} ${ratio.toFixed(3).padStart(8)}  ${reach.padEnd(8)} ${detail}`)
}

/** In processor time: a busy machine stretches the clock of the longer of the two by more. */
async function compare(
  key: string,
  reach: string,
  rounds: number,
  ours: () => unknown,
  baseline: () => unknown,
): Promise<void> {
  const { oursMs, baselineMs } = await alternate(rounds, ours, baseline, busy)
  report(key, oursMs / baselineMs, reach, `${ms(oursMs)} against ${ms(baselineMs)}`)
}

async function reading(): Promise<void> {
  const bytes = writeStlBinary(await organicPart(1_000_000))
  const triangles = (bytes.length - 84) / 50
  const ours = (): unknown => [readCorners(bytes, triangles), quickMeasure(bytes)]
  const three = new STLLoader()
  await compare('readVsThree', '≤ 1.0', 9, ours, () => three.parse(bytes.buffer as ArrayBuffer))
  await compare('readVsStlLoader', '≤ 0.10', 5, ours, () => parseWithThreeStlLoader(bytes))
  await compare(
    'measureVsCopy',
    '≤ 2',
    15,
    () => quickMeasure(bytes),
    () => bytes.slice(),
  )
}

async function censuses(): Promise<void> {
  const wasm = await loadManifold()
  // The shorter a count, the more rounds: a stop to clear memory weighs more.
  const parts: [string, Mesh, rounds: number][] = [
    ['Organic', await organicPart(250_000), 5],
    ['Plate', await holedPlate(), 11],
    ['Arm', await taperedArm(), 41],
  ]
  for (const [name, mesh, rounds] of parts) {
    await compare(
      `censusVsSolid${name}`,
      '≤ 0.20',
      rounds,
      () => countAllLayers(mesh, RECIPE_DEFAULTS),
      () => solidCensus(wasm, mesh, RECIPE_DEFAULTS),
    )
  }
  const worst = Math.max(
    ...rows.filter(({ key }) => key.startsWith('censusVsSolid')).map(({ ratio }) => ratio),
  )
  report('censusVsSolid', worst, '≤ 0.20', 'the worst of the three')
}

async function pool(): Promise<void> {
  const bytes = writeStlBinary(await organicPart(60_000))
  const files = Array.from({ length: 12 }, (_, i) => join(folder, `part-${i}.stl`))
  for (const file of files) writeFileSync(file, bytes)
  const options = parseOptions(files, () => '', 'en-GB')!
  const run = async (size: number): Promise<() => Promise<unknown>> => {
    const workers = createPool<FileAsk, never, readonly PartReport[]>({
      spawn: nodeWorkers(new URL('../../src/cli/worker.mjs', import.meta.url)),
      size,
      idleMs: 600_000,
      memory: 0,
    })
    closers.push(() => workers.close())
    return () =>
      Promise.all(
        files.map((file) =>
          workers.run({
            ask: { file, path: file, options },
            name: file,
            priority: 0,
            weight: 0,
            urgent: false,
            keeps: null,
          }),
        ),
      )
  }
  const closers: (() => void)[] = []
  const two = await run(2)
  const one = await run(1)
  const { oursMs, baselineMs } = await alternate(3, two, one, clock)
  for (const close of closers) close()
  report(
    'poolSpeedup',
    baselineMs / oursMs,
    '≥ 1.7',
    `${ms(oursMs)} on two, ${ms(baselineMs)} on one`,
  )
}

async function infillChange(): Promise<void> {
  const taken = await Promise.all(
    Array.from({ length: 50 }, async (_, i) =>
      countAllLayers(i % 2 === 0 ? await holedPlate() : await taperedArm(), RECIPE_DEFAULTS),
    ),
  )
  const counted = taken.map((census, i) => [printedPart(String(i), 1, 1), census] as const)
  const times: number[] = []
  for (let infillPct = 10; infillPct <= 60; infillPct++) {
    times.push(
      busy(() => {
        const parts = counted.map(([row, census]) => ({
          ...row,
          figures: partFigures(
            census,
            { ...RECIPE_DEFAULTS, infillPct },
            MATERIALS[0]!,
            PRINTER_DEFAULT,
            PRICES_DEFAULTS,
          ),
        }))
        return weighFrame(parts, bareFrame())
      }),
    )
  }
  const oursMs = median(times)
  report('infillChange', oursMs / 16.7, '≤ 0.25', `${ms(oursMs)} for 50 parts`)
}

async function growth(): Promise<void> {
  const byTriangles: [number, number][] = []
  for (const triangles of [10_000, 50_000, 250_000, 1_000_000, 2_000_000]) {
    const mesh = await organicPart(triangles)
    const times = [1, 2, 3].map(() => busy(() => countAllLayers(mesh, RECIPE_DEFAULTS)))
    byTriangles.push([triangles, median(times)])
  }
  report(
    'growthTriangles',
    logSlope(byTriangles),
    '≤ 1.1',
    byTriangles.map(([, t]) => ms(t)).join(', '),
  )
  const mesh = await organicPart(100_000)
  const byLayers: [number, number][] = []
  for (const layerMm of [0.4, 0.2, 0.1, 0.05]) {
    const recipe = { ...RECIPE_DEFAULTS, layerMm, firstLayerMm: layerMm }
    const times = [1, 2, 3].map(() => busy(() => countAllLayers(mesh, recipe)))
    byLayers.push([1 / layerMm, median(times)])
  }
  report('growthLayers', logSlope(byLayers), '≤ 1.1', byLayers.map(([, t]) => ms(t)).join(', '))
}

/** Ways to join 5 to 40 strangers, in processor time: what a worker is busy for. */
function joints(): void {
  const spent: [number, number][] = []
  for (const count of [5, 10, 20, 40]) {
    // Meshes of its own each round: what was found of a mesh is kept with it.
    const times = [1, 2, 3, 4].map(() => {
      const parts = strangers(count)
      return busy(() => offerJoints(parts))
    })
    // The first round warms it up.
    spent.push([count, median(times.slice(1))])
  }
  const detail = spent.map(([count, each]) => `${count}: ${ms(each)}`).join(', ')
  report('jointOffers', spent.at(-1)![1] / 1000, '≤ 1', detail)
  report('jointOffersGrowth', logSlope(spent), '≤ 2', 'with pieces')
}

async function stiffness(): Promise<void> {
  const arm = solidArm(1)
  await compare('stiffArm', '≤ 0.15', 5, arm.ours, arm.byDiagonal)
  const spent = [2, 1.4, 1, 0.7].map((cellMm) => {
    const { cells, ours } = solidArm(cellMm)
    ours()
    return [cells, median([busy(ours), busy(ours), busy(ours)])] as const
  })
  report('stiffGrowth', logSlope(spent), '≤ 1.1', spent.map(([, t]) => ms(t)).join(', '))
}

/**
 * Twelve parts of 400 recipes from their censuses to the whole front; and against trying all on a
 * small frame.
 */
async function finder(): Promise<void> {
  const blocks = countedBlocks(12)
  const parts = blockOptions(blocks)
  const recipes = parts.map(({ options }) => options.length)
  const times: number[] = []
  let found = 0
  for (let round = 0; round < 5; round++) {
    times.push(busy(() => (found = searchAll(blockOptions(blocks)).length)))
  }
  const detail = `${ms(median(times))} for 12 parts of ${Math.max(...recipes)} recipes, ${found} solutions`
  report('finderSeconds', median(times) / 1000, '≤ 2', detail)
  const small = smallFrame(parts)
  await compare(
    'finder',
    '≤ 1',
    9,
    () => searchAll(small),
    () => tryAll(small),
  )
}

async function memory(): Promise<void> {
  // 50 bytes a triangle, and a ball of n sides has n² of them.
  const bytes = writeStlBinary(sphere(40, 2000))
  const path = join(folder, 'large.stl')
  writeFileSync(path, bytes)
  const child = new URL('memoryChild.ts', import.meta.url).pathname
  const grown = Number(
    execFileSync(process.execPath, ['--import', 'tsx', child, path], { encoding: 'utf8' }),
  )
  report(
    'memoryVsFile',
    grown / bytes.length,
    '≤ 3',
    `${mb(grown)} for a file of ${mb(bytes.length)}`,
  )
}

/** The command on 50 and on 1,000 files. */
async function batch(): Promise<void> {
  const first = join(folder, 'batch.stl')
  writeFileSync(first, writeStlBinary(await taperedArm()))
  const files = Array.from({ length: 1000 }, (_, i) => join(folder, `batch-${i}.stl`))
  for (const file of files) linkSync(first, file)
  const child = new URL('batchChild.ts', import.meta.url).pathname
  const peak = (count: number): number => {
    const args = ['--import', 'tsx', child, '--lines', ...files.slice(0, count)]
    const { stdout, stderr } = spawnSync(process.execPath, args, {
      encoding: 'utf8',
      maxBuffer: 2 ** 30,
    })
    const lines = stdout.split('\n').length - 1
    if (lines !== count) throw new Error(`${lines} lines for ${count} files`)
    return Number(stderr)
  }
  const [few, many] = [peak(50), peak(1000)]
  report('batchMemory', many / few, '≈ 1', `${mb(many)} for 1,000 files, ${mb(few)} for 50`)
}

/**
 * How much has to come over the network before the page can be used; no ratio, but the same on
 * every machine.
 */
function shell(): void {
  const kb = shellKb(buildApp(folder))
  report('shellKb', kb, '≤ 160', `${kb.toFixed(1)} kB gzipped named by index.html`)
}

/**
 * Half a million triangles in 12 files dropped on the built app, against the one second a first
 * look may take.
 */
async function page(): Promise<void> {
  const visits = await pageTimes(folder, 3)
  const middle = (pick: (times: PageTimes) => number): number => median(visits.map(pick))
  const firstMs = middle((times) => times.firstTotalMs)
  const roughMs = middle((times) => times.allRoughMs)
  const countedMs = middle((times) => times.allCountedMs)
  report('pageFirstTotal', firstMs / 1000, '≈ 1', `${ms(firstMs)} to the first total`)
  report(
    'pageAllRough',
    roughMs / 1000,
    '≈ 1',
    `${ms(roughMs)} to all 12 parts, ${ms(countedMs)} to their layers`,
  )
}

/**
 * Longest tasks of the main thread on the sample, against the 50 ms after which a hand feels a
 * wait; press to paint at a quarter of the speed, against 100 ms; the picture against a second.
 */
async function hand(): Promise<void> {
  const { fixedMs, longestMs, paint, pictureMs } = await feel(folder)
  // No aim: it tells this machine from another.
  report('hand: fixed work', 1, '= 1', `${ms(fixedMs)} of the thread`)
  const times = (each: number): string => `${(each / fixedMs).toFixed(1)} × the fixed work`
  for (const [name, each] of Object.entries(longestMs))
    report(`hand: ${name}`, each / 50, '≤ 1', `${ms(each)} of the thread, ${times(each)}`)
  for (const [name, { middleMs, worstMs }] of Object.entries(paint))
    report(
      `paint: ${name}`,
      worstMs / 100,
      '≤ 1',
      `${ms(middleMs)}, at worst ${ms(worstMs)}, 4 × slowed; worst ${times(worstMs)}`,
    )
  report(
    'picture',
    pictureMs / 1000,
    '≤ 1',
    `${ms(pictureMs)} after the first figures, ${times(pictureMs)}`,
  )
}

const groups = {
  reading,
  censuses,
  pool,
  infillChange,
  growth,
  joints,
  stiffness,
  finder,
  memory,
  batch,
  shell,
}
/** Run only when named: its figures are times, which mean nothing on a busy machine. */
const optional = { page, hand }
try {
  for (const [name, run] of Object.entries({ ...groups, ...optional })) {
    if (only === name || (!only && name in groups)) await run()
  }
} finally {
  rmSync(folder, { recursive: true })
}
if (json) {
  const [cpu] = cpus()
  const machine =
    `${cpu?.model ?? 'unknown'}, ${cpus().length} cores, ${(totalmem() / 2 ** 30).toFixed(0)} GiB, ` +
    `Node ${process.version}`
  const ratios = Object.fromEntries(rows.map(({ key, ratio }) => [key, Number(ratio.toFixed(4))]))
  console.log(JSON.stringify({ ratios, machine }, null, 2))
}
