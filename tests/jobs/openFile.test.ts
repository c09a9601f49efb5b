import { strToU8, zipSync } from 'fflate'
import { describe, expect, test } from 'vitest'
import { hashBytes } from '../../src/jobs/hash.ts'
import { createInProcessRunner } from '../../src/jobs/inProcess.ts'
import type { OpenedFile } from '../../src/jobs/asks/fileAsks.ts'
import { box } from '../support/meshes.ts'
import { write3mf, writeObj, writeStlBinary } from '../support/writeMesh.ts'

async function open(bytes: Uint8Array, name: string) {
  const blob = new Blob([Uint8Array.from(bytes)])
  const outcome = await createInProcessRunner().run({ kind: 'open', name, blob })
  return { outcome, blob }
}

async function filesIn(bytes: Uint8Array, name: string): Promise<readonly OpenedFile[]> {
  const { outcome } = await open(bytes, name)
  if (!outcome.ok) throw new Error(outcome.problem.message)
  return outcome.value.kind === 'meshes' ? outcome.value.files : expect.fail('a project')
}

const BOX = box(10, 20, 5)
const RAW = { volumeMm3: 1000, areaMm2: 700 }

describe('the first look at a file', () => {
  test.each([
    ['part.stl', writeStlBinary(BOX), null],
    ['part.obj', writeObj(BOX), null],
    ['part.3mf', write3mf(BOX, 'inch'), 'inch'],
  ] as const)(
    '%s gives its digest, its own unit and its size in its own numbers',
    async (name, bytes, unit) => {
      const files = await filesIn(bytes, name)
      expect(files).toEqual([
        {
          ok: true,
          source: { hash: await hashBytes(Uint8Array.from(bytes)), name, blob: expect.any(Blob) },
          unit,
          raw: {
            volumeMm3: expect.closeTo(RAW.volumeMm3, 3),
            areaMm2: expect.closeTo(RAW.areaMm2, 3),
          },
        },
      ])
    },
  )

  test('a single mesh keeps the dropped file itself instead of a copy', async () => {
    const { outcome, blob } = await open(writeStlBinary(BOX), 'part.stl')
    expect(outcome).toMatchObject({ value: { files: [{ source: { blob } }] } })
  })

  test('a ZIP gives its meshes; one that is no mesh is told and the others go on', async () => {
    const zip = zipSync({
      'frame/arm.stl': writeStlBinary(BOX),
      'frame/bad.stl': strToU8('solid nothing'),
      'frame/plate.obj': writeObj(BOX),
      'read me.txt': strToU8('hello'),
    })
    const files = await filesIn(zip, 'frame.zip')
    expect(files.map((each) => [each.ok ? each.source.name : each.name, each.ok])).toEqual([
      ['frame/arm.stl', true],
      ['frame/bad.stl', false],
      ['frame/plate.obj', true],
    ])
    const [arm] = files
    const inside = arm?.ok === true ? new Uint8Array(await arm.source.blob.arrayBuffer()) : null
    expect(inside).toEqual(Uint8Array.from(writeStlBinary(BOX)))
  })

  test('the same mesh under two names has one digest', async () => {
    const bytes = writeStlBinary(BOX)
    const [a, b] = await filesIn(zipSync({ 'a.stl': bytes, 'b.stl': bytes }), 'x.zip')
    expect(a?.ok === true && b?.ok === true && a.source.hash === b.source.hash).toBe(true)
  })

  test('a project file is recognised, not read', async () => {
    const { outcome } = await open(zipSync({ 'project.json': strToU8('{}') }), 'x.zip')
    expect(outcome).toEqual({ ok: true, value: { kind: 'project' } })
  })

  test('an empty file is a problem that names it', async () => {
    const files = await filesIn(new Uint8Array(0), 'nothing.stl')
    expect(files).toMatchObject([
      { ok: false, name: 'nothing.stl', problem: { code: 'empty-file' } },
    ])
  })
})
