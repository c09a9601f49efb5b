import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import fc from 'fast-check'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { expect, test, vi } from 'vitest'
import { priceFrame } from '../../src/cli/priceFrame.ts'
import type { FrameReport } from '../../src/cli/frameReport.ts'
import { frameTableOf } from '../../src/cli/frameTable.ts'
import { isFailed } from '../../src/cli/report.ts'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { PRINTERS } from '../../src/core/data/printers.ts'
import { massOdds } from '../../src/core/frame/odds.ts'
import { leftOutNames, roundChance, standingWords } from '../../src/core/frame/sayings.ts'
import type { Item } from '../../src/core/model/aircraft.ts'
import type { Frame } from '../../src/core/model/frame.ts'
import { ledgerCsv } from '../../src/state/actions/csv.ts'
import { aircraftView } from '../../src/state/store/aircraftView.ts'
import { frameSummary, isLaying, ledgerRows, reckonedRuns } from '../../src/state/store/derived.ts'
import { box, cubeWithHole } from '../support/meshes.ts'
import { runPriceHere } from '../support/priceCommand.ts'
import { fileOf, startSession } from '../support/session.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const FILES = [
  { name: 'arm.stl', bytes: writeStlBinary(box(40, 10, 6)) },
  { name: 'deck.stl', bytes: writeStlBinary(box(30, 30, 3)) },
  { name: 'collar.stl', bytes: writeStlBinary(cubeWithHole(12, 4, 24)) },
]

const ITEM: Item = {
  id: 'pack',
  name: 'Pack',
  group: 'power',
  quantity: 1,
  massG: 100,
  costEach: 20,
  status: 'estimated',
  basis: 'typed',
  positionMm: null,
}

const ONE = { pieces: 1, tareG: 0, stepG: 0.1, trusted: false }

/** One fact of the frame changes. */
const changes = fc.oneof(
  fc.record({
    kind: fc.constant('infill' as const),
    part: fc.nat(2),
    to: fc.integer({ min: 0, max: 100 }),
  }),
  fc.record({
    kind: fc.constant('walls' as const),
    part: fc.nat(2),
    to: fc.integer({ min: 0, max: 4 }),
  }),
  fc.record({
    kind: fc.constant('pieces' as const),
    part: fc.nat(2),
    to: fc.integer({ min: 1, max: 6 }),
  }),
  fc.record({ kind: fc.constant('spares' as const), part: fc.nat(2), to: fc.nat(3) }),
  fc.record({ kind: fc.constant('unit' as const), part: fc.nat(2), to: fc.nat(1) }),
  fc.record({
    kind: fc.constant('weigh' as const),
    part: fc.nat(2),
    to: fc.integer({ min: 1, max: 12 }),
  }),
  fc.record({ kind: fc.constant('items' as const), part: fc.nat(2), to: fc.nat(4) }),
  fc.record({
    kind: fc.constant('limit' as const),
    part: fc.nat(2),
    to: fc.integer({ min: 1, max: 300 }),
  }),
  fc.record({ kind: fc.constant('remove' as const), part: fc.nat(2), to: fc.nat(1) }),
  fc.record({ kind: fc.constant('material' as const), part: fc.nat(2), to: fc.nat(2) }),
  fc.record({ kind: fc.constant('printer' as const), part: fc.nat(2), to: fc.nat(1) }),
  fc.record({ kind: fc.constant('prices' as const), part: fc.nat(2), to: fc.nat(3) }),
  fc.record({ kind: fc.constant('mirror' as const), part: fc.nat(2), to: fc.nat(1) }),
  fc.record({ kind: fc.constant('pose' as const), part: fc.nat(2), to: fc.nat(1) }),
  fc.record({ kind: fc.constant('growth' as const), part: fc.nat(2), to: fc.nat(20) }),
  fc.record({
    kind: fc.constant('whole' as const),
    part: fc.nat(2),
    to: fc.integer({ min: 1, max: 60 }),
  }),
  fc.record({
    kind: fc.constant('clock' as const),
    part: fc.nat(2),
    to: fc.integer({ min: 1, max: 200 }),
  }),
  fc.record({ kind: fc.constant('undo' as const), part: fc.nat(2), to: fc.nat(1) }),
)

test('after any change of a fact every place says the same of the frame, the command too (seed 11)', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(changes, { minLength: 4, maxLength: 8 }), async (list) => {
      const { actions, state, storage } = await startSession({ laysRunsAfterMs: 0 })
      await actions.addFiles(FILES.map(({ name, bytes }) => fileOf(name, bytes)))
      await actions.settled()
      actions.putCarbon({ massG: 20, price: 30 })
      for (const { kind, part, to } of list) {
        const { parts, aircraft } = state().frame
        const id = parts[part]?.id
        if (id === undefined) continue
        if (kind === 'infill') actions.updateParts([id], { recipe: { infillPct: to } })
        if (kind === 'walls') actions.updateParts([id], { recipe: { walls: to } })
        if (kind === 'pieces') actions.updateParts([id], { quantity: to })
        if (kind === 'spares') actions.updateParts([id], { spares: to })
        if (kind === 'unit')
          actions.updateParts([id], { unit: to === 0 ? 'millimetre' : 'centimetre' })
        if (kind === 'weigh') actions.weighPart(id, { ...ONE, scaleG: to / 2 })
        if (kind === 'items')
          actions.putAircraft({ items: to === 0 ? [] : [{ ...ITEM, quantity: to }] }, 'items')
        if (kind === 'limit')
          actions.putAircraft({ limitG: to, printedLimitG: aircraft.limitG }, 'limit')
        if (kind === 'material') actions.updateParts([id], { materialId: MATERIALS[to]!.id })
        if (kind === 'printer') actions.putPrinter(PRINTERS[to]!)
        if (kind === 'prices') {
          actions.putPrices({ ...state().frame.prices, electricityPerKwh: to / 4 })
        }
        if (kind === 'mirror') actions.updateParts([id], { mirrored: to })
        if (kind === 'pose') {
          const rotateDeg = [90 * to, 0, 0] as const
          actions.updateParts([id], { pose: { ...parts[part]!.pose, rotateDeg } })
        }
        if (kind === 'growth') {
          const growth = { estimatedPct: to, calculatedPct: to / 2, weighedPct: 0 }
          actions.putAircraft({ growth }, 'growth')
        }
        if (kind === 'whole') {
          const calculatedG = frameSummary(state()).sum.printed.massG.mid
          const whole = { id: `w${to}`, of: 'printed', scaleG: to, tareG: 0, stepG: 0.1 } as const
          const wholes = [{ ...whole, date: null, calculatedG, trusted: false }]
          actions.putReadings({ wholes }, 'weigh the whole')
        }
        if (kind === 'clock') {
          const calculatedS = frameSummary(state()).sum.rows[part]?.figures?.timeS.mid ?? 0
          const clock = { id: `c${to}`, pieces: { [id]: 1 }, timeS: 60 * to, calculatedS }
          actions.putReadings({ clocks: [{ ...clock, date: null, trusted: false }] }, 'clock')
        }
        if (kind === 'undo') actions.undo()
        if (kind === 'remove' && to === 1 && parts.length > 1) actions.removeParts([id])
        await actions.settled()
        await vi.waitUntil(() => !isLaying(state()), { timeout: 20_000, interval: 5 })
        await expectOneFrame(state(), storage)
      }
    }),
    { seed: 11, numRuns: 20 },
  )
})

async function expectOneFrame(
  state: Parameters<typeof aircraftView>[0],
  storage: { loadMesh(hash: string): Promise<Blob | null> },
): Promise<void> {
  const { sum } = frameSummary(state)
  const printedG = sum.printed.massG.mid
  const same = (value: number, other: number): void => {
    expect(value).toBeCloseTo(other, 6)
  }
  // Rows of the page, their shares, the ledger, the carbon frame, the limits.
  same(
    ledgerRows(state).reduce((all, { sum: row }) => all + (row?.flying.massG.mid ?? 0), 0),
    printedG,
  )
  const { ledger } = aircraftView(state)
  const lines = ledger.lines.filter(({ group }) => group === 'printed')
  same(
    lines.reduce((all, { massTotalG }) => all + massTotalG, 0),
    printedG,
  )
  same(sum.allUpG.mid, ledger.basicMassG)
  same(sum.carbon!.massG.mid, printedG - 20)
  const { strictest } = sum.limits
  if (strictest !== null) same(strictest.printedG - strictest.leftG, printedG)
  // The table that leaves the page.
  const written = ledgerCsv(state)
    .trimEnd()
    .split('\r\n')
    // Commas between cells; names in quotes may hold some.
    .map((line) => line.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/))
  const total = written.find(([name]) => name?.startsWith('"Total: ') === true)!
  if (ledger.lines.length > lines.length) {
    same(Number(written.at(-1)![7]), Number(ledger.basicMassG.toFixed(3)))
  }
  same(Number(total[7]), Number(printedG.toFixed(3)))
  expect([total[2], total[3]]).toEqual([String(sum.printed.pieces), String(sum.spares.pieces)])
  expect(total.at(-1)).toBe(`"${leftOutNames(sum.leftOut) ?? ''}"`)
  // The command, from the meshes alone.
  const meshes = new Map<string, Uint8Array>()
  for (const { meshHash } of state.frame.parts) {
    const blob = await storage.loadMesh(meshHash)
    if (blob !== null) meshes.set(meshHash, new Uint8Array(await blob.arrayBuffer()))
  }
  const report = priceFrame({ frame: state.frame, meshes, complaints: [] }, () => undefined)
  same(report.total.massG.mid, printedG)
  same(report.total.massG.low, sum.printed.massG.low)
  same(report.total.massG.high, sum.printed.massG.high)
  same(report.totalWithSpares.cost.mid, sum.withSpares.cost.mid)
  same(report.totalWithSpares.timeS.mid, sum.withSpares.timeS.mid)
  // Head, rows and runs: one sum of hours and one of money, however the pieces lie.
  const column = (of: 'timeS' | 'cost') =>
    ledgerRows(state).reduce((all, { sum: row }) => all + (row?.withSpares[of].mid ?? 0), 0)
  same(column('timeS'), sum.withSpares.timeS.mid)
  same(column('cost'), sum.withSpares.cost.mid)
  same(Number(total[10]), Number(sum.withSpares.cost.mid.toFixed(4)))
  const inRuns = reckonedRuns(state)?.runs.flatMap(({ spots }) => spots).length ?? 0
  const told = report.runs.flatMap(({ pieces }) => pieces).reduce((all, one) => all + one.count, 0)
  expect(told).toBe(inRuns)
  same(report.ledger.basicMassG, ledger.basicMassG)
  for (const { thresholdG, chanceBelow } of report.odds) {
    expect(chanceBelow).toBe(roundChance(massOdds(sum.doubt, thresholdG).chanceBelow))
  }
  expect(report.standing).toBe(standingWords(sum))
  expect(report.learned).toEqual(sum.learned)
  expect(report.readings.map(({ outcome }) => outcome)).toEqual(
    sum.readings.map(({ fate }) => fate),
  )
  const { wholes = [], clocks = [] } = state.frame
  expect(report.readings).toHaveLength(
    state.frame.parts.filter(({ weighIn }) => weighIn !== undefined).length +
      wholes.length +
      clocks.length,
  )
  const massShares = ledgerRows(state).reduce((all, { sum: row }) => all + (row?.massShare ?? 0), 0)
  same(massShares, printedG > 0 ? 1 : 0)
  same(sum.carbon!.cost.mid, sum.printed.cost.mid - 30)
  expect(report.carbon).toEqual(sum.carbon)
  expect(report.limits).toEqual({ allUpG: sum.limits.allUpG, printedG: sum.limits.printedG })
  const parts = report.parts.filter((part) => !isFailed(part))
  same(
    parts.reduce((all, part) => all + (isFailed(part) ? 0 : part.quantity * part.massG.mid), 0),
    printedG,
  )
}

test('a part that failed is named by page, table and command, and is in no sum', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([fileOf('arm.stl', FILES[0]!.bytes), fileOf('deck.stl', FILES[1]!.bytes)])
  await actions.settled()
  const [arm, deck] = state().frame.parts
  const failed = { ...state(), work: { ...state().work, [deck!.id]: failedWork() } }
  const { sum } = frameSummary(failed)
  const left = { id: deck!.id, name: 'deck', why: 'failed', weighed: false }
  expect(sum.leftOut).toEqual([left])
  expect(aircraftView(failed).missing).toEqual(['deck'])
  expect(ledgerCsv(failed)).toContain('without 1 part: “deck” (failed)')
  const meshes = new Map([[arm!.meshHash, FILES[0]!.bytes]])
  const report = priceFrame({ frame: state().frame, meshes, complaints: [] }, () => undefined)
  expect(report.leftOut).toEqual([left])
  expect(frameTableOf(report, 'en-GB')).toMatch(/^total, 2 pieces, without 1 part /m)
  expect(report.total.failed).toBe(1)
  expect(report.total.massG.mid).toBeCloseTo(sum.printed.massG.mid, 6)
})

test('a failed part whose weighing holds counts by the scale in page, table and command', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([fileOf('arm.stl', FILES[0]!.bytes), fileOf('deck.stl', FILES[1]!.bytes)])
  await actions.settled()
  const [arm, deck] = state().frame.parts
  actions.updateParts([deck!.id], { quantity: 2, spares: 1 })
  actions.weighPart(deck!.id, { ...ONE, scaleG: 3.2 })
  actions.putCarbon({ massG: 20, price: 30 })
  const failed = { ...state(), work: { ...state().work, [deck!.id]: failedWork() } }
  const { sum } = frameSummary(failed)
  const meshes = new Map([[arm!.meshHash, FILES[0]!.bytes]])
  const report = priceFrame({ frame: state().frame, meshes, complaints: [] }, () => undefined)
  const [armPart, deckPart] = report.parts
  if (armPart === undefined || isFailed(armPart)) throw new Error('the arm is priced')
  expect(report.total.massG.mid).toBeCloseTo(armPart.massG.mid + 6.4, 9)
  expect(report.total.cost.mid).toBeCloseTo(armPart.cost.mid, 9)
  expect(deckPart?.massG?.mid).toBeCloseTo(3.2, 9)
  expect(report.total.massG.mid).toBeCloseTo(sum.printed.massG.mid, 6)
  expect(report.carbon).toEqual(sum.carbon)
  expect(report.carbon?.massG.mid).toBeCloseTo(armPart.massG.mid + 6.4 - 20, 9)
  expect(report.total).toMatchObject({ priced: 1, failed: 1, quantity: 3 })
  expect(report.leftOut).toMatchObject([{ name: 'deck', weighed: true }])
  // The all-up mass has it, so that no sheet may say it lacks it; what it costs nobody knows.
  expect(aircraftView(failed).missing).toEqual([])
  expect(report.ledger.lines[1]).toMatchObject({ name: 'deck', massG: 3.2, costEach: null })
  expect(report.notes.join(' ')).toContain('Without figures, but weighed: “deck”')
  const table = frameTableOf(report, 'en-GB')
  expect(table).toMatch(/^2 × deck +3\.2 g /m)
  expect(table).toMatch(/^2 × deck +printed +weighed +3\.2 g +6\.4 g +–$/m)
  expect(table).toMatch(/^total, 3 pieces, cost and hours without 1 part /m)
  expect(table).toMatch(/^3 pieces and 1 spare /m)
  const lines = ledgerCsv(failed).trimEnd().split('\r\n')
  expect(lines[2]).toMatch(
    /^"deck","deck\.stl",2,1,0,"[^"]+","the scale",6\.400,[\d.]+,[\d.]+,,,,,,,/,
  )
  expect(lines[3]).toContain('cost and hours without 1 part: “deck” (failed, by the scale)')
})

test('a role of one’s own is named by the command, and its recipe is what was counted', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([fileOf('arm.stl', FILES[0]!.bytes), fileOf('deck.stl', FILES[1]!.bytes)])
  const [arm, deck] = state().frame.parts
  actions.updateParts([arm!.id], { recipe: { walls: 5, infillPct: 60 } })
  actions.keepRole(arm!.id, 'Race arm')
  actions.applyRole([deck!.id], state().frame.roles![0]!.id)
  actions.putMaterial({ ...MATERIALS[0]!, id: 'own-black', name: 'Black spool', flow: 0.97 })
  actions.updateParts([deck!.id], { materialId: 'own-black' })
  actions.putPrinter({ ...PRINTERS[0]!, habits: { overlapShare: 0.2 } })
  actions.putPrices({ ...state().frame.prices, electricityPerKwh: 0.8 })
  await actions.settled()
  const file = path.join(mkdtempSync(path.join(tmpdir(), 'preweigh-roles-')), 'roles.preweigh')
  writeFileSync(file, new Uint8Array(await (await actions.saveProject()).arrayBuffer()))
  const { out } = await runPriceHere('.', ['--frame', file, '--json'])
  const report = JSON.parse(out) as FrameReport
  expect(report.parts.map(({ role }) => role)).toEqual(['Race arm', 'Race arm'])
  expect(report.notes.join(' ')).not.toContain('role')
  const { sum } = frameSummary(state())
  expect(report.total.massG.mid).toBeCloseTo(sum.printed.massG.mid, 9)
  expect(report.total.cost.mid).toBeCloseTo(sum.printed.cost.mid, 9)
  expect(report.total.timeS.mid).toBeCloseTo(sum.printed.timeS.mid, 6)
  // A file made by hand may name what it does not hold: that is said, and nothing else is lost.
  const entries = unzipSync(readFileSync(file))
  const project = JSON.parse(strFromU8(entries['project.json']!)) as { frame: Frame }
  const [first, second] = project.frame.parts
  const parts = [first!, { ...second!, materialId: 'own-gone' }]
  const frame = { ...project.frame, roles: [], parts }
  const bytes = strToU8(JSON.stringify({ ...project, frame }))
  writeFileSync(file, zipSync({ ...entries, 'project.json': bytes }))
  const odd = JSON.parse((await runPriceHere('.', ['--frame', file, '--json'])).out) as FrameReport
  expect(odd.parts.map(({ role }) => role)).toEqual([null, null])
  const notes = odd.notes.join(' ')
  expect(notes).toContain('The role that “arm” was given is not in this file')
  expect(notes).toContain(
    `“deck” is of the material “own-gone”, which the frame does not hold; it counts as ${MATERIALS[0]!.name}.`,
  )
  const [armPart] = odd.parts
  const [before] = report.parts
  if (armPart === undefined || before === undefined || isFailed(armPart) || isFailed(before)) {
    throw new Error('the arm is priced')
  }
  expect(armPart.depositMm3).toBe(before.depositMm3)
})

function failedWork() {
  const problem = {
    code: 'no-volume',
    message: 'It holds nothing.',
    advice: 'Look at it.',
  } as const
  return { kind: 'failed', problem, read: null } as const
}
