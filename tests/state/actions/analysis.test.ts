import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import type { Outcome } from '../../../src/core/model/problem.ts'
import { createInProcessRunner } from '../../../src/jobs/inProcess.ts'
import type { AnalyseEvent } from '../../../src/jobs/asks/partAsks.ts'
import type { Runner } from '../../../src/jobs/runner.ts'
import { ledgerRows } from '../../../src/state/store/derived.ts'
import { createMemoryStorage } from '../../../src/state/storage/memoryStorage.ts'
import { meshOf } from '../../support/meshes.ts'
import { boxFile, counting, fileOf, holding, startSession } from '../../support/session.ts'
import { writeStlBinary } from '../../support/writeMesh.ts'

const FILE = boxFile('block.stl', 12, 12, 4)
const turn = () => new Promise((go) => setImmediate(go))

describe('what the workers are asked', () => {
  test('a change of infill, material, printer or price asks nothing and changes the figures', async () => {
    const runner = counting(createInProcessRunner())
    const { actions, state } = await startSession({ runner })
    await actions.addFiles([FILE])
    await actions.settled()
    const [id = ''] = state().frame.parts.map((part) => part.id)
    const asked = runner.kinds.length
    const mass = () => ledgerRows(state())[0]?.figures?.massG.mid ?? Number.NaN

    const before = mass()
    actions.updateParts([id], { recipe: { infillPct: 90 } })
    const dense = mass()
    expect(dense).toBeGreaterThan(before)
    actions.updateParts([id], { materialId: 'abs' })
    expect(mass()).toBeLessThan(dense)
    actions.putPrinter({ ...state().frame.printer, powerW: 999 })
    actions.putPrices({ ...state().frame.prices, electricityPerKwh: 9 })
    await actions.settled()
    expect(runner.kinds).toHaveLength(asked)
    expect(ledgerRows(state())[0]).toMatchObject({ basis: 'census', stale: false })
  })

  test('a change of layer height keeps the old figures, marked stale, until the new census is there', async () => {
    const { runner, waiting } = holding(createInProcessRunner())
    const { actions, state } = await startSession({ runner })
    await actions.addFiles([FILE])
    await turn()
    waiting[0]?.go()
    await actions.settled()
    const [id = ''] = state().frame.parts.map((part) => part.id)
    const row = () => ledgerRows(state())[0]

    actions.updateParts([id], { recipe: { layerMm: 0.4 } })
    expect(row()).toMatchObject({ basis: 'census', stale: true, progress: 0 })
    const settled = actions.settled()
    while (waiting.length < 2) await turn()
    waiting[1]?.go()
    await settled
    expect(row()).toMatchObject({ basis: 'census', stale: false, progress: null })
    const work = row()?.work
    expect(work?.kind === 'done' && work.census.layers.count).toBe(11)
  })

  test('progress of all jobs is shown together, a few times a second at most', async () => {
    const tells: ((fraction: number) => void)[] = []
    const inner = createInProcessRunner()
    const { actions, store, state } = await startSession({
      runner: {
        run(ask, options) {
          if (ask.kind !== 'analyse') return inner.run(ask, options)
          const tell = options?.onEvent as (event: AnalyseEvent) => void
          tells.push((fraction) => tell({ kind: 'progress', fraction }))
          return new Promise(() => undefined)
        },
        close: () => inner.close(),
      },
    })
    await actions.addFiles([FILE, boxFile('other.stl', 9, 9, 4)])
    while (tells.length < 2) await turn()
    await actions.flush()
    let drawn = 0
    store.subscribe(() => {
      drawn += 1
    })
    for (let step = 1; step <= 40; step++) for (const tell of tells) tell(step / 100)
    expect(drawn).toBe(0)
    while (drawn === 0) await turn()
    expect(drawn).toBe(1)
    expect(ledgerRows(state()).map((row) => row.progress)).toEqual([0.4, 0.4])
    actions.close()
  })

  test('going back to settings counted before asks nothing', async () => {
    const runner = counting(createInProcessRunner())
    const { actions, state } = await startSession({ runner })
    await actions.addFiles([FILE])
    await actions.settled()
    const [id = ''] = state().frame.parts.map((part) => part.id)
    actions.updateParts([id], { recipe: { walls: 4 } })
    await actions.settled()
    const asked = runner.kinds.length
    actions.undo()
    expect(ledgerRows(state())[0]?.stale).toBe(false)
    actions.redo()
    expect(ledgerRows(state())[0]?.stale).toBe(false)
    await actions.settled()
    expect(runner.kinds).toHaveLength(asked)
  })

  test('removing and bringing back a part shows its figures at once', async () => {
    const runner = counting(createInProcessRunner())
    const { actions, state } = await startSession({ runner })
    await actions.addFiles([FILE])
    await actions.settled()
    const asked = runner.kinds.length
    actions.removeParts(state().frame.parts.map((part) => part.id))
    expect(state().work).toEqual({})
    actions.undo()
    expect(ledgerRows(state())[0]?.basis).toBe('census')
    await actions.settled()
    expect(runner.kinds).toHaveLength(asked)
  })

  test('another unit shows rough figures in that unit, not the old census', async () => {
    const { runner, waiting } = holding(createInProcessRunner())
    const { actions, state } = await startSession({ runner })
    await actions.addFiles([FILE])
    await turn()
    waiting[0]?.go()
    await actions.settled()
    const [id = ''] = state().frame.parts.map((part) => part.id)
    actions.updateParts([id], { unit: 'centimetre' })
    const work = state().work[id]
    expect(work?.kind === 'rough' && work.rough.volumeMm3).toBeCloseTo(12 * 12 * 4 * 1000, 0)
    actions.close()
  })
})

describe('late and lost answers', () => {
  test('an analysis no part wants any more is ended, and the newest settings win', async () => {
    const { runner, waiting } = holding(createInProcessRunner())
    const { actions, state } = await startSession({ runner })
    await actions.addFiles([FILE])
    while (waiting.length < 1) await turn()
    const [id = ''] = state().frame.parts.map((part) => part.id)
    actions.updateParts([id], { recipe: { layerMm: 0.4 } })
    expect(waiting[0]?.signal?.aborted).toBe(true)
    waiting[0]?.go()
    const settled = actions.settled()
    while (waiting.length < 2) await turn()
    expect(state().work[id]?.kind).toBe('rough')
    waiting[1]?.go()
    await settled
    const work = state().work[id]
    expect(work?.kind === 'done' && work.census.layers.count).toBe(11)
  })

  test('an analysis goes on while one of its parts still wants it', async () => {
    const { runner, waiting } = holding(createInProcessRunner())
    const { actions, state } = await startSession({ runner })
    await actions.addFiles([FILE, FILE])
    while (waiting.length < 1) await turn()
    const [first, second] = state().frame.parts
    actions.removeParts([first?.id ?? ''])
    expect(waiting[0]?.signal?.aborted).toBe(false)
    waiting[0]?.go()
    await actions.settled()
    expect(state().work[second?.id ?? '']?.kind).toBe('done')
    expect(waiting).toHaveLength(1)
  })

  test('a part whose worker broke down says so, and a retry helps', async () => {
    const inner = createInProcessRunner()
    let isBroken = true
    const runner: Runner = {
      run(ask, options) {
        if (ask.kind !== 'analyse' || !isBroken) return inner.run(ask, options)
        const problem = { code: 'crashed', message: 'It broke.', advice: 'Again.' } as const
        return Promise.resolve<Outcome<never>>({ ok: false, problem })
      },
      close: () => inner.close(),
    }
    const { actions, state } = await startSession({ runner })
    await actions.addFiles([FILE])
    await actions.settled()
    const [id = ''] = state().frame.parts.map((part) => part.id)
    expect(state().work[id]).toMatchObject({ kind: 'failed', problem: { code: 'crashed' } })
    isBroken = false
    actions.retryPart(id)
    await actions.settled()
    expect(state().work[id]?.kind).toBe('done')
  })

  test('a mesh that encloses nothing fails with words, and the others go on', async () => {
    const { actions, state } = await startSession()
    const sheet = meshOf(
      [
        [0, 0, 0],
        [10, 0, 0],
        [0, 10, 0],
      ],
      [0, 1, 2],
    )
    await actions.addFiles([fileOf('sheet.stl', writeStlBinary(sheet)), FILE])
    await actions.settled()
    const [bad, good] = state().frame.parts.map((part) => state().work[part.id])
    expect(bad).toMatchObject({ kind: 'failed', problem: { code: 'no-volume' } })
    expect(good?.kind).toBe('done')
  })

  test('a file that changed on disk after it was stored is taken from storage', async () => {
    // As the browser does, storage keeps a copy of its own.
    const storage = { ...createMemoryStorage(), loadMesh: () => Promise.resolve(FILE.blob) }
    const { actions, state } = await startSession({ storage })
    const blob = new Blob([await FILE.blob.arrayBuffer()])
    await actions.addFiles([{ name: 'block.stl', blob }])
    await actions.settled()
    const [part] = state().frame.parts
    blob.arrayBuffer = () => Promise.reject(new DOMException('gone', 'NotReadableError'))
    // Four other meshes push this one off the shelf.
    await actions.addFiles([5, 6, 7, 8].map((h) => boxFile(`${h}.stl`, 3, 3, h)))
    await actions.settled()
    actions.updateParts([part?.id ?? ''], { recipe: { layerMm: 0.4 } })
    await actions.settled()
    expect(state().work[part?.id ?? '']?.kind).toBe('done')
  })
})

describe('a dragged setting', () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
  })
  afterEach(() => {
    vi.useRealTimers()
  })

  test('asks once it rests, not at every step', async () => {
    const runner = counting(createInProcessRunner())
    const { actions, state } = await startSession({ runner })
    await actions.addFiles([FILE])
    await actions.settled()
    const [id = ''] = state().frame.parts.map((part) => part.id)
    const asked = runner.kinds.length
    for (const walls of [3, 4, 5, 6]) {
      actions.updateParts([id], { recipe: { walls } }, 'drag')
      vi.advanceTimersByTime(50)
      await turn()
    }
    expect(runner.kinds).toHaveLength(asked)
    vi.advanceTimersByTime(150)
    await actions.settled()
    expect(runner.kinds).toHaveLength(asked + 1)
  })
})
