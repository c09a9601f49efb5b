import { expect, test } from 'vitest'
import { VIEWS } from '../../../src/core/drawing/viewAxes.ts'
import { LOAD_PICK_AUTO } from '../../../src/core/stiffness/part/chooseLoad.ts'
import { createInProcessRunner } from '../../../src/jobs/inProcess.ts'
import { createMemoryStorage } from '../../../src/state/storage/memoryStorage.ts'
import type { Storage } from '../../../src/state/storage/storage.ts'
import type { Session } from '../../../src/state/actions/types.ts'
import { boxFile, counting, startSession } from '../../support/session.ts'

const SHEET = { widthPx: 400, heightPx: 300, marginPx: 10 }
const STILL = { view: VIEWS.slant, sheet: SHEET, apart: 0, samples: 2 } as const
const HELD = { jointBores: [], pick: LOAD_PICK_AUTO }
const GIVES = { ...HELD, massG: 7, loadN: 10, tipG: 0, cellMm: 5, wantTones: false }
const { signal } = new AbortController()
const LOOK = { view: VIEWS.slant, sheet: SHEET, pointsMm: [] }

const ASKED = new Set(['draw', 'look', 'cut', 'sections', 'stiff', 'shape'])

/** A frame of a block, and how often a worker was asked to draw, cut or reckon. */
async function frameOfBlock(storage: Storage = createMemoryStorage()) {
  const runner = counting(createInProcessRunner())
  const { actions, state } = await startSession({ runner, storage })
  await actions.settled()
  if (state().frame.parts.length === 0) {
    await actions.addFiles([boxFile('block.stl', 30, 20, 10)])
  }
  await actions.settled()
  const asked = () => runner.kinds.filter((kind) => ASKED.has(kind)).length
  return { actions, asked, id: state().frame.parts[0]!.id, state }
}

test.each([
  ['the frame', (actions: Session) => actions.drawFrame(STILL)],
  ['a part', (actions: Session, id: string) => actions.lookAtPart(id, LOOK)],
  ['a cut', (actions: Session, id: string) => actions.cutPart(id, 'z', 0.5)],
] as const)('%s is drawn once, and anew when its lines change', async (name, draw) => {
  const { actions, asked, id, state } = await frameOfBlock()
  const first = await draw(actions, id)
  // Infill and pieces beyond the frame’s show in no line.
  actions.updateParts([id], { recipe: { infillPct: 77 }, spares: 2 })
  expect(await draw(actions, id)).toEqual(first)
  expect(asked()).toBe(1)
  const { pose } = state().frame.parts[0]!
  if (name === 'the frame') actions.updateParts([id], { quantity: 2 })
  else actions.updateParts([id], { pose: { ...pose, rotateDeg: [90, 0, 0] } })
  expect(await draw(actions, id)).not.toEqual(first)
  expect(asked()).toBe(2)
  actions.undo()
  expect(await draw(actions, id)).toEqual(first)
  expect(asked()).toBe(2)
})

test('two who ask for the same cut at once wait for one', async () => {
  const { actions, asked, id } = await frameOfBlock()
  const [one, other] = await Promise.all([
    actions.cutPart(id, 'z', 0.5),
    actions.cutPart(id, 'z', 0.5),
  ])
  expect(other).toBe(one)
  expect(asked()).toBe(1)
})

test('how a part gives is reckoned once, and solved anew with another infill', async () => {
  const { actions, asked, id } = await frameOfBlock()
  const solve = () => actions.stiffenPart(id, GIVES, { signal })
  const first = await solve()
  expect(first?.ok).toBe(true)
  expect(await solve()).toBe(first)
  expect(asked()).toBe(1)
  actions.updateParts([id], { recipe: { infillPct: 77 } })
  expect(await solve()).not.toEqual(first)
  expect(asked()).toBe(2)
  // A beam's sections know no infill.
  const sections = await actions.sectionPart(id, HELD, signal)
  expect(sections?.ok).toBe(true)
  actions.updateParts([id], { recipe: { infillPct: 20 } })
  expect(await actions.sectionPart(id, HELD, signal)).toBe(sections)
  expect(asked()).toBe(3)
})

test('what a hand turns is not kept', async () => {
  const { actions, asked } = await frameOfBlock()
  for (let i = 0; i < 2; i++) await actions.drawFrame({ ...STILL, samples: 1 })
  expect(asked()).toBe(2)
})

test('what was drawn, cut, measured and reckoned is there at the next visit', async () => {
  const storage = createMemoryStorage()
  const ask = async ({ actions, id }: Awaited<ReturnType<typeof frameOfBlock>>) => [
    await actions.drawFrame(STILL),
    await actions.lookAtPart(id, LOOK),
    await actions.cutPart(id, 'z', 0.5),
    await actions.stiffenPart(id, GIVES, { signal }),
    await actions.sectionPart(id, HELD, signal),
    await actions.loadShape(id),
  ]
  const first = await frameOfBlock(storage)
  const answers = await ask(first)
  first.actions.close()
  expect(first.asked()).toBe(answers.length)
  const second = await frameOfBlock(storage)
  expect(await ask(second)).toEqual(answers)
  expect(second.asked()).toBe(0)
})

test('of many the first is forgotten, and what could not be drawn is asked again', async () => {
  const nothing = () => Promise.resolve(null)
  const { actions, asked, id } = await frameOfBlock({
    ...createMemoryStorage(),
    loadAnswer: nothing,
  })
  const from = (azimuthDeg: number) =>
    actions.lookAtPart(id, { ...LOOK, view: { azimuthDeg, elevationDeg: 30 } })
  for (let deg = 0; deg <= 60; deg++) await from(deg)
  expect(asked()).toBe(61)
  await from(60)
  expect(asked()).toBe(61)
  await from(0)
  expect(asked()).toBe(62)

  const runner = counting({
    run: () =>
      Promise.resolve({ ok: false, problem: { code: 'cancelled', message: '', advice: '' } }),
    close: () => undefined,
  })
  const { actions: failing } = await startSession({ runner })
  for (let i = 0; i < 2; i++) expect(await failing.drawFrame(STILL)).toBeNull()
  expect(runner.kinds.filter((kind) => kind === 'draw')).toHaveLength(2)
})
