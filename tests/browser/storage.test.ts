import { deleteDB, openDB } from 'idb'
import { afterEach, describe, expect, test } from 'vitest'
import type { Frame } from '../../src/core/model/frame.ts'
import { createInProcessRunner } from '../../src/jobs/inProcess.ts'
import { createIndexedDbStorage } from '../../src/state/storage/indexedDb.ts'
import { createFolderSpare } from '../../src/state/storage/spare.ts'
import { withSpare } from '../../src/state/storage/spareStorage.ts'
import { boxFile, counting, startSession } from '../support/session.ts'

const DAY_MS = 24 * 3600 * 1000
const SAVE = { meshes: new Map<string, Blob>(), massG: null, basedOn: null, open: true }

/** As it was kept before hours taught, too. */
const OLD_LESSON = {
  id: 'f/p',
  materialId: 'pla',
  printerId: 'ordinary',
  shared: [],
  ratio: 1.05,
  noise: 0.02,
}

let databases = 0
const opened: { name: string; close(): Promise<void> }[] = []

function storageIn(name: string, countedBuild = 'build', now?: () => number) {
  const options = now === undefined ? { countedBuild } : { countedBuild, now }
  const storage = createIndexedDbStorage(name, options)
  opened.push({ name, close: storage.close })
  return storage
}

const freshName = () => `test-${(databases += 1)}-${performance.now()}`

afterEach(async () => {
  const all = opened.splice(0)
  for (const each of all) await each.close()
  for (const name of new Set(all.map((each) => each.name))) await deleteDB(name)
})

const bytesOf = async (blob: Blob | null) => new Uint8Array((await blob?.arrayBuffer()) ?? [])

async function saveTwoParts(name: string) {
  const storage = storageIn(name)
  const session = await startSession({ storage })
  await session.actions.addFiles([boxFile('a.stl', 12, 12, 4), boxFile('b.stl', 14, 12, 4)])
  await session.actions.settled()
  session.actions.close()
  return { ...session, storage }
}

describe('the browser’s database', () => {
  test('gives frame, meshes, pictures and censuses back to the next visit, without an analysis', async () => {
    const name = freshName()
    const first = await saveTwoParts(name)
    await first.storage.close()

    const runner = counting(createInProcessRunner())
    const second = await startSession({ storage: storageIn(name), runner })
    await second.actions.settled()
    expect(second.state().frame).toEqual(first.state().frame)
    expect(second.state().work).toEqual(first.state().work)
    expect(runner.kinds).toEqual([])
    const [part] = second.state().frame.parts
    expect((await second.actions.loadMesh(part?.id ?? '')).indices).toHaveLength(36)
    expect(second.state().storage).toEqual({ kind: 'saved' })
  })

  test('counts anew what another build counted', async () => {
    const name = freshName()
    await saveTwoParts(name)
    const runner = counting(createInProcessRunner())
    const second = await startSession({ storage: storageIn(name, 'newer'), runner })
    await second.actions.settled()
    expect(runner.kinds).toEqual(['analyse', 'analyse'])
  })

  test('keeps the bytes of a mesh, once', async () => {
    const name = freshName()
    const { storage, state } = await saveTwoParts(name)
    const { frame } = state()
    const hash = frame.parts[0]?.meshHash ?? ''
    const kept = await bytesOf(await storage.loadMesh(hash))
    expect(kept).toEqual(await bytesOf(boxFile('a.stl', 12, 12, 4).blob))
    const meshes = new Map([[hash, new Blob(['another'])]])
    await storage.saveFrame({ frame, meshes, massG: null, basedOn: 1, open: true })
    expect(await bytesOf(await storage.loadMesh(hash))).toEqual(kept)
  })

  test('throws out what nothing needs, but only after a day', async () => {
    const name = freshName()
    const { state, actions } = await saveTwoParts(name)
    const { frame } = state()
    const [a = '', b = ''] = frame.parts.map((part) => part.meshHash)
    const other = { ...frame, id: 'other', parts: frame.parts.slice(0, 1) }
    const today = storageIn(name)
    await today.saveFrame({ ...SAVE, frame: other })
    await today.saveFrame({
      ...SAVE,
      frame: { ...other, id: 'blank', name: 'New frame', parts: [] },
    })
    await today.setDeleted(frame.id, Date.now())
    await today.tidy(other)
    expect(await today.loadMesh(b)).not.toBeNull()
    expect(await today.listProjects()).toHaveLength(3)

    const tomorrow = storageIn(name, 'build', () => Date.now() + DAY_MS + 1000)
    await tomorrow.tidy(other)
    expect((await tomorrow.listProjects()).map((each) => each.id)).toEqual(['other'])
    expect(await tomorrow.loadMesh(b)).toBeNull()
    expect(await tomorrow.loadMesh(a)).not.toBeNull()
    actions.close()
  })

  test('keeps a mesh as long as any project needs it, were it even one that cannot be read', async () => {
    const name = freshName()
    const { state } = await saveTwoParts(name)
    const { frame } = state()
    const hashes = frame.parts.map((part) => part.meshHash)
    const later = storageIn(name, 'build', () => Date.now() + 9 * DAY_MS)
    const newer = { version: 9, id: frame.id, name: 'x', parts: frame.parts.slice(1) } as unknown
    await later.saveFrame({ ...SAVE, frame: newer as Frame, basedOn: 1 })
    await later.tidy({ ...frame, id: 'y', parts: [] })
    expect(await later.loadMesh(hashes[0] ?? '')).toBeNull()
    expect(await later.loadMesh(hashes[1] ?? '')).not.toBeNull()
  })

  test('writes neither frame nor meshes when one of them cannot be written', async () => {
    const name = freshName()
    const { storage, state } = await saveTwoParts(name)
    const { frame } = state()
    // Neither a Blob nor anything else that could be stored.
    const bad = (() => undefined) as unknown as Blob
    const meshes = new Map([
      ['1'.repeat(64), new Blob(['sound'])],
      ['2'.repeat(64), bad],
    ])
    const changed = { ...frame, name: 'Changed' }
    await expect(
      storage.saveFrame({ ...SAVE, frame: changed, meshes, basedOn: 1 }),
    ).rejects.toMatchObject({ name: 'DataCloneError' })
    expect(await storage.loadProject(frame.id)).toEqual({ frame, revision: 1 })
    expect(await storage.loadMesh('1'.repeat(64))).toBeNull()
  })

  test('refuses a change made on an older revision, and leaves everything as it was', async () => {
    const { storage, state } = await saveTwoParts(freshName())
    const { frame } = state()
    const save = { ...SAVE, frame: { ...frame, name: 'x' }, meshes: new Map([['f', new Blob()]]) }
    expect(await storage.saveFrame(save)).toBeNull()
    expect(await storage.saveFrame({ ...save, basedOn: 7 })).toBeNull()
    expect(await storage.loadMesh('f')).toBeNull()
    expect(await storage.loadProject(null)).toEqual({ frame, revision: 1 })
    expect(await storage.saveFrame({ ...save, basedOn: 1 })).toBe(2)
    expect((await storage.loadProject(null))?.frame).toMatchObject({ name: 'x' })
  })

  test('of version 1 keeps its frame, its meshes and its censuses', async () => {
    const name = freshName()
    const { state, storage } = await saveTwoParts(`${name}-source`)
    const { frame, work } = state()
    const old = await openDB(name, 1, {
      upgrade(db) {
        db.createObjectStore('frames')
        db.createObjectStore('meshes')
        db.createObjectStore('censuses').createIndex('savedAt', 'savedAt')
        db.createObjectStore('reads').createIndex('savedAt', 'savedAt')
      },
    })
    await old.put('frames', frame, 'current')
    for (const { meshHash } of frame.parts) {
      const blob = await storage.loadMesh(meshHash)
      await old.put('meshes', { blob, savedAt: Date.now() }, meshHash)
    }
    old.close()

    const session = await startSession({ storage: storageIn(name) })
    await session.actions.settled()
    expect(session.state().frame).toEqual(frame)
    expect(session.state().work).toEqual(work)
    expect(session.state().failures).toEqual([])
    session.actions.renameFrame('Later')
    await session.actions.settled()
    await session.actions.listProjects()
    expect(session.state().projects).toMatchObject([{ id: frame.id, name: 'Later', partCount: 2 }])
    expect(session.state().storage).toEqual({ kind: 'saved' })
  })

  test('of version 2 keeps its projects and meshes, and then keeps a workshop', async () => {
    const name = freshName()
    const { state, storage } = await saveTwoParts(`${name}-source`)
    const { frame, work } = state()
    const old = await openDB(name, 2, {
      upgrade(db) {
        for (const store of ['frames', 'meshes', 'projects', 'settings'])
          db.createObjectStore(store)
        for (const store of ['censuses', 'reads']) {
          db.createObjectStore(store).createIndex('savedAt', 'savedAt')
        }
      },
    })
    await old.put('frames', frame, frame.id)
    const summary = { id: frame.id, name: frame.name, partCount: 2, massG: null, changedAt: 1 }
    await old.put('projects', { ...summary, deletedAt: null, revision: 3 }, frame.id)
    await old.put('settings', frame.id, 'current')
    for (const { meshHash } of frame.parts) {
      const blob = await storage.loadMesh(meshHash)
      await old.put('meshes', { blob, savedAt: Date.now() }, meshHash)
    }
    old.close()
    localStorage.setItem('preweigh.lessons', JSON.stringify([OLD_LESSON]))

    const first = await startSession({ storage: storageIn(name) })
    await first.actions.settled()
    expect(first.state().frame).toEqual(frame)
    expect(first.state().work).toEqual(work)
    expect(first.state().workshop).toMatchObject({ printer: null, lessons: [{ id: 'f/p' }] })
    expect(localStorage.getItem('preweigh.lessons')).toBeNull()
    first.actions.putPrinter({ ...frame.printer, id: 'own', wallMmS: 123 })
    await first.actions.settled()
    first.actions.close()

    const second = await startSession({ storage: storageIn(name) })
    second.actions.newFrame()
    expect(second.state().frame.printer).toMatchObject({ id: 'own', wallMmS: 123 })
    expect(second.state().workshop.lessons).toMatchObject([{ id: 'f/p', materialIds: ['pla'] }])
    second.actions.close()
  })

  test('takes changes of the workshop from two tabs, and loses neither', async () => {
    const name = freshName()
    const [first, second] = await Promise.all([
      startSession({ storage: storageIn(name) }),
      startSession({ storage: storageIn(name) }),
    ])
    const { printer, prices } = first.state().frame
    for (let k = 1; k <= 20; k += 1) {
      first.actions.putPrinter({ ...printer, id: 'own', wallMmS: k })
      second.actions.putPrices({ ...prices, wearPerHour: k })
    }
    await Promise.all([first.actions.settled(), second.actions.settled()])
    expect(await storageIn(name).loadWorkshop()).toMatchObject({
      printer: { wallMmS: 20 },
      prices: { wearPerHour: 20 },
    })
    first.actions.close()
    second.actions.close()
  })

  test('of version 1 that holds something else than a frame is opened, and says so', async () => {
    const name = freshName()
    const old = await openDB(name, 1, {
      upgrade(db) {
        for (const store of ['frames', 'meshes', 'censuses', 'reads']) db.createObjectStore(store)
      },
    })
    await old.put('frames', { parts: 'none' }, 'current')
    old.close()
    const { state } = await startSession({ storage: storageIn(name) })
    expect(state().failures).toMatchObject([{ problem: { code: 'bad-project' } }])
    expect(state().storage).toEqual({ kind: 'saved' })
  })

  test('of a newer page is left alone, and the page says why it keeps nothing', async () => {
    const name = freshName()
    ;(await openDB(name, 99)).close()
    const { actions, state } = await startSession({ storage: storageIn(name) })
    actions.renameFrame('x')
    await actions.flush()
    expect(JSON.stringify(state().storage)).toContain('newer version')
  })

  test('keeps no more than the latest censuses', async () => {
    const name = freshName()
    const { state } = await saveTwoParts(name)
    const [work] = Object.values(state().work)
    if (work?.kind !== 'done') throw new Error('a census expected')
    let clock = Date.now()
    const storage = storageIn(name, 'build', () => (clock += 1))
    for (let k = 0; k < 505; k++) await storage.saveCensus(`k${k}`, work.census)
    await storage.tidy(state().frame)
    expect(await storage.loadCensus('k0')).toBeNull()
    expect(await storage.loadCensus('k5')).not.toBeNull()
    expect(await storage.loadCensus('k504')).not.toBeNull()
  })

  test('is opened again after the browser closed it', async () => {
    const name = freshName()
    const { storage, state } = await saveTwoParts(name)
    await storage.close()
    expect((await storage.loadProject(null))?.frame).toEqual(state().frame)
  })

  test('denied by the browser, the page works on and says why', async () => {
    const name = freshName()
    const real = indexedDB.open.bind(indexedDB)
    indexedDB.open = () => {
      throw new DOMException('The operation is insecure.', 'SecurityError')
    }
    try {
      const { actions, state } = await startSession({ storage: storageIn(name) })
      await actions.addFiles([boxFile('a.stl', 12, 12, 4)])
      await actions.settled()
      expect(state().storage).toMatchObject({ kind: 'memory' })
      expect(Object.values(state().work).map((work) => work.kind)).toEqual(['done'])
    } finally {
      indexedDB.open = real
    }
  })
})

describe('the second copy', () => {
  const roots: string[] = []
  const copied: { settled(): Promise<void> }[] = []
  afterEach(async () => {
    // What is still being written cannot be thrown away.
    for (const storage of copied.splice(0)) await storage.settled()
    const top = await navigator.storage.getDirectory()
    for (const name of new Set(roots.splice(0))) await top.removeEntry(name, { recursive: true })
  })

  function spareIn(name: string) {
    roots.push(name)
    return createFolderSpare(async () =>
      (await navigator.storage.getDirectory()).getDirectoryHandle(name, { create: true }),
    )
  }

  function copiedIn(name: string) {
    const storage = withSpare(storageIn(name), spareIn(name))
    copied.push(storage)
    return storage
  }

  async function twoProjects(name: string) {
    const storage = copiedIn(name)
    const session = await startSession({ storage })
    await session.actions.addFiles([boxFile('a.stl', 12, 12, 4)])
    session.actions.renameFrame('One')
    await session.actions.settled()
    session.actions.newFrame()
    await session.actions.addFiles([boxFile('a.stl', 12, 12, 4), boxFile('b.stl', 14, 12, 4)])
    session.actions.renameFrame('Two')
    await session.actions.settled()
    await storage.settled()
    session.actions.close()
    return session
  }

  async function loseDatabase(name: string): Promise<void> {
    for (const each of opened) await each.close()
    await deleteDB(name)
  }

  test('brings every project and mesh back when the browser lost the database, and says so', async () => {
    const name = freshName()
    const first = await twoProjects(name)
    await loseDatabase(name)
    const second = await startSession({ storage: copiedIn(name) })
    expect(second.state().notice?.text).toContain('All 2 frames came back')
    expect(second.state().frame).toEqual(first.state().frame)
    await second.actions.settled()
    expect(second.state().work).toEqual(first.state().work)
    await second.actions.listProjects()
    expect(second.state().projects.map((each) => each.name)).toEqual(['Two', 'One'])
    second.actions.renameFrame('Two, later')
    await second.actions.settled()
    expect(second.state().elsewhere).toBeNull()
    second.actions.close()
  })

  test('brings the workshop back, too', async () => {
    const name = freshName()
    const storage = copiedIn(name)
    const first = await startSession({ storage })
    first.actions.putPrinter({ ...first.state().frame.printer, id: 'own', wallMmS: 123 })
    await first.actions.settled()
    await storage.settled()
    first.actions.close()
    await loseDatabase(name)
    const second = await startSession({ storage: copiedIn(name) })
    expect(second.state().workshop.printer).toMatchObject({ id: 'own', wallMmS: 123 })
    second.actions.putPrices({ ...second.state().frame.prices, wearPerHour: 2 })
    await second.actions.settled()
    expect(await storageIn(name).loadWorkshop()).toMatchObject({
      printer: { wallMmS: 123 },
      prices: { wearPerHour: 2 },
    })
    second.actions.close()
  })

  test('is left alone while the database is there', async () => {
    const name = freshName()
    await twoProjects(name)
    const second = await startSession({ storage: copiedIn(name) })
    expect(second.state().notice).toBeNull()
    second.actions.close()
  })

  test('of a damaged frame or mesh brings back the rest', async () => {
    const name = freshName()
    const { state } = await twoProjects(name)
    const [, lost] = state().frame.parts
    const root = await (await navigator.storage.getDirectory()).getDirectoryHandle(name)
    const places = [
      [await root.getDirectoryHandle('meshes'), lost?.meshHash ?? ''],
      [await root.getDirectoryHandle('frames'), 'torn.json'],
    ] as const
    for (const [where, file] of places) {
      const writing = await (await where.getFileHandle(file, { create: true })).createWritable()
      await writing.write('{"id":"torn')
      await writing.close()
    }
    await loseDatabase(name)
    const second = await startSession({ storage: copiedIn(name) })
    await second.actions.settled()
    expect(Object.values(second.state().work).map((work) => work.kind)).toEqual(['done', 'failed'])
    second.actions.close()
  })

  test('takes in what it does not have yet, and throws out what no project needs', async () => {
    const name = freshName()
    const { state } = await saveTwoParts(name)
    const { frame } = state()
    const [a = '', b = ''] = frame.parts.map((part) => part.meshHash)
    const spare = spareIn(name)
    const storage = withSpare(storageIn(name), spare)
    await storage.tidy(frame)
    expect(await spare.frames()).toEqual([frame])
    expect(await spare.mesh(a)).not.toBeNull()
    expect(await spare.mesh(b)).not.toBeNull()

    const one = { ...frame, parts: frame.parts.slice(0, 1) }
    await storage.saveFrame({ ...SAVE, frame: one, basedOn: 1 })
    await storage.settled()
    await storage.tidy(one)
    expect(await spare.mesh(a)).not.toBeNull()
    expect(await spare.mesh(b)).toBeNull()
  })

  test('that the browser denies changes nothing else', async () => {
    const name = freshName()
    const denied = createFolderSpare(() => Promise.reject(new DOMException('no', 'SecurityError')))
    const storage = withSpare(storageIn(name), denied)
    const { actions, state } = await startSession({ storage })
    await actions.addFiles([boxFile('a.stl', 12, 12, 4)])
    await actions.settled()
    expect(state().storage).toEqual({ kind: 'saved' })
    expect((await storage.loadProject(null))?.frame).toEqual(state().frame)
    actions.close()
  })
})
