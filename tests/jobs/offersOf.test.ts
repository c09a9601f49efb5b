import { describe, expect, test } from 'vitest'
import { createInProcessRunner } from '../../src/jobs/inProcess.ts'
import type { MeshSource } from '../../src/jobs/asks/fileAsks.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { box, scale, translate } from '../support/meshes.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const source = (name: string, mesh: Mesh): MeshSource => ({
  hash: name,
  name,
  blob: new Blob([Uint8Array.from(writeStlBinary(mesh))]),
})

describe('the job that looks for joints', () => {
  test('reads each part in its own unit, and tells which could not be read', async () => {
    const lower = source('lower.stl', box(40, 30, 5))
    const inches = source('upper.stl', scale(translate(box(20, 30, 5), [0, 0, 5]), 1 / 25.4))
    const broken: MeshSource = { hash: 'x', name: 'broken.stl', blob: new Blob(['nothing']) }
    const outcome = await createInProcessRunner().run({
      kind: 'offers',
      parts: [
        { partId: 'a', source: lower, unit: 'millimetre', pieces: 1, mirrored: 0 },
        { partId: 'b', source: inches, unit: 'inch', pieces: 1, mirrored: 0 },
        { partId: 'c', source: broken, unit: 'millimetre', pieces: 1, mirrored: 0 },
      ],
    })
    if (!outcome.ok) throw new Error(outcome.problem.message)
    expect(outcome.value.left).toEqual(['c'])
    expect(outcome.value.offers[0]).toMatchObject({
      isDrawn: true,
      joint: { a: { partId: 'a' }, b: { partId: 'b' } },
    })
    expect(outcome.value.offers[0]!.verdict.contactMm2).toBeCloseTo(600, 1)
  })

  test('is cancelled like any other', async () => {
    const control = new AbortController()
    control.abort()
    const ask = { kind: 'offers', parts: [] } as const
    const outcome = await createInProcessRunner().run(ask, { signal: control.signal })
    expect(outcome).toMatchObject({ ok: false, problem: { code: 'cancelled' } })
  })
})
