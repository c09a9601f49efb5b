import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readMesh } from '../../../src/core/formats/read.ts'
import type { FindingCode, LengthUnit, MeshFormat } from '../../../src/core/model/mesh.ts'
import type { ProblemCode } from '../../../src/core/model/problem.ts'
import { problemOf } from '../../support/problemOf.ts'
import { signedVolume } from '../../support/signedVolume.ts'

/*
 * tests/samples: one small file a difficulty, made by hand, named by what it shows. Nearly all hold a
 * 2 × 3 × 4 block, 24 by hand arithmetic; the L is 5 × 2. A message that changes has to be changed here too.
 */
const FOLDER = new URL('../../samples/', import.meta.url)

type Sound = readonly [
  format: MeshFormat,
  volume: number,
  pieces: readonly string[],
  findings: readonly FindingCode[],
  unit?: LengthUnit,
]

const SOUND: Readonly<Record<string, Sound>> = {
  'ascii-exponents.stl': ['stl-ascii', 24, ['block'], []],
  'ascii-shouting-old-mac.stl': ['stl-ascii', 24, ['BLOCK'], []],
  'ascii-two-solids.stl': ['stl-ascii', 48, ['block', 'second block'], []],
  'ascii-utf16.stl': ['stl-ascii', 24, ['block'], []],
  'binary-starts-with-solid.stl': ['stl-binary', 24, ['solid block'], ['solid-header']],
  'binary-trailing-bytes.stl': ['stl-binary', 24, ['cut off'], ['trailing-bytes']],
  'inches.3mf': ['3mf', 24, ['part'], [], 'inch'],
  'mirrored-and-nested.3mf': ['3mf', 72, ['pair', 'block'], ['mirrored-item'], 'millimetre'],
  'ngons-and-continued-lines.obj': ['obj', 10, ['foot'], []],
  'support-left-out.3mf': ['3mf', 24, ['block'], ['skipped-content'], 'millimetre'],
}

/** Files that end early: how many of the 12 triangles are left. */
const SHORT: Readonly<Record<string, number>> = { 'ascii-cut-off.stl': 11, 'binary-cut-off.stl': 9 }

const BROKEN: Readonly<Record<string, readonly [code: ProblemCode, message: string]>> = {
  'ascii-decimal-comma.stl': [
    'bad-number',
    'There is a decimal comma at byte 61 in facet 1: "0,00".',
  ],
  'binary-cut-before-first.stl': [
    'truncated',
    'Its header promises 12 triangles, which take 684 bytes, and it is 111 bytes long: ' +
      'not one whole triangle is there.',
  ],
  'binary-not-a-number.stl': ['not-finite', 'Triangle 3 of 12 has the coordinate NaN at byte 196.'],
  'cut-off.3mf': [
    'bad-archive',
    'It is a ZIP of 700 bytes without the directory that should stand at its end.',
  ],
  'empty.stl': ['empty-file', 'It is 0 bytes long.'],
  'entity-trick.3mf': [
    'bad-xml',
    'There is a document type declaration at character 73 of "/3D/3dmodel.model", which 3MF forbids.',
  ],
  'not-a-mesh.stl': [
    'unknown-format',
    'It is a STEP file, which holds surfaces and not triangles.',
  ],
  'points-only.obj': ['no-triangles', 'It holds 3 vertices and no face.'],
  'round-in-a-circle.3mf': [
    'bad-3mf',
    'Object 1 contains itself through its components: 1 → 2 → 1.',
  ],
  'vertex-too-far.obj': ['bad-index', 'The face at byte 159 names vertex 12, and there are 8.'],
}

const load = (name: string) => new Uint8Array(readFileSync(new URL(name, FOLDER)))

for (const [name, [format, volume, pieces, findings, unit]] of Object.entries(SOUND)) {
  test(`${name} is read`, () => {
    const read = readMesh(load(name), name)
    expect(read.format).toBe(format)
    expect(signedVolume(read.mesh)).toBeCloseTo(volume, 9)
    expect(read.pieces.map((piece) => piece.name)).toEqual(pieces)
    expect(read.findings.map(({ code }) => code)).toEqual(findings)
    expect(read.unit).toBe(unit ?? null)
    expect(readMesh(load(name), '')).toEqual(read)
  })
}

for (const [name, triangles] of Object.entries(SHORT)) {
  test(`${name} is read as far as it goes`, () => {
    const read = readMesh(load(name), name)
    expect(read.mesh.indices).toHaveLength(3 * triangles)
    expect(read.findings).toMatchObject([{ code: 'short-count', grade: 'changes the grams' }])
  })
}

for (const [name, [code, message]] of Object.entries(BROKEN)) {
  test(`${name} is refused in recorded words`, () => {
    const problem = problemOf(() => readMesh(load(name), name))
    expect(problem.code).toBe(code)
    expect(problem.message).toBe(`${name}: ${message}`)
    expect(problem.advice).toMatch(/\.$/)
  })
}

test('every sample is checked', () => {
  const checked = [...Object.keys(SOUND), ...Object.keys(SHORT), ...Object.keys(BROKEN)]
  // Folders hold samples of other kinds.
  const files = readdirSync(FOLDER, { withFileTypes: true }).filter((entry) => entry.isFile())
  expect(checked.toSorted()).toEqual(files.map((entry) => entry.name).toSorted())
})
