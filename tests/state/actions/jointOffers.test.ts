import { expect, test } from 'vitest'
import { MIRROR_X } from '../../../src/core/joints/jointMotion.ts'
import { after, STAY } from '../../../src/core/mesh/rigidMaps.ts'
import { framePlaces } from '../../../src/core/joints/framePlaces.ts'
import { motionOfPlace } from '../../../src/core/mesh/split/drawnPlace.ts'
import { boredPlate, straight } from '../../support/boredPlate.ts'
import { box, rectangle, rotate, translate } from '../../support/meshes.ts'
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
  const { offers, shapes } = (await actions.listJointOffers(signal)) ?? { offers: [], shapes: {} }
  expect(Object.values(shapes).map(({ mouths }) => mouths.length)).toEqual([6, 6])
  expect(offers.length).toBeGreaterThan(0)
  for (const { joint, motion } of offers) {
    const { frame } = state()
    actions.putAircraft({ joints: [{ ...joint, id: 'one' }] }, 'join')
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
  expect((await actions.listJointOffers(new AbortController().signal))?.offers).toEqual([])
  expect(await actions.listJointOffers(AbortSignal.abort())).toBeNull()
})

test('pieces in each other are told by their volume, mirror images too', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([fileOf('one.stl', writeStlBinary(box(20, 30, 5)))])
  const partId = state().frame.parts[0]!.id
  const at = (x: number, side = 1) => ({
    partId,
    motion: after({ ...STAY, move: [x, 0, 0] }, side < 0 ? MIRROR_X : STAY),
  })
  const { signal } = new AbortController()
  const pieces = [at(0), at(15), at(20), at(18, -1)]
  const pairs = [
    [0, 1],
    [0, 2],
    [0, 3],
  ] as const
  const volumes = await actions.findClashes(pieces, pairs, signal)
  // Boxes: 5, 0 and 18 mm of 20 in each other, 30 wide and 5 high.
  expect(volumes?.map(Math.round)).toEqual([750, 0, 2700])
})
