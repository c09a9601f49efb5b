import { deleteDB } from 'idb'
import { afterEach, describe, expect, test } from 'vitest'
import { createInProcessRunner } from '../../src/jobs/inProcess.ts'
import { createIndexedDbStorage } from '../../src/state/indexedDb.ts'
import { boxFile, counting, startSession } from '../support/session.ts'

const DAY_MS = 24 * 3600 * 1000

let databases = 0
const opened: { name: string; close(): Promise<void> }[] = []

function storageIn(name: string, factsBuild = 'build', now?: () => number) {
  const options = now === undefined ? { factsBuild } : { factsBuild, now }
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

  test('throws out meshes no frame needs, but only after a day', async () => {
    const name = freshName()
    const { state } = await saveTwoParts(name)
    const { frame } = state()
    const [a, b] = frame.parts.map((part) => part.meshHash)
    const one = { ...frame, parts: frame.parts.slice(0, 1) }

    const today = storageIn(name)
    await today.tidy(one)
    expect(await today.loadMesh(b ?? '')).not.toBeNull()
    const tomorrow = storageIn(name, 'build', () => Date.now() + DAY_MS + 1000)
    await tomorrow.tidy(one)
    expect(await tomorrow.loadMesh(b ?? '')).toBeNull()
    expect(await tomorrow.loadMesh(a ?? '')).not.toBeNull()
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
