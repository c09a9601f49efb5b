import { describe, expect, test } from 'vitest'
import { quickMeasure } from '../../src/core/formats/quick.ts'
import { readMesh } from '../../src/core/formats/read.ts'
import { measureMesh } from '../../src/core/mesh/measure.ts'
import { placeMesh } from '../../src/core/mesh/pose.ts'
import { countAllLayers } from '../../src/core/census/countAllLayers.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { analyse } from '../../src/jobs/analyse.ts'
import { hashBytes } from '../../src/jobs/hash.ts'
import { createInProcessRunner } from '../../src/jobs/inProcess.ts'
import { geometryOf } from '../../src/jobs/keys.ts'
import { createMeshShelf } from '../../src/jobs/meshShelf.ts'
import type { AnalyseAsk, AnalyseEvent } from '../../src/jobs/asks/partAsks.ts'
import type { MeshSource } from '../../src/jobs/asks/fileAsks.ts'
import { box, sphere } from '../support/meshes.ts'
import { writeStlAscii, writeStlBinary } from '../support/writeMesh.ts'

async function sourceOf(bytes: Uint8Array, name = 'part.stl'): Promise<MeshSource> {
  const own = Uint8Array.from(bytes)
  return { hash: await hashBytes(own), name, blob: new Blob([own]) }
}

function ask(source: MeshSource, change: Partial<AnalyseAsk> = {}): AnalyseAsk {
  return {
    kind: 'analyse',
    source,
    unit: 'millimetre',
    pose: POSE_AS_DRAWN,
    geometry: geometryOf(RECIPE_DEFAULTS),
    zones: [],
    wantRead: true,
    wantCoarse: true,
    ...change,
  }
}

const BALL = writeStlBinary(sphere(6, 24))

describe('an analysis', () => {
  test('tells rough figures, then the measured mesh, then progress, and answers the census', async () => {
    const events: AnalyseEvent[] = []
    let clock = 0
    const answer = await analyse(
      // On a clock that moves with every look ten seconds would soon be over.
      ask(await sourceOf(BALL), { countsFully: true }),
      createMeshShelf(),
      (event) => events.push(event),
      () => (clock += 30),
    )
    const mesh = readMesh(BALL, 'part.stl').mesh
    const quick = quickMeasure(BALL)
    expect(events.slice(0, 2)).toEqual([
      { kind: 'rough', rough: { volumeMm3: quick?.volumeMm3, areaMm2: quick?.areaMm2 } },
      {
        kind: 'read',
        read: expect.objectContaining({ format: 'stl-binary', measure: measureMesh(mesh, 1) }),
      },
    ])
    const steps = events.slice(2)
    expect(steps.every((event) => event.kind === 'progress')).toBe(true)
    // 60 layers, a clock looked at once a layer that moves 30 ms each time, a word every 100 ms at
    // most: every fourth layer, 15 words, and one more or less at the ends.
    expect(steps.length).toBeGreaterThanOrEqual(14)
    expect(steps.length).toBeLessThanOrEqual(16)
    expect(answer.census).toEqual(
      countAllLayers(placeMesh(mesh, 1, POSE_AS_DRAWN), geometryOf(RECIPE_DEFAULTS)),
    )
  })

  test('draws a picture with something on it and something transparent', async () => {
    const events: AnalyseEvent[] = []
    await analyse(ask(await sourceOf(BALL)), createMeshShelf(), (event) => events.push(event))
    const read = events.find((event) => event.kind === 'read')?.read
    const alpha = read?.thumbnail?.rgba.filter((_, i) => i % 4 === 3) ?? []
    expect(alpha).toHaveLength(96 * 96)
    expect(Math.min(...alpha)).toBe(0)
    expect(Math.max(...alpha)).toBe(255)
  })

  test('takes the file’s numbers in the part’s unit', async () => {
    const events: AnalyseEvent[] = []
    const inch = writeStlBinary(box(1, 1, 1))
    const { census } = await analyse(
      ask(await sourceOf(inch), { unit: 'inch' }),
      createMeshShelf(),
      (event) => events.push(event),
    )
    const volume = 25.4 ** 3
    const [rough, read] = events
    expect(rough?.kind === 'rough' && rough.rough.volumeMm3).toBeCloseTo(volume, 3)
    expect(read?.kind === 'read' && read.read.measure.volumeMm3).toBeCloseTo(volume, 3)
    expect(census.modelMm3).toBeCloseTo(volume, -1)
  })

  test('does not read a file again whose mesh is still on the shelf', async () => {
    const source = await sourceOf(BALL)
    const shelf = createMeshShelf()
    await analyse(ask(source), shelf, () => undefined)
    const gone = { ...source, blob: unreadable() }
    const { census } = await analyse(ask(gone, { wantRead: false }), shelf, () => undefined)
    expect(census.modelMm3).toBeGreaterThan(250)
  })

  test('sends what the reader found odd in front of what the measure found', async () => {
    const text = writeStlAscii(box(10, 10, 10))
    const cut = text.slice(0, text.length - 'endsolid part\n'.length)
    const events: AnalyseEvent[] = []
    await analyse(ask(await sourceOf(cut)), createMeshShelf(), (event) => events.push(event))
    const own = readMesh(cut, 'part.stl').findings
    expect(own.length).toBeGreaterThan(0)
    const read = events.find((event) => event.kind === 'read')?.read
    expect(read?.measure.findings.slice(0, own.length)).toEqual(own)
  })
})

describe('the runner in this process', () => {
  test('answers a problem for a file that is no mesh, and goes on', async () => {
    const runner = createInProcessRunner()
    const bad = await sourceOf(new TextEncoder().encode('not a mesh at all'), 'bad.stl')
    expect(await runner.run(ask(bad))).toMatchObject({
      ok: false,
      problem: { code: 'unknown-format' },
    })
    expect(await runner.run(ask(await sourceOf(BALL)))).toMatchObject({ ok: true })
  })

  test('says that a file changed on disk cannot be read', async () => {
    const source = { ...(await sourceOf(BALL)), blob: unreadable() }
    const outcome = await createInProcessRunner().run(ask(source))
    expect(outcome).toMatchObject({ ok: false, problem: { code: 'unreadable-file' } })
  })

  test('answers cancelled to a job ended before its turn, and after closing', async () => {
    const runner = createInProcessRunner()
    const abort = new AbortController()
    abort.abort()
    const source = await sourceOf(BALL)
    const ended = await runner.run(ask(source), { signal: abort.signal })
    expect(ended).toMatchObject({ ok: false, problem: { code: 'cancelled' } })
    runner.close()
    expect(await runner.run(ask(source))).toMatchObject({
      ok: false,
      problem: { code: 'cancelled' },
    })
  })

  test('gives a mesh in mm and in its pose that shares no memory with the next one', async () => {
    const runner = createInProcessRunner()
    const source = await sourceOf(writeStlBinary(box(1, 2, 3)))
    const mesh = { kind: 'mesh', source, unit: 'centimetre', pose: POSE_AS_DRAWN } as const
    const first = await runner.run(mesh)
    if (!first.ok) throw new Error(first.problem.message)
    expect(measureMesh(first.value, 1).boundsMm).toEqual({ min: [-5, -10, 0], max: [5, 10, 30] })
    first.value.positions.fill(0)
    first.value.indices.fill(0)
    const second = await runner.run(mesh)
    expect(second.ok && measureMesh(second.value, 1).volumeMm3).toBeCloseTo(6000, 6)
  })
})

function unreadable(): Blob {
  const blob = new Blob([])
  blob.arrayBuffer = () => Promise.reject(new DOMException('gone', 'NotReadableError'))
  return blob
}
