import { afterEach, describe, expect, test } from 'vitest'
import { readMesh } from '../../src/core/formats/read.ts'
import { measureMesh } from '../../src/core/mesh/measure.ts'
import { placeMesh } from '../../src/core/mesh/pose.ts'
import { countAllLayers } from '../../src/core/census/countAllLayers.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { createBrowserRunner } from '../../src/jobs/browserRunner.ts'
import { hashBytes } from '../../src/jobs/hash.ts'
import { geometryOf } from '../../src/jobs/keys.ts'
import { createPoolRunner } from '../../src/jobs/poolRunner.ts'
import type { AnalyseEvent } from '../../src/jobs/asks/partAsks.ts'
import type { MeshSource } from '../../src/jobs/asks/fileAsks.ts'
import type { Runner } from '../../src/jobs/runner.ts'
import { webWorkers } from '../../src/jobs/webWorker.ts'
import { box, sphere } from '../support/meshes.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const runners: Runner[] = []
function open(runner: Runner): Runner {
  runners.push(runner)
  return runner
}
afterEach(() => {
  for (const runner of runners.splice(0)) runner.close()
})

async function sourceOf(bytes: Uint8Array, name = 'part.stl'): Promise<MeshSource> {
  const own = Uint8Array.from(bytes)
  return { hash: await hashBytes(own), name, blob: new Blob([own]) }
}

const geometry = geometryOf(RECIPE_DEFAULTS)
const ask = (source: MeshSource) =>
  ({
    kind: 'analyse',
    source,
    unit: 'millimetre',
    pose: POSE_AS_DRAWN,
    geometry,
    zones: [],
    wantRead: true,
    wantCoarse: false,
  }) as const

const BALL = writeStlBinary(sphere(3, 16))

/** A worker that counts its starts by name and does what its text says. */
function scripted(script: string): () => Worker {
  const url = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }))
  return () => new Worker(url)
}

describe('a worker of the page', () => {
  test('answers what a direct call answers, and again from the mesh it kept', async () => {
    const runner = open(createBrowserRunner())
    const source = await sourceOf(BALL)
    const { mesh } = readMesh(BALL, 'part.stl')
    const direct = countAllLayers(placeMesh(mesh, 1, POSE_AS_DRAWN), geometry)
    for (let k = 0; k < 3; k++) {
      const events: AnalyseEvent[] = []
      const outcome = await runner.run(ask(source), { onEvent: (event) => events.push(event) })
      expect(outcome).toEqual({ ok: true, value: { census: direct } })
      const read = events.find((event) => event.kind === 'read')?.read
      // A ball of 6 mm could be one of 6 inches: that is asked besides what is measured.
      const asked = expect.objectContaining({ code: 'not-millimetres' })
      expect(read?.measure).toEqual({ ...measureMesh(mesh, 1), findings: [asked] })
      expect(read?.thumbnail?.rgba).toHaveLength(96 * 96 * 4)
    }
  })

  test('opens files, hands over meshes, packs and unpacks', async () => {
    const runner = open(createBrowserRunner())
    const blob = new Blob([Uint8Array.from(writeStlBinary(box(10, 20, 5)))])
    const opened = await runner.run({ kind: 'open', name: 'box.stl', blob })
    if (!opened.ok || opened.value.kind !== 'meshes') throw new Error('not opened')
    const [file] = opened.value.files
    if (file?.ok !== true) throw new Error('not read')
    expect(file.raw.volumeMm3).toBeCloseTo(1000, 3)
    const mesh = await runner.run({
      kind: 'mesh',
      source: file.source,
      unit: 'centimetre',
      pose: POSE_AS_DRAWN,
    })
    expect(mesh.ok && measureMesh(mesh.value, 1).volumeMm3).toBeCloseTo(1e6, 0)
    const packed = await runner.run({ kind: 'pack', entries: [{ path: 'a', content: blob }] })
    const unpacked = packed.ok && (await runner.run({ kind: 'unpack', blob: packed.value }))
    expect(unpacked).toMatchObject({
      value: { entries: [{ ok: true, path: 'a', hash: file.source.hash }], cutShort: false },
    })
  })

  test('answers a broken file with its problem and goes on', async () => {
    const runner = open(createBrowserRunner())
    const bad = await runner.run(ask(await sourceOf(BALL.slice(0, 100), 'cut.stl')))
    expect(bad).toMatchObject({ ok: false, problem: { code: 'truncated' } })
    expect(await runner.run(ask(await sourceOf(BALL)))).toMatchObject({ ok: true })
  })

  test('is ended in mid-work when its job is, and the next job gets a new one', async () => {
    // More layers than a worker counts in the time the test has.
    const runner = open(createBrowserRunner())
    const source = await sourceOf(writeStlBinary(sphere(30, 48)))
    const abort = new AbortController()
    const fine = { ...geometry, layerMm: 0.02, firstLayerMm: 0.02 }
    const long = await runner.run(
      { ...ask(source), geometry: fine },
      {
        signal: abort.signal,
        onEvent(event) {
          if (event.kind === 'progress') abort.abort()
        },
      },
    )
    expect(long).toMatchObject({ ok: false, problem: { code: 'cancelled' } })
    expect(await runner.run(ask(await sourceOf(BALL)))).toMatchObject({ ok: true })
  })
})

describe('real workers that break', () => {
  test('a worker that throws is replaced once, then its file fails with the reason', async () => {
    let started = 0
    const start = scripted('onmessage = () => { setTimeout(() => { throw new Error("no room") }) }')
    const spawn = webWorkers(() => {
      started += 1
      return start()
    })
    const runner = open(createPoolRunner({ spawn, cores: 1 }))
    const outcome = await runner.run(ask(await sourceOf(BALL, 'ball.stl')))
    expect(outcome).toMatchObject({ ok: false, problem: { code: 'crashed' } })
    expect(JSON.stringify(outcome)).toMatch(/ball\.stl.*no room/)
    expect(started).toBe(2)
  })

  test('a worker whose script cannot be loaded fails the job instead of leaving it', async () => {
    const spawn = webWorkers(() => new Worker('/no-such-worker.js'))
    const runner = open(createPoolRunner({ spawn, cores: 1 }))
    const outcome = await runner.run(ask(await sourceOf(BALL)))
    expect(outcome).toMatchObject({ ok: false, problem: { code: 'crashed' } })
  })

  test('a worker that breaks once costs nothing but time', async () => {
    let started = 0
    const broken = scripted('onmessage = () => { setTimeout(() => { throw new Error("once") }) }')
    const sound = scripted(
      'onmessage = ({ data }) => postMessage({ id: data.id, kind: "answer", answer: "ok" })',
    )
    const spawn = webWorkers(() => {
      started += 1
      return started === 1 ? broken() : sound()
    })
    const runner = open(createPoolRunner({ spawn, cores: 1 }))
    expect(await runner.run(ask(await sourceOf(BALL)))).toEqual({ ok: true, value: 'ok' })
  })
})
