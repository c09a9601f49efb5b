import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import type { Frame } from '../../../src/core/model/frame.ts'
import { createMemoryStorage } from '../../../src/state/storage/memoryStorage.ts'
import type { Storage } from '../../../src/state/storage/storage.ts'
import { boxFile, startSession } from '../../support/session.ts'

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
})
afterEach(() => {
  vi.useRealTimers()
})

/** A storage that notes what is written, and fails while told to. */
function watched() {
  const inner = createMemoryStorage()
  const written: { frame: Frame; meshes: number }[] = []
  const control = { failure: null as Error | null }
  const storage: Storage = {
    ...inner,
    saveFrame(save) {
      if (control.failure !== null) return Promise.reject(control.failure)
      written.push({ frame: save.frame, meshes: save.meshes.size })
      return inner.saveFrame(save)
    },
  }
  return { storage, written, control }
}

const quota = () => new DOMException('full', 'QuotaExceededError')
const turn = () => new Promise((go) => setImmediate(go))

describe('saving', () => {
  test('every change is written within a second, also while changes never cease', async () => {
    const { storage, written } = watched()
    const { actions, state } = await startSession({ storage })
    for (let k = 0; k < 20; k++) {
      actions.renameFrame(`name ${k}`)
      expect(state().storage).toEqual({ kind: 'saving' })
      vi.advanceTimersByTime(100)
      await turn()
      if (k % 10 === 9) expect(written.length).toBeGreaterThanOrEqual(k / 10)
    }
    await actions.flush()
    expect(written.at(-1)?.frame.name).toBe('name 19')
    expect(written.length).toBeLessThan(10)
    expect(state().storage).toEqual({ kind: 'saved' })
  })

  test('the frame goes with the meshes it needs', async () => {
    const { storage, written } = watched()
    const { actions } = await startSession({ storage })
    const file = boxFile('a.stl', 5, 5, 1)
    await actions.addFiles([file, file, boxFile('b.stl', 6, 5, 1)])
    await actions.settled()
    expect(written.at(-1)).toMatchObject({ meshes: 2, frame: { parts: [{}, {}, {}] } })
  })

  test('nothing is written before something changed', async () => {
    const { storage, written } = watched()
    const { actions } = await startSession({ storage })
    vi.advanceTimersByTime(5000)
    await actions.flush()
    expect(written).toEqual([])
  })

  test('a full disk is said with its reason, and forgotten once there is room', async () => {
    const { storage, control } = watched()
    const { actions, state } = await startSession({ storage })
    control.failure = quota()
    actions.renameFrame('one')
    await actions.flush()
    expect(state().storage).toMatchObject({ kind: 'memory' })
    expect(JSON.stringify(state().storage)).toContain('no room')
    control.failure = null
    actions.renameFrame('two')
    await actions.flush()
    expect(state().storage).toEqual({ kind: 'saved' })
  })

  test('a change undone before it was written is no change', async () => {
    const { storage, written } = watched()
    const { actions, state } = await startSession({ storage })
    actions.renameFrame('one')
    actions.undo()
    await actions.flush()
    expect(written).toEqual([])
    expect(state().storage).toEqual({ kind: 'saved' })
  })
})

describe('coming back', () => {
  test('the frame, its settings and its figures are there again without an analysis', async () => {
    const { storage } = watched()
    const first = await startSession({ storage })
    await first.actions.addFiles([boxFile('a.stl', 12, 12, 4)])
    first.actions.renameFrame('Mine')
    const [id = ''] = first.state().frame.parts.map((part) => part.id)
    first.actions.updateParts([id], { recipe: { infillPct: 44 }, note: 'left' })
    await first.actions.settled()
    first.actions.close()

    const second = await startSession({ storage })
    await second.actions.settled()
    expect(second.state().frame).toEqual(first.state().frame)
    expect(second.state().work).toEqual(first.state().work)
    expect(second.state().undoLabel).toBeNull()
    expect((await second.actions.loadMesh(id)).indices).toHaveLength(36)
  })

  test('storage that cannot be opened leaves a page that works in memory and says why', async () => {
    const denied = () => Promise.reject(new DOMException('denied', 'SecurityError'))
    const storage = { ...createMemoryStorage(), loadProject: denied, saveFrame: denied }
    const { actions, state } = await startSession({ storage })
    expect(state().storage).toMatchObject({ kind: 'memory' })
    await actions.addFiles([boxFile('a.stl', 12, 12, 4)])
    await actions.settled()
    const [part] = state().frame.parts
    expect(state().work[part?.id ?? '']?.kind).toBe('done')
    expect(JSON.stringify(state().storage)).toContain('private window')
  })

  test('a frame of a newer page is neither opened nor written over', async () => {
    const { storage, written } = watched()
    const kept = { frame: { version: 99, id: 'newer' }, revision: 7 }
    const newer = { ...storage, loadProject: () => Promise.resolve(kept) }
    const { actions, state } = await startSession({ storage: newer })
    expect(state().failures).toMatchObject([{ problem: { code: 'bad-project' } }])
    actions.renameFrame('Other')
    await actions.flush()
    expect(written.map((each) => each.frame.name)).toEqual(['Other'])
    expect(written.map((each) => each.frame.id)).not.toContain('newer')
  })

  test('a part whose mesh is lost says so; dropping the file again brings it back', async () => {
    const { storage } = watched()
    const first = await startSession({ storage })
    const file = boxFile('a.stl', 12, 12, 4)
    await first.actions.addFiles([file])
    await first.actions.settled()
    first.actions.close()

    const gone = () => Promise.resolve(null)
    const forgetful = { ...storage, loadMesh: gone, loadCensus: gone, loadRead: gone }
    const second = await startSession({ storage: forgetful })
    await second.actions.settled()
    const [part] = second.state().frame.parts
    const id = part?.id ?? ''
    expect(second.state().work[id]).toMatchObject({
      kind: 'failed',
      problem: { code: 'missing-mesh' },
    })
    await expect(second.actions.loadMesh(id)).rejects.toThrow('a.stl')
    await second.actions.addFiles([file])
    await second.actions.settled()
    expect(second.state().frame.parts).toHaveLength(1)
    expect(second.state().work[id]?.kind).toBe('done')
  })
})
