import { describe, expect, test } from 'vitest'
import { ledgerRows } from '../../../src/state/store/derived.ts'
import { createMemoryStorage } from '../../../src/state/storage/memoryStorage.ts'
import { meshHashesOf } from '../../../src/state/storage/meshHashesOf.ts'
import { box, translate } from '../../support/meshes.ts'
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
    await actions.setZone(id, ROOT)
    expect(state().frame.parts[0]?.zone?.fileName).toBe('root.stl')
    expect(state().undoLabel).toBe('give a zone to “arm”')
    await actions.settled()
    const solid = mass()
    expect(solid).toBeGreaterThan(bare * 1.1)
    // 0 to 20 of 0 to 60, less a wall of 0.8 at each end.
    const { roomMm3, zone } = census()
    expect(zone!.roomMm3 / (roomMm3 + zone!.roomMm3)).toBeCloseTo(19.2 / 58.4, 2)

    actions.updateParts([id], { recipe: { zonePct: state().frame.parts[0]!.recipe.infillPct } })
    expect(mass()).toBeCloseTo(bare, 1)
    actions.undo()
    expect(mass()).toBe(solid)
    actions.undo()
    await actions.settled()
    expect(state().frame.parts[0]?.zone).toBeNull()
    expect(mass()).toBe(bare)
  })

  test('is turned with the part, and removed by name', async () => {
    const { actions, state, id, mass, census } = await withArm()
    const bare = mass()
    await actions.setZone(id, ROOT)
    actions.updateParts([id], { pose: { rotateDeg: [0, 90, 0] } })
    await actions.settled()
    const { roomMm3, zone } = census()
    expect(zone!.roomMm3 / (roomMm3 + zone!.roomMm3)).toBeCloseTo(19.2 / 58.4, 1)
    actions.updateParts([id], { pose: { rotateDeg: [0, 0, 0] } })
    await actions.setZone(id, null)
    await actions.settled()
    expect(state().undoLabel).toBe('remove the zone of “arm”')
    expect(mass()).toBe(bare)
  })

  test('that misses the part leaves its figures alone', async () => {
    const { actions, id, mass, census } = await withArm()
    const bare = mass()
    await actions.setZone(id, FAR)
    await actions.settled()
    expect(census().zone).toBeNull()
    expect(mass()).toBeCloseTo(bare, 9)
  })

  test('that is no mesh lands among the failures, and the part stays as it was', async () => {
    const { actions, state, id } = await withArm()
    await actions.setZone(id, fileOf('notes.txt', 'not a mesh at all'))
    expect(state().failures).toMatchObject([
      { fileName: 'notes.txt', problem: { code: 'unknown-format' } },
    ])
    expect(state().frame.parts[0]?.zone).toBeNull()
  })
})

describe('what keeps meshes keeps zones', () => {
  test('a project file brings the zone back with the same figures', async () => {
    const first = await withArm()
    await first.actions.setZone(first.id, ROOT)
    await first.actions.settled()
    const blob = await first.actions.saveProject()

    const { actions, state } = await startSession()
    await actions.openProject({ name: 'arm.preweigh', blob })
    await actions.settled()
    expect(state().failures).toEqual([])
    expect(state().frame.parts[0]?.zone).toEqual(first.state().frame.parts[0]?.zone)
    expect(ledgerRows(state())[0]?.figures?.massG.mid).toBe(first.mass())
  })

  test('the storage of the next visit has it', async () => {
    const storage = createMemoryStorage()
    const { actions, state } = await startSession({ storage })
    await actions.addFiles([ARM])
    await actions.setZone(state().frame.parts[0]!.id, ROOT)
    await actions.settled()
    const hashes = [...meshHashesOf(state().frame)]
    expect(hashes).toHaveLength(2)
    for (const hash of hashes) expect(await storage.loadMesh(hash)).not.toBeNull()
  })

  test('a zone that is lost is named, and dropping its file again heals the part', async () => {
    const first = await withArm()
    await first.actions.setZone(first.id, ROOT)
    await first.actions.settled()
    const lost = first.state().frame.parts[0]!.zone!.meshHash
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
