import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Frame } from '../../../src/core/model/frame.ts'
import type { JointEnd } from '../../../src/core/model/joints.ts'
import { ledgerRows } from '../../../src/state/store/derived.ts'
import { boredPlate, straight } from '../../support/boredPlate.ts'
import { box, merge, mirror, prism, rectangle, translate } from '../../support/meshes.ts'
import { plainBores, plainJoint, plateEnd } from '../../support/plainJoints.ts'
import { fileOf, startSession } from '../../support/session.ts'
import { meshXml, modelXml, pack3mf, writeStlBinary } from '../../support/writeMesh.ts'

async function sessionWith(name: string, bytes: Uint8Array) {
  const session = await startSession()
  await session.actions.addFiles([fileOf(name, bytes)])
  await session.actions.settled()
  const id = session.state().frame.parts[0]!.id
  const read = () => {
    const work = session.state().work[id]
    return work?.kind === 'done' ? work.read : null
  }
  return { ...session, id, read }
}

const feet = () => sessionWith('feet.stl', new Uint8Array(readFileSync('public/demo/feet.stl')))

describe('splitPlate', () => {
  test('makes one row of three feet, which weighs as one of them did in the file', async () => {
    const { actions, state, id, read } = await feet()
    expect(read()?.plate?.groups).toMatchObject([{ count: 3, mirrored: 0 }])
    const whole = ledgerRows(state())[0]!.figures!.massG.mid
    actions.openPart(id)
    await actions.splitPlate(id)
    await actions.settled()
    const { frame, openPartId, notice } = state()
    expect(frame.parts).toHaveLength(1)
    expect(frame.parts[0]).toMatchObject({
      id,
      name: 'feet',
      quantity: 3,
      fileName: 'feet (1).stl',
    })
    expect(openPartId).toBe(id)
    expect(notice).toEqual({ text: 'Made one row of “feet”.', canUndo: true })
    const one = ledgerRows(state())[0]!.figures!.massG.mid
    expect(Math.abs((3 * one) / whole - 1)).toBeLessThan(0.01)
    expect(read()?.plate).toBeUndefined()

    actions.undo()
    await actions.settled()
    expect(state().frame.parts[0]).toMatchObject({ quantity: 1, fileName: 'feet.stl' })
    expect(read()?.plate?.groups[0]?.count).toBe(3)
  })

  test('makes a row for each kind, with mirrored twins counted and the settings kept', async () => {
    const hand = merge([
      prism(
        [
          [0, 0],
          [30, 0],
          [30, 6],
          [8, 6],
          [8, 18],
          [0, 18],
        ],
        4,
      ),
      translate(box(3, 3, 5), [1, 13, 3]),
    ])
    const plate = merge([
      hand,
      translate(mirror(hand), [80, 0, 0]),
      translate(box(10, 10, 10), [0, 50, 0]),
    ])
    const { actions, state, id } = await sessionWith('plate.stl', writeStlBinary(plate))
    actions.updateParts([id], { quantity: 2, spares: 1, recipe: { infillPct: 45 } })
    await actions.splitPlate(id)
    const rows = state().frame.parts.map(({ name, quantity, spares, mirrored, recipe }) => [
      name,
      quantity,
      spares,
      mirrored,
      recipe.infillPct,
    ])
    expect(rows).toEqual([
      ['plate', 4, 2, 2, 45],
      ['plate (2)', 2, 1, 0, 45],
    ])
    await actions.settled()
  })

  test('the new meshes are saved with the frame and found by the next visit', async () => {
    const { actions, state, storage, id } = await feet()
    await actions.splitPlate(id)
    await actions.settled()
    const hash = state().frame.parts[0]!.meshHash
    expect(await storage.loadMesh(hash)).not.toBeNull()
  })
})

describe('splitPlate of a part that is joined', () => {
  /** A plate of 20 × 20 × 4 at x with one bore in its middle. */
  const plateAt = (x: number, widthMm = 20) =>
    translate(boredPlate(rectangle(widthMm, 20), 4, [straight(widthMm / 2, 10, 1.6, 4, 32)]), [
      x,
      0,
      0,
    ])
  const endAt = (partId: string, xs: readonly number[], side: 1 | -1): JointEnd =>
    plateEnd(partId, plainBores(xs, 10), side)

  test('hands each joint on to the piece that has its holes, and names those it lost', async () => {
    const session = await startSession()
    const { actions, state } = session
    const whole = merge([plateAt(0), plateAt(40, 30)])
    await actions.addFiles([
      fileOf('whole.stl', writeStlBinary(whole)),
      fileOf('cap.stl', writeStlBinary(plateAt(0))),
      fileOf('bar.stl', writeStlBinary(plateAt(0))),
    ])
    await actions.settled()
    const [all, cap, bar] = state().frame.parts.map(({ id }) => id)
    const joints = [
      plainJoint('one', endAt(all!, [55], 1), endAt(cap!, [10], -1)),
      plainJoint('two', endAt(all!, [10, 55], -1), endAt(bar!, [10, 10], 1)),
    ]
    actions.putAircraft({ joints }, 'joints')
    await actions.splitPlate(all!)
    await actions.settled()
    const { frame, notice } = state()
    const wide = frame.parts.find(({ fileName }) => fileName === 'whole (2).stl')
    const narrow = frame.parts.find(({ fileName }) => fileName === 'whole (1).stl')
    expect([narrow, wide].every((each) => each !== undefined)).toBe(true)
    expect(frame.aircraft.joints.map(({ id }) => id)).toEqual(['one'])
    // Whichever of the two came first: the joint went with the hole at 55.
    const owner = frame.parts.find(({ id }) => id === frame.aircraft.joints[0]?.a.partId)
    const work = state().work[owner?.id ?? '']
    const read = work?.kind === 'done' ? work.read : null
    expect(read?.measure.boundsMm.min[0]).toBeCloseTo(40, 3)
    expect(notice?.text).toContain('No piece has all holes of its joint with “bar”: it is lost.')
    actions.undo()
    expect(state().frame.aircraft.joints).toEqual(joints)
  })
})

describe('splitPlate of a 3MF', () => {
  const wedge = prism(
    [
      [0, 0],
      [30, 2],
      [12, 17],
    ],
    9,
  )
  const twoFeet = merge([box(5, 5, 5), translate(box(5, 5, 5), [20, 0, 0])])
  const bytes = pack3mf(
    modelXml(
      `<object id="1" name="arm" type="model">${meshXml(wedge)}</object>` +
        `<object id="2" name="feet" type="model">${meshXml(twoFeet)}</object>`,
      '<item objectid="1"/><item objectid="1" transform="-1 0 0 0 1 0 0 0 1 -4 0 6"/>' +
        '<item objectid="2" transform="0 1 0 -1 0 0 0 0 1 0 50 0"/>',
    ),
  )

  test('makes a row of each kind of build item, named and with its places in the file kept', async () => {
    const { actions, state, storage, id, read } = await sessionWith('frame.3mf', bytes)
    expect(read()?.plate?.groups).toMatchObject([{ count: 2, mirrored: 1 }, { count: 1 }])
    await actions.splitPlate(id)
    await actions.settled()
    const { frame, notice } = state()
    expect(frame.parts.map(({ name, quantity, mirrored }) => [name, quantity, mirrored])).toEqual([
      ['arm', 2, 1],
      ['feet', 1, 0],
    ])
    expect(frame.parts[0]?.drawnPlaces).toEqual([
      { position: [0, 0, 0], rotateDeg: [0, 0, 0], mirrored: false },
      { position: [-4, 0, 6], rotateDeg: [0, 0, 0], mirrored: true },
    ])
    // Nothing is placed by itself.
    expect(frame.aircraft.places).toEqual([])
    expect(notice?.text).toContain('under Balance')
    const stored = (await storage.loadProject(frame.id))!.frame as Frame
    expect(stored.parts[0]?.drawnPlaces).toEqual(frame.parts[0]?.drawnPlaces)
  })

  test('a row split again, by its bodies, keeps the place of what it was part of', async () => {
    const { actions, state, id } = await sessionWith('frame.3mf', bytes)
    await actions.splitPlate(id)
    await actions.settled()
    await actions.splitPlate(state().frame.parts[1]!.id)
    await actions.settled()
    expect(state().frame.parts[1]).toMatchObject({
      quantity: 2,
      drawnPlaces: [{ position: [0, 0, 0], rotateDeg: [0, 0, 0], mirrored: false }],
    })
    expect(state().notice?.text).toContain('under Balance')
  })

  test('other files say nothing of places', async () => {
    const { actions, state, id } = await feet()
    await actions.splitPlate(id)
    expect(state().frame.parts[0]).not.toHaveProperty('drawnPlaces')
    await actions.settled()
  })
})

describe('dropSpecks', () => {
  test('takes a stray speck out of the part’s size; undo brings the file back', async () => {
    const dirty = merge([box(20, 20, 20), translate(box(0.8, 0.8, 0.8), [80, 0, 0])])
    const { actions, state, id, read } = await sessionWith('cube.stl', writeStlBinary(dirty))
    expect(read()?.measure.boundsMm.max[0]).toBeGreaterThan(80)
    await actions.dropSpecks(id)
    await actions.settled()
    expect(state().frame.parts[0]).toMatchObject({ id, name: 'cube (cleaned)' })
    expect(read()?.measure.boundsMm.max[0]).toBe(20)
    expect(read()?.measure.findings).toEqual([])
    actions.undo()
    expect(state().frame.parts[0]).toMatchObject({ name: 'cube', fileName: 'cube.stl' })
    await actions.settled()
  })

  test('a part that is gone meanwhile changes nothing and says nothing wrong', async () => {
    const { actions, state, id } = await sessionWith('cube.stl', writeStlBinary(box(9, 9, 9)))
    const running = actions.dropSpecks(id)
    actions.removeParts([id])
    await running
    expect(state().frame.parts).toEqual([])
    await actions.settled()
  })
})

test('names that climb, turn the writing round or never end become plain ones', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([
    fileOf('../../etc/arm\u202Elts.stl', writeStlBinary(box(1, 2, 3))),
    fileOf(`${'long'.repeat(500)}.stl`, writeStlBinary(box(2, 2, 3))),
    fileOf('a\u0000b\n.stl', writeStlBinary(box(2, 2, 4))),
  ])
  const [climbing, long, control] = state().frame.parts
  expect(climbing!.name).toBe('armlts')
  expect(long!.fileName.length).toBeLessThanOrEqual(200)
  expect(long!.fileName.endsWith('.stl')).toBe(true)
  expect(control!.name).toBe('ab')
  await actions.settled()
})

test('parts of one drop whose files state no unit are known as such', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([
    fileOf('a.stl', writeStlBinary(box(1, 2, 3))),
    fileOf('b.stl', writeStlBinary(box(2, 2, 3))),
  ])
  await actions.addFiles([fileOf('c.stl', writeStlBinary(box(3, 2, 3)))])
  const [a, b, c] = state().frame.parts.map((part) => state().dropOf[part.id])
  expect(a).toBeDefined()
  expect(b).toBe(a)
  expect(c).not.toBe(a)
  await actions.settled()
})
