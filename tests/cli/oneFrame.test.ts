import fc from 'fast-check'
import { expect, test } from 'vitest'
import { priceFrame } from '../../src/cli/priceFrame.ts'
import { isFailed } from '../../src/cli/report.ts'
import { massOdds } from '../../src/core/frame/odds.ts'
import { leftOutNames, roundChance, standingWords } from '../../src/core/frame/sayings.ts'
import type { Item } from '../../src/core/model/aircraft.ts'
import { ledgerCsv } from '../../src/state/actions/csv.ts'
import { aircraftView } from '../../src/state/store/aircraftView.ts'
import { frameSummary, ledgerRows } from '../../src/state/store/derived.ts'
import { box, cubeWithHole } from '../support/meshes.ts'
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
)

test('after any change of a fact every place says the same of the frame, the command too (seed 11)', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(changes, { minLength: 3, maxLength: 6 }), async (list) => {
      const { actions, state, storage } = await startSession()
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
        if (kind === 'remove' && to === 1 && parts.length > 1) actions.removeParts([id])
        await actions.settled()
        await expectOneFrame(state(), storage)
      }
    }),
    { seed: 11, numRuns: 12 },
  )
}, 120_000)

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
  const total = ledgerCsv(state).trimEnd().split('\r\n').at(-1)!.split(',')
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
  same(report.ledger.basicMassG, ledger.basicMassG)
  for (const { thresholdG, chanceBelow } of report.odds) {
    expect(chanceBelow).toBe(roundChance(massOdds(sum.doubt, thresholdG).chanceBelow))
  }
  expect(report.standing).toBe(standingWords(sum))
  expect(report.learned).toEqual(sum.learned)
  expect(report.readings.map(({ outcome }) => outcome)).toEqual(
    sum.readings.map(({ fate }) => fate),
  )
  expect(report.readings).toHaveLength(
    state.frame.parts.filter(({ weighIn }) => weighIn !== undefined).length,
  )
  const massShares = ledgerRows(state).reduce((all, { sum: row }) => all + (row?.massShare ?? 0), 0)
  same(massShares, printedG > 0 ? 1 : 0)
  same(sum.carbon!.cost.mid, sum.printed.cost.mid - 30)
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
  expect(sum.leftOut).toEqual([{ id: deck!.id, name: 'deck', why: 'failed' }])
  expect(ledgerCsv(failed)).toContain('without 1 part: “deck” (failed)')
  const meshes = new Map([[arm!.meshHash, FILES[0]!.bytes]])
  const report = priceFrame({ frame: state().frame, meshes, complaints: [] }, () => undefined)
  expect(report.leftOut).toEqual([{ id: deck!.id, name: 'deck', why: 'failed' }])
  expect(report.total.failed).toBe(1)
  expect(report.total.massG.mid).toBeCloseTo(sum.printed.massG.mid, 6)
})

function failedWork() {
  const problem = {
    code: 'no-volume',
    message: 'It holds nothing.',
    advice: 'Look at it.',
  } as const
  return { kind: 'failed', problem, read: null } as const
}
