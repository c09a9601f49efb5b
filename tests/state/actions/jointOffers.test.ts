import { expect, test } from 'vitest'
import { framePlaces } from '../../../src/core/joints/framePlaces.ts'
import { motionOfPlace } from '../../../src/core/mesh/split/drawnPlace.ts'
import { boredPlate, straight } from '../../support/boredPlate.ts'
import { rectangle, rotate, translate } from '../../support/meshes.ts'
import { fileOf, startSession } from '../../support/session.ts'
import { writeStlBinary } from '../../support/writeMesh.ts'

/** Three holes that no turn and no mirror brings back upon themselves. */
const HOLES = [
  [8, 8],
  [34, 10],
  [12, 22],
] as const

const plate = (heightMm: number) =>
  boredPlate(
    rectangle(45, 30),
    heightMm,
    HOLES.map(([x, y]) => straight(x, y, 1.6, heightMm, 32)),
  )

test('a way that is taken puts the piece where it was offered, and undo takes it back', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([
    fileOf('low.stl', writeStlBinary(plate(4))),
    fileOf('high.stl', writeStlBinary(translate(rotate(plate(3), [0, 0, 90]), [70, 5, 40]))),
  ])
  const { signal } = new AbortController()
  const offers = (await actions.listJointOffers(signal)) ?? []
  expect(offers.length).toBeGreaterThan(0)
  for (const { joint, motion } of offers) {
    const { frame } = state()
    actions.addJoint(joint)
    const [low, high] = framePlaces(state().frame.parts, state().frame.aircraft).places
    expect(low?.positionMm).toEqual([0, 0, 0])
    const { matrix, move } = motionOfPlace(high!)
    matrix.forEach((value, i) => expect(value).toBeCloseTo(motion.matrix[i]!, 5))
    move.forEach((value, i) => expect(value).toBeCloseTo(motion.move[i]!, 3))
    actions.undo()
    expect(state().frame).toBe(frame)
  }
})

test('nothing is offered where nothing meets, and null once it was called off', async () => {
  const { actions } = await startSession()
  await actions.addFiles([fileOf('one.stl', writeStlBinary(plate(4)))])
  expect(await actions.listJointOffers(new AbortController().signal)).toEqual([])
  expect(await actions.listJointOffers(AbortSignal.abort())).toBeNull()
})
