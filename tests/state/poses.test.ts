import { expect, test } from 'vitest'
import { box, rotate } from '../support/meshes.ts'
import { createInProcessRunner } from '../../src/jobs/inProcess.ts'
import { counting, fileOf, startSession } from '../support/session.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

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
  const census = await actions.tryPose(id, options[0]!.pose, signal)
  expect(census!.layers.count).toBe(20)
  expect(state().frame).toBe(before)

  const jobs = runner.kinds.length
  actions.updateParts([id], { pose: options[0]!.pose })
  const work = state().work[id]
  expect(work?.kind === 'done' && work.census === census && work.newerFraction).toBe(null)
  await actions.settled()
  expect(runner.kinds.length).toBe(jobs)
})

test('a trial that was called off gives nothing; one of a lost part is refused', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([fileOf('bar.stl', writeStlBinary(box(40, 10, 4)))])
  await actions.settled()
  const { id } = state().frame.parts[0]!
  const abort = new AbortController()
  abort.abort()
  expect(await actions.tryPose(id, { rotateDeg: [90, 0, 0] }, abort.signal)).toBeNull()
  actions.removeParts([id])
  await expect(actions.listPoses(id)).rejects.toThrow('removed')
})
