import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { FrameReport } from '../../src/cli/frameReport.ts'
import { loadOf, type TypedLoad } from '../../src/core/aircraft/twin/loadOf.ts'
import { DRAFT_MM } from '../../src/core/data/stiffness.ts'
import { ledgerRows } from '../../src/state/store/derived.ts'
import { runPriceHere } from '../support/priceCommand.ts'
import { boxFile, startSession } from '../support/session.ts'

let folder = ''
let session: Awaited<ReturnType<typeof startSession>>

/** Two bars as the page saves them; one is an arm. */
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'preweigh-loads-'))
  session = await startSession()
  await session.actions.addFiles([boxFile('boom.stl', 60, 8, 6), boxFile('rail.stl', 50, 10, 8)])
  await session.actions.settled()
  const boom = session.state().frame.parts[0]!
  session.actions.applyRole([boom.id], 'arm')
  await session.actions.settled()
  const file = await session.actions.saveProject()
  writeFileSync(join(folder, 'bars.preweigh'), Buffer.from(await file.arrayBuffer()))
})
afterAll(() => rmSync(folder, { recursive: true }))

async function stiffness(...args: readonly string[]): Promise<FrameReport['stiffness']> {
  const { code, out, err } = await runPriceHere(folder, [
    '--frame',
    'bars.preweigh',
    '--json',
    ...args,
  ])
  expect([code, err]).toEqual([0, ''])
  return (JSON.parse(out) as FrameReport).stiffness
}

/** What the page solves of a part whose load is typed on its sheet. */
async function onPage(name: string, typed: TypedLoad) {
  const { state, actions } = session
  const row = ledgerRows(state()).find(({ part }) => part.name === name)!
  const { pick, jointBores, loadN, tipG } = loadOf(row.part, state().frame.aircraft, typed)
  const massG = row.sum!.pieceG.mid
  const wanted = { massG, jointBores, pick, loadN, tipG, cellMm: DRAFT_MM, wantTones: true }
  const outcome = await actions.stiffenPart(row.part.id, wanted, {
    signal: new AbortController().signal,
  })
  if (outcome?.ok !== true) throw new Error('not solved')
  return outcome.value
}

describe('--loads', () => {
  it('pushes a part of a saved frame as its sheet does where the same is typed', async () => {
    const typed: TypedLoad = {
      loadN: 23,
      pick: { hold: 'x-high', push: 'auto', direction: 'y' },
    }
    const loads = JSON.stringify({ boom: { loadN: 23, hold: 'x-high', direction: 'y' } })
    const [plain] = await stiffness()
    const [told] = await stiffness('--loads', loads)
    const { figures, chosen } = await onPage('boom', typed)
    expect(told).toEqual({
      part: 'boom',
      loadN: 23,
      held: 'x-high',
      pushed: 'x-low',
      direction: 'y',
      deflectionMm: figures.deflectionMm,
      firstHz: figures.hz[0],
      safety: figures.safety?.factor,
    })
    expect(chosen).toMatchObject({ held: 'x-high', pushed: 'x-low', direction: 'y' })
    // Untold it is what the aircraft says: a plain load, upwards.
    expect(plain).toMatchObject({ loadN: 10, held: 'x-low', pushed: 'x-high', direction: 'z' })
    expect(plain?.deflectionMm.mid).toBeGreaterThan(told!.deflectionMm.mid / 2.3)
  })

  it('is linear in the load, and reports a part it names that is no arm', async () => {
    const once = await stiffness('--loads', '{"2": {"loadN": 7}}')
    expect(once.map(({ part }) => part)).toEqual(['boom', 'rail'])
    const twice = await stiffness('--loads', '{"rail": {"loadN": 14}}')
    expect(twice[1]!.deflectionMm.mid / once[1]!.deflectionMm.mid).toBeCloseTo(2, 6)
    expect(twice[1]!.firstHz.mid).toBeCloseTo(once[1]!.firstHz.mid, 6)
    expect(twice[0]).toEqual(once[0])
  })

  it.each([
    ['{"wing": {"loadN": 7}}', 'no part is named “wing”'],
    ['{"boom": {"loadN": 0}}', 'boom.loadN is 0; it must be a number from 0.01'],
    ['{"boom": {"hold": "left"}}', 'boom.hold is "left"; it must be one of auto, x-low'],
    ['{"boom": {"newtons": 7}}', '“boom.newtons” is not a key it knows'],
    ['[7]', 'it must be a JSON object such as {"arm": {"loadN": 12}}'],
  ])('refuses %s and says why', async (loads, why) => {
    const { code, err } = await runPriceHere(folder, ['--frame', 'bars.preweigh', '--loads', loads])
    expect(code).toBe(2)
    expect(err).toContain(`--loads: `)
    expect(err).toContain(why)
  })
})
