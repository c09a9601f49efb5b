import { beforeEach, describe, expect, test } from 'vitest'
import { createMemoryStorage } from '../../../src/state/storage/memoryStorage.ts'
import { createSoleClaims, type Claims } from '../../../src/state/storage/claims.ts'
import type { Storage } from '../../../src/state/storage/storage.ts'
import { boxFile, startSession } from '../../support/session.ts'

type Started = Awaited<ReturnType<typeof startSession>>

let storage: Storage
let session: Started
beforeEach(async () => {
  storage = createMemoryStorage()
  session = await startSession({ storage })
})

const names = ({ state }: Started) =>
  state().projects.flatMap((each) => (each.deletedAt === null ? [each.name] : []))
const idOf = ({ state }: Started, name: string) =>
  state().projects.find((each) => each.name === name)?.id ?? expect.fail(`no ${name}`)

/** Two projects, `One` with a part and `Two` with another; `Two` is the present one. */
async function makeTwo({ actions }: Started): Promise<void> {
  await actions.addFiles([boxFile('a.stl', 12, 12, 4)])
  actions.renameFrame('One')
  await actions.settled()
  actions.newFrame()
  await actions.addFiles([boxFile('b.stl', 14, 12, 4)])
  actions.renameFrame('Two')
  await actions.settled()
  await actions.listProjects()
}

describe('several projects', () => {
  test('are listed with their parts and grams, and opened again as they were', async () => {
    const { actions, state } = session
    await makeTwo(session)
    const two = state().frame
    expect(new Set(names(session))).toEqual(new Set(['One', 'Two']))
    for (const each of state().projects) {
      expect(each.partCount).toBe(1)
      expect(each.massG).toBeGreaterThan(0)
    }
    await actions.openStored(idOf(session, 'One'))
    await actions.settled()
    expect(state().frame).toMatchObject({ name: 'One', parts: [{ name: 'a' }] })
    expect(Object.values(state().work).map((work) => work.kind)).toEqual(['done'])
    actions.undo()
    expect(state().frame).toEqual(two)
  })

  test('that is shown is the one the next visit opens with, also after undo led to it', async () => {
    const { actions, state } = session
    await makeTwo(session)
    await actions.openStored(idOf(session, 'One'))
    await actions.settled()
    expect((await startSession({ storage })).state().frame.name).toBe('One')
    actions.undo()
    await actions.settled()
    expect(state().frame.name).toBe('Two')
    expect((await startSession({ storage })).state().frame.name).toBe('Two')
    const id = idOf(session, 'One')
    const preferring = await startSession({ storage, preferredProject: id })
    expect(preferring.state().frame.name).toBe('One')
  })

  test('opening one changes nothing in it, not even the time of its last change', async () => {
    const { actions, state } = session
    await makeTwo(session)
    const before = state().projects
    await actions.openStored(idOf(session, 'One'))
    await actions.settled()
    await actions.listProjects()
    expect(state().projects).toEqual(before)
  })

  test('the last change of one is written even when another is opened at once', async () => {
    const { actions, state } = session
    await makeTwo(session)
    actions.renameFrame('Two, changed')
    actions.newFrame()
    await actions.settled()
    await actions.listProjects()
    expect(new Set(names(session))).toEqual(new Set(['One', 'Two, changed', 'New frame']))
    expect(state().projects.find((each) => each.id === state().frame.id)?.name).toBe('New frame')
  })

  test('an empty frame nobody named is listed only while it is shown', async () => {
    const { actions } = session
    await makeTwo(session)
    actions.newFrame()
    await actions.listProjects()
    expect(names(session)).toContain('New frame')
    await actions.openStored(idOf(session, 'One'))
    expect(names(session)).not.toContain('New frame')
  })

  test('a renamed one keeps its name when undo leads back to it', async () => {
    const { actions, state } = session
    await makeTwo(session)
    await actions.renameProject(idOf(session, 'One'), '  First ')
    expect(new Set(names(session))).toEqual(new Set(['First', 'Two']))
    // Back before “Two” was begun.
    while (state().frame.name !== 'First' && state().undoLabel !== null) actions.undo()
    expect(state().frame).toMatchObject({ name: 'First', parts: [{ name: 'a' }] })
    actions.updateParts([state().frame.parts[0]?.id ?? ''], { quantity: 3 })
    await actions.settled()
    expect(state().elsewhere).toBeNull()
    const again = await startSession({ storage, preferredProject: state().frame.id })
    expect(again.state().frame).toMatchObject({ name: 'First', parts: [{ quantity: 3 }] })
  })

  test('the present one is renamed as by hand, with undo', async () => {
    const { actions, state } = session
    await makeTwo(session)
    await actions.renameProject(state().frame.id, 'Second')
    expect(names(session)).toContain('Second')
    actions.undo()
    expect(state().frame.name).toBe('Two')
  })

  test('a copy has its own life and shares the meshes', async () => {
    const { actions, state } = session
    await makeTwo(session)
    await actions.duplicateProject(idOf(session, 'One'))
    expect(new Set(names(session))).toEqual(new Set(['One', 'Two', 'One (2)']))
    await actions.openStored(idOf(session, 'One (2)'))
    actions.updateParts([state().frame.parts[0]?.id ?? ''], { quantity: 9 })
    await actions.settled()
    const one = await startSession({ storage, preferredProject: idOf(session, 'One') })
    expect(one.state().frame.parts[0]?.quantity).toBe(1)
    const mesh = await one.actions.loadMesh(one.state().frame.parts[0]?.id ?? '')
    expect(mesh.indices).toHaveLength(36)
  })

  test('a deleted one can be brought back with all it held', async () => {
    const { actions, state } = session
    await makeTwo(session)
    const id = idOf(session, 'One')
    await actions.deleteProject(id)
    expect(names(session)).toEqual(['Two'])
    expect(state().frame.name).toBe('Two')
    await actions.bringBackProject(id)
    expect(new Set(names(session))).toEqual(new Set(['One', 'Two']))
    await actions.openStored(id)
    expect(state().frame).toMatchObject({ name: 'One', parts: [{ name: 'a' }] })
  })

  test('when the present one is deleted, another takes its place; undo brings it back', async () => {
    const { actions, state } = session
    await makeTwo(session)
    await actions.deleteProject(state().frame.id)
    expect(state().frame.name).toBe('One')
    expect((await startSession({ storage })).state().frame.name).toBe('One')
    actions.undo()
    await actions.settled()
    await actions.listProjects()
    expect(state().frame.name).toBe('Two')
    expect(new Set(names(session))).toEqual(new Set(['One', 'Two']))
  })

  test('when the last one is deleted, an empty frame takes its place', async () => {
    const { actions, state } = session
    await actions.addFiles([boxFile('a.stl', 12, 12, 4)])
    await actions.settled()
    await actions.deleteProject(state().frame.id)
    expect(state().frame.parts).toEqual([])
    expect(names(session)).toEqual(['New frame'])
  })

  test('a project file of one that is here becomes a project of its own', async () => {
    const { actions, state } = session
    await makeTwo(session)
    const blob = await actions.saveProject()
    actions.renameFrame('Two, later')
    await actions.openProject({ name: 'two.preweigh', blob })
    await actions.settled()
    expect(state().frame.name).toBe('Two')
    await actions.listProjects()
    expect(new Set(names(session))).toEqual(new Set(['One', 'Two', 'Two, later']))
  })

  test('storage that fails is said, and the page goes on', async () => {
    const failing = { ...storage, listProjects: () => Promise.reject(new Error('gone')) }
    const { actions, state } = await startSession({ storage: failing })
    await actions.listProjects()
    expect(state().notice?.text).toContain('gone')
    await actions.addFiles([boxFile('a.stl', 12, 12, 4)])
    expect(state().frame.parts).toHaveLength(1)
  })
})

describe('two tabs without word of each other', () => {
  test('neither writes over the other: the later one is told and can keep its own as a copy', async () => {
    await makeTwo(session)
    const { id } = session.state().frame
    const other = await startSession({
      storage,
      preferredProject: id,
      newId: () => `other-${crypto.randomUUID()}`,
    })
    other.actions.renameFrame('Theirs')
    await other.actions.settled()
    session.actions.renameFrame('Mine')
    await session.actions.settled()
    expect(session.state().elsewhere).toEqual({ projectId: id, why: 'changed' })
    expect((await startSession({ storage })).state().frame.name).toBe('Theirs')

    session.actions.renameFrame('Mine again')
    expect(session.state().frame.name).toBe('Mine')
    expect(session.state().notice?.text).toContain('Nothing was changed')

    session.actions.openCopy()
    await session.actions.settled()
    await session.actions.listProjects()
    expect(session.state().frame.id).not.toBe(id)
    expect(new Set(names(session))).toEqual(new Set(['One', 'Theirs', 'Mine (2)']))
  })

  test('taking over shows what is stored and goes on from there', async () => {
    await makeTwo(session)
    const { id } = session.state().frame
    const other = await startSession({ storage, preferredProject: id })
    other.actions.renameFrame('Theirs')
    await other.actions.settled()
    session.actions.renameFrame('Mine')
    await session.actions.settled()
    await session.actions.takeOver()
    expect(session.state().frame.name).toBe('Theirs')
    expect(session.state().elsewhere).toBeNull()
    session.actions.renameFrame('Ours')
    await session.actions.settled()
    expect((await startSession({ storage })).state().frame.name).toBe('Ours')
    expect(session.state().elsewhere).toBeNull()
  })
})

describe('a project another tab has', () => {
  const busy = (id: string): Claims => ({
    ...createSoleClaims(),
    hold: (wanted) => Promise.resolve(wanted !== id),
    isElsewhere: (wanted) => Promise.resolve(wanted === id),
  })

  test('is shown, said, and not changed', async () => {
    await makeTwo(session)
    const { id } = session.state().frame
    const { actions, state } = await startSession({ storage, claims: busy(id) })
    expect(state().elsewhere).toEqual({ projectId: id, why: 'open' })
    expect(state().frame.name).toBe('Two')
    await actions.addFiles([boxFile('c.stl', 5, 5, 5)])
    actions.removeParts(state().frame.parts.map((part) => part.id))
    await actions.settled()
    expect(state().frame.parts.map((part) => part.name)).toEqual(['b'])
    actions.newFrame()
    await actions.addFiles([boxFile('c.stl', 5, 5, 5)])
    await actions.settled()
    expect(state().frame.parts.map((part) => part.name)).toEqual(['c'])
    expect(state().storage).toEqual({ kind: 'saved' })
  })

  test('is neither renamed nor deleted from the list', async () => {
    await makeTwo(session)
    const id = idOf(session, 'One')
    const { actions, state } = await startSession({ storage, claims: busy(id) })
    await actions.listProjects()
    await actions.deleteProject(id)
    expect(state().notice?.text).toContain('“One” is open in another tab')
    await actions.renameProject(id, 'Other')
    expect(state().projects.find((each) => each.id === id)).toMatchObject({
      name: 'One',
      deletedAt: null,
    })
  })
})
