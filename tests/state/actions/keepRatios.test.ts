import { expect, test } from 'vitest'
import { PRINTER_DEFAULT, PRINTERS } from '../../../src/core/data/printers.ts'
import { POSE_AS_DRAWN } from '../../../src/core/model/settings.ts'
import { frameSum } from '../../../src/state/store/derived.ts'
import { ledgerCsv } from '../../../src/state/actions/csv.ts'
import { box, merge, mirror, translate } from '../../support/meshes.ts'
import { boxFile, fileOf, startSession } from '../../support/session.ts'
import { writeStlBinary } from '../../support/writeMesh.ts'

/** An L with a peg at one end, which no turn makes its own mirror image. */
const HAND = merge([box(30, 6, 4), box(8, 18, 4), translate(box(3, 3, 5), [1, 13, 3])])

const ONE = { pieces: 1, tareG: 0, stepG: 0.1, trusted: false }

async function weighed() {
  const session = await startSession()
  await session.actions.addFiles([boxFile('arm.stl', 60, 20, 10)])
  await session.actions.settled()
  const { id } = session.state().frame.parts[0]!
  const calculatedG = frameSum(session.state()).rows[0]!.figures!.massG.mid
  session.actions.weighPart(id, { ...ONE, scaleG: 1.05 * calculatedG })
  const row = () => frameSum(session.state()).rows.find(({ part }) => part.id === id)!
  return { ...session, id, calculatedG, row }
}

test.each([
  ['recipe', { recipe: { infillPct: 100 } }],
  ['unit', { unit: 'centimetre' }],
  ['material', { materialId: 'abs' }],
  ['how it lies', { pose: { ...POSE_AS_DRAWN, rotateDeg: [90, 0, 0] } }],
] as const)(
  'a change of %s carries scale ÷ calculated over, and undo brings the scale back',
  async (what, patch) => {
    const { actions, id, calculatedG, row } = await weighed()
    expect(row().massFrom).toBe('weighed')
    actions.updateParts([id], patch)
    await actions.settled()
    expect(row().changes).toEqual([what])
    expect(row().massFrom).toBe('weighed before')
    expect(row().pieceG.mid).toBeCloseTo(1.05 * row().figures!.massG.mid, 6)
    actions.undo()
    await actions.settled()
    expect(row().massFrom).toBe('weighed')
    expect(row().pieceG.mid).toBeCloseTo(1.05 * calculatedG, 6)
  },
)

test('another printer carries scale ÷ calculated over; a turn on the bed changes nothing', async () => {
  const { actions, id, calculatedG, row } = await weighed()
  actions.updateParts([id], { pose: { ...POSE_AS_DRAWN, rotateDeg: [0, 0, 30] } })
  await actions.settled()
  expect(row().massFrom).toBe('weighed')
  actions.putPrinter(PRINTERS.find((printer) => printer.id !== PRINTER_DEFAULT.id)!)
  expect(row().changes).toEqual(['printer'])
  expect(row().scaleRatio).toBeCloseTo(1.05, 6)
  actions.undo()
  expect(row().massFrom).toBe('weighed')
  expect(row().pieceG.mid).toBeCloseTo(1.05 * calculatedG, 6)
})

test('weighing is one step back and forth, with all that it taught', async () => {
  const { actions, state, id, calculatedG, row } = await weighed()
  actions.weighPart(id, { ...ONE, scaleG: 1.1 * calculatedG })
  expect(row().pieceG.mid).toBeCloseTo(1.1 * calculatedG, 6)
  actions.undo()
  expect(row().pieceG.mid).toBeCloseTo(1.05 * calculatedG, 6)
  actions.undo()
  expect(row().massFrom).toBe('calculated')
  expect(row().pieceG.mid).toBeCloseTo(calculatedG, 6)
  expect(frameSum(state()).learned).toEqual([])
  actions.redo()
  actions.redo()
  expect(row().pieceG.mid).toBeCloseTo(1.1 * calculatedG, 6)
})

test('a saved frame gives a weighing back, one of before a change too', async () => {
  const { actions, state, id, row } = await weighed()
  const here = async () => {
    const blob = await actions.saveProject()
    const elsewhere = await startSession()
    await elsewhere.actions.openProject({ name: 'frame.preweigh', blob })
    await elsewhere.actions.settled()
    return frameSum(elsewhere.state())
  }
  expect((await here()).rows[0]!.part.weighIn).toEqual(row().part.weighIn)
  expect((await here()).printed.massG).toEqual(frameSum(state()).printed.massG)
  actions.updateParts([id], { recipe: { walls: 5 } })
  await actions.settled()
  const [there] = (await here()).rows
  expect(there!.massFrom).toBe('weighed before')
  expect(there!.pieceG).toEqual(row().pieceG)
  expect(there!.changes).toEqual(['recipe'])
})

test('a mesh put in the place of the weighed one carries scale ÷ calculated over', async () => {
  const { actions, state } = await startSession()
  // A speck beside the block: what is left of the file once it is dropped is another mesh.
  const withSpeck = merge([box(40, 20, 5), translate(box(0.5, 0.5, 0.5), [60, 0, 0])])
  await actions.addFiles([fileOf('deck.stl', writeStlBinary(withSpeck))])
  await actions.settled()
  const { id } = state().frame.parts[0]!
  const row = () => frameSum(state()).rows[0]!
  const beforeG = row().figures!.massG.mid
  actions.weighPart(id, { ...ONE, scaleG: 0.97 * beforeG })
  await actions.dropSpecks(id)
  await actions.settled()
  expect(row().changes).toEqual(['mesh'])
  expect(row().scaleRatio).toBeCloseTo(0.97, 6)
  expect(row().pieceG.mid).toBeCloseTo(0.97 * row().figures!.massG.mid, 6)
  actions.undo()
  expect(row().massFrom).toBe('weighed')
})

test('mirrored twins taken off a weighed plate are one row, each by the ratio', async () => {
  const { actions, state } = await startSession()
  const plate = merge([HAND, translate(mirror(HAND), [80, 0, 0])])
  await actions.addFiles([fileOf('hooks.stl', writeStlBinary(plate))])
  await actions.settled()
  const { id } = state().frame.parts[0]!
  const plateG = frameSum(state()).rows[0]!.figures!.massG.mid
  actions.weighPart(id, { ...ONE, scaleG: 0.9 * plateG })
  await actions.splitPlate(id)
  await actions.settled()
  const { rows, printed } = frameSum(state())
  expect(rows.map(({ part: { quantity, mirrored } }) => [quantity, mirrored])).toEqual([[2, 1]])
  expect(rows[0]!.pieceG.mid).toBeCloseTo(0.9 * rows[0]!.figures!.massG.mid, 6)
  expect(printed.massG.mid / (0.9 * plateG)).toBeCloseTo(1, 1)
})

test('a weighing that says nothing of what was calculated then gets it when it stops holding', async () => {
  const { actions, state, store, id, row } = await weighed()
  // As the sample and frames of earlier versions have it.
  const { frame } = state()
  const parts = frame.parts.map((part) => ({
    ...part,
    weighIn: { ...part.weighIn!, calculatedG: null },
  }))
  store.setState({ frame: { ...frame, parts } })
  const before = row().figures!.massG.mid
  actions.updateParts([id], { recipe: { infillPct: 100 } })
  await actions.settled()
  expect(state().frame.parts[0]!.weighIn!.calculatedG).toBeCloseTo(before, 6)
  expect(row().pieceG.mid).toBeCloseTo(1.05 * row().figures!.massG.mid, 6)
})

test('pieces, spares and mirrored ones leave a weighing as it is', async () => {
  const { actions, id, calculatedG, row } = await weighed()
  actions.updateParts([id], { quantity: 4, spares: 2, mirrored: 2 })
  expect(row().massFrom).toBe('weighed')
  expect(row().flying.massG.mid).toBeCloseTo(4 * 1.05 * calculatedG, 6)
})

test('a duplicate has the weighing of its original, until one of them changes', async () => {
  const { actions, state, id, row } = await weighed()
  actions.duplicateParts([id])
  await actions.settled()
  const copy = () => frameSum(state()).rows.find(({ part }) => part.id !== id)!
  expect(copy().massFrom).toBe('weighed')
  actions.updateParts([copy().part.id], { recipe: { walls: 4 } })
  await actions.settled()
  expect(copy().massFrom).toBe('weighed before')
  expect(row().massFrom).toBe('weighed')
})

test('a weighed plate taken apart gives each part its share by the ratio, not the plate’s grams', async () => {
  const { actions, state } = await startSession()
  const plate = merge([
    box(20, 10, 5),
    translate(box(20, 10, 5), [40, 0, 0]),
    translate(box(20, 10, 5), [80, 0, 0]),
  ])
  await actions.addFiles([fileOf('feet.stl', writeStlBinary(plate))])
  await actions.settled()
  const { id } = state().frame.parts[0]!
  const plateG = frameSum(state()).rows[0]!.figures!.massG.mid
  actions.weighPart(id, { ...ONE, scaleG: 1.1 * plateG })
  await actions.splitPlate(id)
  await actions.settled()
  const [foot] = frameSum(state()).rows
  expect(foot!.part.quantity).toBe(3)
  expect(foot!.changes).toEqual(['mesh'])
  expect(foot!.pieceG.mid).toBeCloseTo(1.1 * foot!.figures!.massG.mid, 6)
  expect(foot!.flying.massG.mid / (1.1 * plateG)).toBeCloseTo(1, 1)
  expect(ledgerCsv(state())).toContain('"the scale, before a change"')
  actions.undo()
  expect(frameSum(state()).rows[0]!.massFrom).toBe('weighed')
})

test('a weighing is dropped by hand, and zero is refused with a word', async () => {
  const { actions, state, id, calculatedG, row } = await weighed()
  actions.weighPart(id, { ...ONE, scaleG: 0 })
  expect(state().notice?.text).toBeTruthy()
  expect(row().massFrom).toBe('weighed')
  actions.weighPart(id, null)
  expect(row().massFrom).toBe('calculated')
  expect(row().pieceG.mid).toBeCloseTo(calculatedG, 6)
})
