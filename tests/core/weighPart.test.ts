import { describe, expect, test } from 'vitest'
import { readMesh } from '../../src/core/formats/read.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { createFacing, weighPart } from '../../src/core/weighPart.ts'
import { createInProcessRunner } from '../../src/jobs/inProcess.ts'
import type { JobEvent } from '../../src/jobs/protocol.ts'
import { box, flip, merge, sphere, translate } from '../support/meshes.ts'
import { problemOf } from '../support/problemOf.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

/** An inside-out arm of 4 × 1 × ½ in with a hair 0.1 in below it. */
const ARM = flip(translate(box(4, 1, 0.5), [0, 0, 0.25]))
const PART = writeStlBinary(merge([ARM, translate(box(0.2, 0.005, 0.005), [0, 0, -0.1])]))
const ZONE = writeStlBinary(box(1, 2, 2))
const GEOMETRY = { ...RECIPE_DEFAULTS, layerMm: 0.4, firstLayerMm: 0.4 }

const HOW = {
  unitOf: () => 'inch' as const,
  keepsHairs: false,
  pose: { rotateDeg: [90, 0, 0] as const },
  geometry: GEOMETRY,
}
const file = { name: 'arm.stl', bytes: PART }
const zone = { name: 'root.stl', bytes: ZONE }

describe('from bytes to census', () => {
  test('the worker goes the same way as the command', async () => {
    const { inspection, census } = weighPart(file, [zone], HOW)
    const events: JobEvent[] = []
    const source = (name: string, bytes: Uint8Array) => ({
      hash: name,
      name,
      blob: new Blob([Uint8Array.from(bytes)]),
    })
    const outcome = await createInProcessRunner().run(
      {
        kind: 'analyse',
        source: source('arm.stl', PART),
        zones: [source('root.stl', ZONE)],
        unit: 'inch',
        pose: HOW.pose,
        geometry: GEOMETRY,
        wantRead: true,
        wantCoarse: false,
      },
      { onEvent: (event) => events.push(event) },
    )
    expect(outcome).toEqual({ ok: true, value: { census } })
    const read = events.find((event) => event.kind === 'read')?.read
    expect(read).toMatchObject(inspection)
    const codes = inspection.measure.findings.map(({ code }) => code)
    expect(codes).toContain('hair')
    expect(codes).toContain('inside-out')
  })

  test('the part is what was drawn: its volume by hand, the zone its share, no hair', () => {
    const { census, unit, outward } = weighPart(file, [zone], HOW)
    expect(unit).toBe('inch')
    expect(outward.indices).toHaveLength(36)
    // 4 × ½ in in 64 layers of 0.4 mm, which is where the last of 1 in ends.
    expect(census.modelMm3).toBeCloseTo(2 * 25.4 ** 2 * 25.6, 3)
    const { roomMm3 } = census.zones[0]!
    // A quarter of the arm's length lies inside, and of its two ends' walls none.
    expect(roomMm3 / (roomMm3 + census.roomMm3)).toBeCloseTo(0.25, 1)
  })

  test('the stated unit decides where the file states one', () => {
    const said: unknown[] = []
    const how = { ...HOW, unitOf: (stated: unknown) => (said.push(stated), 'inch' as const) }
    weighPart(file, [], how)
    expect(said).toEqual([null])
  })

  test('a refusal of the part carries what its reader found, one of the zone does not', () => {
    const ball = writeStlBinary(sphere(1, 24))
    const cut = { name: 'ball.stl', bytes: ball.slice(0, 84 + 50 * 200) }
    const how = { ...HOW, pose: POSE_AS_DRAWN, unitOf: () => 'centimetre' as const }
    const { findings } = problemOf(() => weighPart(cut, [], how))
    expect(findings).toEqual(readMesh(cut.bytes, 'ball.stl').findings)
    expect(findings).toMatchObject([{ code: 'short-count' }])
    const noZone = { name: 'root.stl', bytes: new TextEncoder().encode('no mesh') }
    const ofZone = problemOf(() => weighPart(file, [noZone], HOW))
    expect(ofZone).toMatchObject({ code: 'unknown-format' })
    expect(ofZone.message).toContain('root.stl')
  })
})

describe('facing', () => {
  test('is worked out once for each mesh and way it is taken', () => {
    const face = createFacing()
    const read = readMesh(PART, 'arm.stl')
    const taking = { scaleToMm: 25.4, keepsHairs: false }
    const first = face(read, taking)
    expect(face(read, { ...taking })).toBe(first)
    const kept = face(read, { ...taking, keepsHairs: true })
    expect(kept.indices).toHaveLength(72)
    expect(face(readMesh(PART, 'arm.stl'), taking)).not.toBe(first)
  })
})
