import { expect, test } from 'vitest'
import { frameSum } from '../../../src/state/store/derived.ts'
import { ledgerCsv } from '../../../src/state/actions/csv.ts'
import { box, merge, translate } from '../../support/meshes.ts'
import { boxFile, fileOf, startSession } from '../../support/session.ts'
import { writeStlBinary } from '../../support/writeMesh.ts'

const ONE = { pieces: 1, tareG: 0, stepG: 0.1, trusted: false }

async function weighed() {
  const session = await startSession()
  await session.actions.addFiles([boxFile('arm.stl', 60, 20, 10)])
  await session.actions.settled()
  const { id } = session.state().frame.parts[0]!
  const calculatedG = frameSum(session.state()).rows[0]!.figures.massG.mid
  session.actions.weighPart(id, { ...ONE, scaleG: 1.05 * calculatedG })
  const row = () => frameSum(session.state()).rows.find(({ part }) => part.id === id)!
  return { ...session, id, calculatedG, row }
}

test.each([
  ['recipe', { recipe: { infillPct: 100 } }],
  ['unit', { unit: 'centimetre' }],
  ['material', { materialId: 'abs' }],
] as const)(
  'a change of %s carries scale ÷ calculated over, and undo brings the scale back',
  async (what, patch) => {
    const { actions, id, calculatedG, row } = await weighed()
    expect(row().massFrom).toBe('weighed')
    actions.updateParts([id], patch)
    await actions.settled()
    expect(row().changes).toEqual([what])
    expect(row().massFrom).toBe('weighed before')
    expect(row().pieceG.mid).toBeCloseTo(1.05 * row().figures.massG.mid, 6)
    actions.undo()
    await actions.settled()
    expect(row().massFrom).toBe('weighed')
    expect(row().pieceG.mid).toBeCloseTo(1.05 * calculatedG, 6)
  },
)

test('a weighing that says nothing of what was calculated then gets it when it stops holding', async () => {
  const { actions, state, store, id, row } = await weighed()
  // As the sample and frames of earlier versions have it.
  const { frame } = state()
  const parts = frame.parts.map((part) => ({
    ...part,
    weighIn: { ...part.weighIn!, calculatedG: null },
  }))
  store.setState({ frame: { ...frame, parts } })
  const before = row().figures.massG.mid
  actions.updateParts([id], { recipe: { infillPct: 100 } })
  await actions.settled()
  expect(state().frame.parts[0]!.weighIn!.calculatedG).toBeCloseTo(before, 6)
  expect(row().pieceG.mid).toBeCloseTo(1.05 * row().figures.massG.mid, 6)
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
  const plateG = frameSum(state()).rows[0]!.figures.massG.mid
  actions.weighPart(id, { ...ONE, scaleG: 1.1 * plateG })
  await actions.splitPlate(id)
  await actions.settled()
  const [foot] = frameSum(state()).rows
  expect(foot!.part.quantity).toBe(3)
  expect(foot!.changes).toEqual(['mesh'])
  expect(foot!.pieceG.mid).toBeCloseTo(1.1 * foot!.figures.massG.mid, 6)
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
