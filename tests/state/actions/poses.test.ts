import { expect, test } from 'vitest'
import { box, prism, rotate } from '../../support/meshes.ts'
import { createInProcessRunner } from '../../../src/jobs/inProcess.ts'
import { counting, fileOf, startSession } from '../../support/session.ts'
import { writeStlBinary } from '../../support/writeMesh.ts'

test('ways to lie are listed, tried without changing the part, and shown at once when chosen', async () => {
  const runner = counting(createInProcessRunner())
  const { actions, state } = await startSession({ runner })
  await actions.addFiles([fileOf('bar.stl', writeStlBinary(rotate(box(40, 10, 4), [0, 90, 0])))])
  await actions.settled()
  const before = state().frame
  const { id } = before.parts[0]!
  const options = await actions.listPoses(id)
  expect(options[0]!.heightMm).toBeCloseTo(4, 4)
  const { signal } = new AbortController()
  const census = await actions.tryRecipe(id, { supports: false }, signal, options[0]!.pose)
  expect(census!.layers.count).toBe(20)
  expect(state().frame).toBe(before)

  const jobs = runner.kinds.length
  actions.updateParts([id], { pose: options[0]!.pose })
  const work = state().work[id]
  expect(work?.kind === 'done' && work.census === census && work.newerFraction).toBe(null)
  await actions.settled()
  expect(runner.kinds.length).toBe(jobs)
})

test('a trial can have the supports that the part has not, and leaves the part without', async () => {
  const { actions, state } = await startSession()
  // A table 40 × 10 mm on one foot 10 × 10 mm and 20 mm high: 300 mm² × 20 mm hang over, by hand.
  const outline = [
    [0, 0],
    [10, 0],
    [10, 20],
    [40, 20],
    [40, 24],
    [0, 24],
  ] as const
  const table = rotate(prism(outline, 10), [90, 0, 0])
  await actions.addFiles([fileOf('table.stl', writeStlBinary(table))])
  await actions.settled()
  const { id, pose } = state().frame.parts[0]!
  const { signal } = new AbortController()
  const bare = await actions.tryRecipe(id, { supports: false }, signal, pose)
  const held = await actions.tryRecipe(id, { supports: true }, signal, pose)
  expect(Math.max(...bare!.layers.supportMm2)).toBe(0)
  // The support angle lets the first fraction of a millimetre beside the foot hang.
  expect(Math.abs(Math.max(...held!.layers.supportMm2) / 300 - 1)).toBeLessThan(0.02)
  expect(state().frame.parts[0]!.recipe.supports).toBe(false)
})

test('a trial that was called off gives nothing; one of a lost part is refused', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([fileOf('bar.stl', writeStlBinary(box(40, 10, 4)))])
  await actions.settled()
  const { id } = state().frame.parts[0]!
  const abort = new AbortController()
  abort.abort()
  expect(
    await actions.tryRecipe(id, { supports: false }, abort.signal, { rotateDeg: [90, 0, 0] }),
  ).toBeNull()
  actions.removeParts([id])
  await expect(actions.listPoses(id)).rejects.toThrow('removed')
})
