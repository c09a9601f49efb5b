import { strToU8, zipSync } from 'fflate'
import { describe, expect, test } from 'vitest'
import { createInProcessRunner } from '../../../src/jobs/inProcess.ts'
import { createMemoryStorage } from '../../../src/state/storage/memoryStorage.ts'
import type { Storage } from '../../../src/state/storage/storage.ts'
import { frameSummary, ledgerRows } from '../../../src/state/store/derived.ts'
import { box } from '../../support/meshes.ts'
import {
  beginSession,
  boxFile,
  counting,
  fileOf,
  holding,
  startSession,
} from '../../support/session.ts'
import { write3mf, writeStlBinary } from '../../support/writeMesh.ts'

describe('dropped files', () => {
  test('become parts in the order they were dropped, named after their files', async () => {
    const { actions, state } = await startSession()
    await actions.addFiles([
      boxFile('front_arm-left.stl', 20, 10, 4),
      boxFile('Plate.STL', 30, 30, 2),
      fileOf('hub.3mf', write3mf(box(1, 1, 1), 'inch')),
    ])
    const { parts } = state().frame
    expect(parts.map((part) => [part.name, part.fileName, part.unit])).toEqual([
      ['front arm left', 'front_arm-left.stl', 'millimetre'],
      ['Plate', 'Plate.STL', 'millimetre'],
      ['hub', 'hub.3mf', 'inch'],
    ])
    await actions.settled()
    expect(ledgerRows(state()).map((row) => row.basis)).toEqual(['census', 'census', 'census'])
  })

  test('keep their order when a later one is ready first', async () => {
    const inner = createInProcessRunner()
    const gates = new Map<string, () => void>()
    const { actions, state } = await startSession({
      runner: {
        async run(ask, options) {
          if ('name' in ask) {
            await new Promise<void>((go) => {
              gates.set(ask.name, go)
            })
          }
          return inner.run(ask, options)
        },
        close: () => inner.close(),
      },
    })
    const dropped = actions.addFiles([
      boxFile('a.stl', 5, 5, 2),
      boxFile('b.stl', 6, 5, 2),
      boxFile('c.stl', 7, 5, 2),
    ])
    const until = async (count: number) => {
      while (state().frame.parts.length < count) await new Promise((go) => setImmediate(go))
    }
    await until(0)
    while (gates.size < 3) await new Promise((go) => setImmediate(go))
    expect(state().incoming.map((each) => each.name)).toEqual(['a.stl', 'b.stl', 'c.stl'])
    gates.get('c.stl')?.()
    await until(1)
    gates.get('a.stl')?.()
    await until(2)
    gates.get('b.stl')?.()
    await dropped
    expect(state().frame.parts.map((part) => part.name)).toEqual(['a', 'b', 'c'])
    expect(state().incoming).toEqual([])
    actions.undo()
    expect(state().frame.parts).toEqual([])
  })

  test('have rough figures before any layer is counted', async () => {
    const { runner, waiting } = holding(createInProcessRunner())
    const { actions, state } = await startSession({ runner })
    await actions.addFiles([boxFile('a.stl', 20, 20, 4), boxFile('b.stl', 30, 20, 4)])
    expect(ledgerRows(state()).map((row) => row.basis)).toEqual(['rough', 'rough'])
    const rough = frameSummary(state())
    expect(rough.roughCount).toBe(2)
    expect(rough.sum.printed.massG.mid).toBeGreaterThan(0)
    while (waiting.length < 2) await new Promise((go) => setImmediate(go))
    for (const each of waiting) each.go()
    await actions.settled()
    expect(frameSummary(state()).censusCount).toBe(2)
  })

  test('a broken one becomes a failure that names it, and the others go on', async () => {
    const { actions, state } = await startSession()
    await actions.addFiles([
      boxFile('good.stl', 10, 10, 2),
      fileOf('broken.stl', writeStlBinary(box(1, 1, 1)).slice(0, 90)),
      fileOf('letter.txt', 'dear builder'),
    ])
    expect(state().frame.parts.map((part) => part.name)).toEqual(['good'])
    expect(state().failures.map((each) => [each.fileName, each.problem.code])).toEqual([
      ['broken.stl', 'truncated'],
      ['letter.txt', 'unknown-format'],
    ])
    const [first] = state().failures
    actions.dismissFailure(first?.id ?? '')
    expect(state().failures.map((each) => each.fileName)).toEqual(['letter.txt'])
  })

  test('a ZIP gives a part for each mesh in it', async () => {
    const { actions, state } = await startSession()
    const zip = zipSync({
      'frame/arm.stl': writeStlBinary(box(10, 5, 2)),
      'frame/bad.stl': strToU8('solid nothing'),
      'frame/deck.stl': writeStlBinary(box(12, 5, 2)),
    })
    await actions.addFiles([fileOf('frame.zip', zip)])
    expect(state().frame.parts.map((part) => part.name)).toEqual(['arm', 'deck'])
    expect(state().failures.map((each) => each.fileName)).toEqual(['frame/bad.stl'])
  })

  test('the same file twice is two parts with one mesh and one census', async () => {
    const runner = counting(createInProcessRunner())
    const { actions, state } = await startSession({ runner })
    const file = boxFile('arm.stl', 10, 10, 4)
    await actions.addFiles([file, file])
    await actions.settled()
    const [a, b] = state().frame.parts
    expect([a?.name, b?.name]).toEqual(['arm', 'arm (2)'])
    expect(a?.meshHash).toBe(b?.meshHash)
    expect(a?.id).not.toBe(b?.id)
    expect(runner.kinds.filter((kind) => kind === 'analyse')).toHaveLength(1)
    expect(ledgerRows(state()).every((row) => row.basis === 'census')).toBe(true)
  })

  test('a project file among meshes is refused with words, and the meshes are added', async () => {
    const { actions, state } = await startSession()
    const project = fileOf('old.preweigh', zipSync({ 'project.json': strToU8('{}') }))
    await actions.addFiles([project, boxFile('a.stl', 10, 10, 2)])
    expect(state().frame.parts.map((part) => part.name)).toEqual(['a'])
    expect(state().failures).toMatchObject([
      { fileName: 'old.preweigh', problem: { code: 'bad-project' } },
    ])
  })

  test('stop being read when told so: nothing is said of them, and the others go on', async () => {
    const inner = createInProcessRunner()
    const ended: string[] = []
    const { actions, state } = await startSession({
      runner: {
        async run(ask, options) {
          // As a file too large to be done soon: only its end ends it.
          if ('name' in ask && ask.name === 'huge.stl') {
            await new Promise<void>((stop) => {
              options?.signal?.addEventListener('abort', () => stop())
            })
            ended.push(ask.name)
          }
          return inner.run(ask, options)
        },
        close: () => inner.close(),
      },
    })
    const huge = boxFile('huge.stl', 5, 5, 2)
    const dropped = actions.addFiles([boxFile('a.stl', 6, 5, 2), huge, boxFile('b.stl', 7, 5, 2)])
    while (state().frame.parts.length < 2) await new Promise((go) => setImmediate(go))
    const [left] = state().incoming
    expect(state().incoming).toMatchObject([{ name: 'huge.stl' }])
    actions.cancelOpening([left?.id ?? ''])
    await dropped
    await actions.settled()
    expect(ended).toEqual(['huge.stl'])
    expect(state().incoming).toEqual([])
    expect(state().failures).toEqual([])
    expect(state().frame.parts.map((part) => part.name)).toEqual(['a', 'b'])
    expect(ledgerRows(state()).map((row) => row.basis)).toEqual(['census', 'census'])
  })
})

/** A storage of which some calls wait until it is let go. */
function slow(calls: ReadonlySet<string>) {
  let letGo = () => {}
  const free = new Promise<void>((resolve) => {
    letGo = resolve
  })
  const storage = new Proxy(createMemoryStorage(), {
    get(inner, call: keyof Storage) {
      const method = inner[call].bind(inner) as (...args: readonly unknown[]) => Promise<unknown>
      if (!calls.has(call)) return method
      return async (...args: readonly unknown[]) => {
        await free
        return method(...args)
      }
    },
  })
  return { storage, letGo: () => letGo() }
}

describe('a file dropped while storage is busy', () => {
  test('stands among those being opened while the last visit’s frame is still fetched', async () => {
    const { storage, letGo } = slow(new Set(['loadWorkshop', 'loadProject']))
    const { actions, state } = beginSession({ storage })
    const restored = actions.restore()
    const added = actions.addFiles([boxFile('bar.stl', 20, 8, 6), boxFile('rod.stl', 30, 4, 4)])
    expect(state().incoming.map(({ name }) => name)).toEqual(['bar.stl', 'rod.stl'])
    // What is called off meanwhile goes at once.
    actions.cancelOpening(
      state()
        .incoming.slice(1)
        .map(({ id }) => id),
    )
    await Promise.resolve()
    letGo()
    await Promise.all([restored, added])
    expect(state().incoming).toEqual([])
    expect(state().frame.parts.map(({ name }) => name)).toEqual(['bar'])
    actions.close()
  })

  test('stands there too when it is a project that was chosen', async () => {
    const blob = await (await startSession()).actions.saveProject()
    const { storage, letGo } = slow(new Set(['loadWorkshop', 'loadProject']))
    const { actions, state } = beginSession({ storage })
    const restored = actions.restore()
    const opened = actions.openProject({ name: 'last.preweigh', blob })
    const calledOff = actions.openProject({ name: 'other.preweigh', blob })
    expect(state().incoming.map(({ name }) => name)).toEqual(['last.preweigh', 'other.preweigh'])
    actions.cancelOpening(
      state().incoming.flatMap(({ id, name }) => (name.startsWith('o') ? id : [])),
    )
    await calledOff
    expect(state().incoming.map(({ name }) => name)).toEqual(['last.preweigh'])
    letGo()
    await Promise.all([restored, opened])
    expect(state().incoming).toEqual([])
    expect(state().notice?.text).toMatch(/^Opened/)
    actions.close()
  })

  test('is a part, waiting to be counted, while storage is tidied', async () => {
    // The database’s other calls queue behind its tidying.
    const { storage, letGo } = slow(
      new Set([
        'tidy',
        'loadRead',
        'loadCensus',
        'saveRead',
        'saveCensus',
        'saveFrame',
        'loadMesh',
      ]),
    )
    const { actions, state } = await startSession({ storage })
    await actions.addFiles([boxFile('bar.stl', 20, 8, 6)])
    const [part] = state().frame.parts
    expect([part?.name, state().incoming]).toEqual(['bar', []])
    expect(state().work[part?.id ?? '']).toMatchObject({ kind: 'rough', fraction: 0 })
    expect(state().storage).toEqual({ kind: 'saving' })
    letGo()
    await actions.settled()
    expect(state().work[part?.id ?? '']?.kind).toBe('done')
    expect(state().storage).toEqual({ kind: 'saved' })
    actions.close()
  })
})
