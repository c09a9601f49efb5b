import { describe, expect, test } from 'vitest'
import { ZONES_MOST } from '../../../src/core/data/limits.ts'
import { ledgerRows } from '../../../src/state/store/derived.ts'
import { createMemoryStorage } from '../../../src/state/storage/memoryStorage.ts'
import { meshHashesOf } from '../../../src/state/storage/meshHashesOf.ts'
import { box, merge, translate } from '../../support/meshes.ts'
import { boxFile, fileOf, startSession } from '../../support/session.ts'
import { writeStlBinary } from '../../support/writeMesh.ts'

const ARM = boxFile('arm.stl', 60, 14, 8)
/** Around the first third of the arm, which reaches from 0 to 60. */
const ROOT = fileOf('root.stl', writeStlBinary(translate(box(25, 30, 30), [-5, -8, -8])))
const FAR = fileOf('far.stl', writeStlBinary(translate(box(5, 5, 5), [500, 0, 0])))

async function withArm() {
  const session = await startSession()
  await session.actions.addFiles([ARM])
  await session.actions.settled()
  const id = session.state().frame.parts[0]!.id
  const row = () => ledgerRows(session.state())[0]!
  const mass = () => row().figures!.massG.mid
  const census = () => {
    const { work } = row()
    if (work.kind !== 'done') throw new Error(`still ${work.kind}`)
    return work.census
  }
  return { ...session, id, mass, census }
}

describe('a zone', () => {
  test('adds plastic at once by its infill, and undo takes it away', async () => {
    const { actions, state, id, mass, census } = await withArm()
    const bare = mass()
    await actions.addZones(id, [ROOT])
    expect(state().frame.parts[0]?.zones).toMatchObject([{ fileName: 'root.stl', infillPct: 100 }])
    expect(state().undoLabel).toBe('give a zone to “arm”')
    await actions.settled()
    const solid = mass()
    expect(solid).toBeGreaterThan(bare * 1.1)
    // 0 to 20 of 0 to 60, less a wall of 0.8 at each end.
    const { roomMm3, zones } = census()
    const [zone] = zones
    expect(zone!.roomMm3 / (roomMm3 + zone!.roomMm3)).toBeCloseTo(19.2 / 58.4, 2)

    const part = () => state().frame.parts[0]!
    actions.setZonePct(id, part().zones[0]!.meshHash, part().recipe.infillPct)
    expect(state().undoLabel).toBe('change the infill in a zone of “arm”')
    expect(mass()).toBeCloseTo(bare, 1)
    actions.undo()
    expect(mass()).toBe(solid)
    actions.undo()
    await actions.settled()
    expect(state().frame.parts[0]?.zones).toEqual([])
    expect(mass()).toBe(bare)
  })

  test('is turned with the part, and removed by name', async () => {
    const { actions, state, id, mass, census } = await withArm()
    const bare = mass()
    await actions.addZones(id, [ROOT])
    actions.updateParts([id], { pose: { rotateDeg: [0, 90, 0] } })
    await actions.settled()
    const { roomMm3, zones } = census()
    const [zone] = zones
    expect(zone!.roomMm3 / (roomMm3 + zone!.roomMm3)).toBeCloseTo(19.2 / 58.4, 1)
    actions.updateParts([id], { pose: { rotateDeg: [0, 0, 0] } })
    actions.dropZone(id, state().frame.parts[0]!.zones[0]!.meshHash)
    await actions.settled()
    expect(state().undoLabel).toBe('take a zone from “arm”')
    expect(mass()).toBe(bare)
  })

  test('that misses the part leaves its figures alone', async () => {
    const { actions, id, mass, census } = await withArm()
    const bare = mass()
    await actions.addZones(id, [FAR])
    await actions.settled()
    expect(census().zones).toEqual([null])
    expect(mass()).toBeCloseTo(bare, 9)
  })

  test('that is no mesh lands among the failures, and the part stays as it was', async () => {
    const { actions, state, id } = await withArm()
    await actions.addZones(id, [fileOf('notes.txt', 'not a mesh at all')])
    expect(state().failures).toMatchObject([
      { fileName: 'notes.txt', problem: { code: 'unknown-format' } },
    ])
    expect(state().frame.parts[0]?.zones).toEqual([])
  })
})

describe('several zones', () => {
  /** The last third. */
  const TIP = fileOf('tip.stl', writeStlBinary(translate(box(30, 30, 30), [40, -8, -8])))

  test('come in one step, each with its own infill, and go one by one', async () => {
    const { actions, state, id, mass, census } = await withArm()
    const bare = mass()
    await actions.addZones(id, [ROOT, TIP])
    expect(state().undoLabel).toBe('give 2 zones to “arm”')
    await actions.settled()
    // 0 to 20 and 40 to 60 of 0 to 60, less a wall of 0.8 at each end.
    const { roomMm3, zones } = census()
    const whole = roomMm3 + zones[0]!.roomMm3 + zones[1]!.roomMm3
    expect(zones.map((zone) => zone!.roomMm3 / whole)).toEqual([
      expect.closeTo(19.2 / 58.4, 2),
      expect.closeTo(19.2 / 58.4, 2),
    ])
    const both = mass()
    const [, tip] = state().frame.parts[0]!.zones
    actions.setZonePct(id, tip!.meshHash, state().frame.parts[0]!.recipe.infillPct)
    const one = mass()
    // Both ends are alike, so half of what the two add is left.
    expect(one - bare).toBeCloseTo((both - bare) / 2, 1)
    actions.dropZone(id, tip!.meshHash)
    await actions.settled()
    expect(mass()).toBeCloseTo(one, 1)
    expect(state().frame.parts[0]!.zones).toMatchObject([{ fileName: 'root.stl' }])
  })

  test('of two that overlap the lower one holds, whichever that is made', async () => {
    const { actions, state, id, census } = await withArm()
    const wide = fileOf('wide.stl', writeStlBinary(translate(box(45, 30, 30), [-5, -8, -8])))
    await actions.addZones(id, [ROOT, wide])
    await actions.settled()
    expect(census().zones[0]).toBeNull()
    const [root] = state().frame.parts[0]!.zones
    actions.lowerZone(id, root!.meshHash)
    expect(state().undoLabel).toBe('reorder the zones of “arm”')
    await actions.settled()
    expect(state().frame.parts[0]!.zones.map(({ fileName }) => fileName)).toEqual([
      'wide.stl',
      'root.stl',
    ])
    // 20 to 40 and 0 to 20, less the wall at the end.
    const [first, second] = census().zones
    expect(second!.roomMm3 / first!.roomMm3).toBeCloseTo(19.2 / 20, 1)
    const before = state().frame
    actions.lowerZone(id, root!.meshHash)
    expect(state().frame).toBe(before)
  })

  test('one that is there already is refused by name, the others are taken', async () => {
    const { actions, state, id } = await withArm()
    await actions.addZones(id, [ROOT])
    await actions.addZones(id, [ROOT, TIP])
    expect(state().failures).toMatchObject([{ fileName: 'root.stl' }])
    expect(state().failures[0]!.problem.message).toContain('a zone of this part already')
    expect(state().frame.parts[0]!.zones.map(({ fileName }) => fileName)).toEqual([
      'root.stl',
      'tip.stl',
    ])
  })

  test('more than a part may have are refused', async () => {
    const { actions, state, id } = await withArm()
    const blocks = Array.from({ length: ZONES_MOST + 1 }, (_, i) =>
      fileOf(`z${i}.stl`, writeStlBinary(translate(box(1, 30, 30), [2 * i, -8, -8]))),
    )
    await actions.addZones(id, blocks)
    expect(state().frame.parts[0]!.zones).toHaveLength(ZONES_MOST)
    expect(state().failures).toMatchObject([{ fileName: `z${ZONES_MOST}.stl` }])
  })

  test('an infill outside of 0 to 100 is refused and said, as is one that is no number', async () => {
    const { actions, state, id } = await withArm()
    await actions.addZones(id, [ROOT])
    const zone = () => state().frame.parts[0]!.zones[0]!
    for (const wrong of [140, Number.NaN]) {
      actions.dismissNotice()
      actions.setZonePct(id, zone().meshHash, wrong)
      expect(zone().infillPct).toBe(100)
      expect(state().notice?.text).toMatch(/^Nothing was changed: .* is out of range/)
    }
    actions.setZonePct(id, zone().meshHash, 12)
    expect(zone().infillPct).toBe(12)
  })

  test('a copy of the part and the pieces of a plate have them too', async () => {
    const { actions, state } = await startSession()
    await actions.addFiles([
      fileOf(
        'pair.stl',
        writeStlBinary(merge([box(20, 14, 8), translate(box(24, 14, 8), [60, 0, 0])])),
      ),
    ])
    await actions.settled()
    const { id } = state().frame.parts[0]!
    await actions.addZones(id, [ROOT])
    actions.duplicateParts([id])
    const [first, copy] = state().frame.parts
    expect(copy!.zones).toEqual(first!.zones)
    await actions.splitPlate(id)
    await actions.settled()
    const rows = state().frame.parts.slice(0, 2)
    expect(rows.map(({ zones }) => zones)).toEqual([first!.zones, first!.zones])
    // Each lies where it lay on the plate: the zone is in the first and misses the second.
    const rooms = rows.map((part) => {
      const work = state().work[part.id]
      return work?.kind === 'done' ? work.census.zones[0] : undefined
    })
    expect(rooms[0]!.roomMm3).toBeGreaterThan(0)
    expect(rooms[1]).toBeNull()
  })

  test('a weighing holds while the zones are as they were', async () => {
    const { actions, state, id } = await withArm()
    await actions.addZones(id, [ROOT, TIP])
    await actions.settled()
    actions.weighPart(id, { scaleG: 6, pieces: 1, tareG: 0, stepG: 0.1, trusted: true })
    const from = () => ledgerRows(state())[0]!.sum!
    expect(from().massFrom).toBe('weighed')
    actions.setZonePct(id, state().frame.parts[0]!.zones[1]!.meshHash, 40)
    expect(from().changes).toEqual(['zones'])
  })
})

describe('what keeps meshes keeps zones', () => {
  test('a project file brings the zone back with the same figures', async () => {
    const first = await withArm()
    await first.actions.addZones(first.id, [ROOT])
    await first.actions.settled()
    const blob = await first.actions.saveProject()

    const { actions, state } = await startSession()
    await actions.openProject({ name: 'arm.preweigh', blob })
    await actions.settled()
    expect(state().failures).toEqual([])
    expect(state().frame.parts[0]?.zones).toEqual(first.state().frame.parts[0]?.zones)
    expect(ledgerRows(state())[0]?.figures?.massG.mid).toBe(first.mass())
  })

  test('the storage of the next visit has it', async () => {
    const storage = createMemoryStorage()
    const { actions, state } = await startSession({ storage })
    await actions.addFiles([ARM])
    await actions.addZones(state().frame.parts[0]!.id, [ROOT])
    await actions.settled()
    const hashes = [...meshHashesOf(state().frame)]
    expect(hashes).toHaveLength(2)
    for (const hash of hashes) expect(await storage.loadMesh(hash)).not.toBeNull()
  })

  test('a zone that is lost is named, and dropping its file again heals the part', async () => {
    const first = await withArm()
    await first.actions.addZones(first.id, [ROOT])
    await first.actions.settled()
    const lost = first.state().frame.parts[0]!.zones[0]!.meshHash
    const kept = createMemoryStorage()
    const storage = {
      ...kept,
      loadMesh: (hash: string) => (hash === lost ? Promise.resolve(null) : kept.loadMesh(hash)),
    }
    await kept.saveFrame({
      frame: first.state().frame,
      meshes: new Map([[first.state().frame.parts[0]!.meshHash, ARM.blob]]),
      massG: null,
      basedOn: null,
      open: true,
    })
    const { actions, state } = await startSession({ storage })
    await actions.settled()
    const work = () => state().work[first.id]
    expect(work()).toMatchObject({ kind: 'failed', problem: { code: 'missing-mesh' } })
    await actions.addFiles([ROOT])
    await actions.settled()
    expect(work()?.kind).toBe('done')
    expect(state().frame.parts).toHaveLength(1)
  })
})
