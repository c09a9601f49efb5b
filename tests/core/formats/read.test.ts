import fc from 'fast-check'
import { expect, test, vi } from 'vitest'
import { readMesh } from '../../../src/core/formats/read.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import {
  box,
  cubeWithHole,
  merge,
  rotate,
  single,
  soupOf,
  sphere,
  translate,
} from '../../support/meshes.ts'
import { problemOf } from '../../support/problemOf.ts'
import { signedVolume } from '../../support/signedVolume.ts'
import { write3mf, writeObj, writeStlAscii, writeStlBinary } from '../../support/writeMesh.ts'

// On a busy machine the same work may take the wall clock ten times as long.
vi.setConfig({ testTimeout: 60_000 })

const SEED = 20_255

const WRITERS: Readonly<Record<string, (mesh: Mesh) => Uint8Array>> = {
  'stl-binary': (mesh) => writeStlBinary(mesh),
  'stl-ascii': (mesh) => writeStlAscii(mesh),
  obj: (mesh) => writeObj(mesh),
  '3mf': (mesh) => write3mf(mesh),
}

const SOLIDS: Readonly<Record<string, Mesh>> = {
  box: box(2, 3, 4),
  'drilled cube, tilted': rotate(cubeWithHole(20, 5, 24), [12, 34, 56]),
  'two bodies far away': translate(
    merge([sphere(4, 12), translate(box(1, 2, 3), [9, 0, 0])]),
    [1e4, 0, -1e4],
  ),
}

for (const [title, solid] of Object.entries(SOLIDS)) {
  test(`STL, OBJ and 3MF of a ${title} are the same mesh`, () => {
    // Coordinates that 32 bits hold, so that binary STL loses nothing.
    const exact = single(solid)
    const meshes = Object.values(WRITERS).map((write) => readMesh(write(exact), '').mesh)
    const [first, ...others] = meshes
    expect(signedVolume(first!)).toBeCloseTo(signedVolume(exact), 3)
    for (const other of others) {
      expect(Array.from(other.positions)).toEqual(Array.from(first!.positions))
      expect(other.indices).toEqual(first!.indices)
    }
  })

  test(`a ${title} reads the same whatever the file is called`, () => {
    for (const [format, write] of Object.entries(WRITERS)) {
      const bytes = write(solid)
      const hidden = readMesh(bytes, '')
      expect(hidden.format).toBe(format)
      for (const name of ['part.stl', 'part.obj', 'part.3mf', 'part.txt', 'PART']) {
        expect(readMesh(bytes, name)).toEqual(hidden)
      }
    }
  })
}

/** Triangles of whatever corners: finite, else anything goes. */
const soups = fc
  .array(fc.float({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }), {
    minLength: 9,
    maxLength: 90,
  })
  .map((values): Mesh => {
    const corners = Math.floor(values.length / 9) * 3
    return {
      positions: Float32Array.from(values.slice(0, 3 * corners)),
      indices: Uint32Array.from({ length: corners }, (_, i) => i),
    }
  })

for (const [format, write] of Object.entries(WRITERS)) {
  test(`what is written as ${format} is read back to the last bit (seed ${SEED})`, () => {
    fc.assert(
      fc.property(soups, (mesh) => {
        const read = readMesh(write(mesh), '')
        expect(read.format).toBe(format)
        expect(Array.from(soupOf(read.mesh))).toEqual(
          Array.from(soupOf(mesh), (value) => value + 0),
        )
        expect(read.pieces.reduce((sum, { triangleCount }) => sum + triangleCount, 0)).toBe(
          mesh.indices.length / 3,
        )
      }),
      { seed: SEED, numRuns: 200 },
    )
  })
}

test('files that are no meshes are called by what they are', () => {
  const text = (content: string) => Uint8Array.from(content, (letter) => letter.charCodeAt(0))
  const cases: readonly [string, string, RegExp][] = [
    ['', 'empty-file', /^a\.stl: It is 0 bytes long\.$/],
    ['ISO-10303-21;\nHEADER;', 'unknown-format', /STEP/],
    ['glTF\x02\0\0\0', 'unknown-format', /glTF/],
    ['ply\nformat ascii 1.0\n', 'unknown-format', /PLY/],
    ['<?xml version="1.0"?><model/>', 'unknown-format', /XML/],
    [`\x89PNG\r\n\x1a\n${'\x00\x9f\xff\x12'.repeat(60)}`, 'unknown-format', /PNG/],
    ['%PDF-1.7', 'unknown-format', /PDF/],
    ['Dear builder,\nsee you soon.', 'unknown-format', /^a\.stl: Its 27 bytes of text are not/],
    ['\x01\x02\x03', 'unknown-format', /^a\.stl: Its 3 bytes of binary are not/],
    ['PK\x03\x04', 'bad-archive', /without the directory/],
  ]
  for (const [content, code, message] of cases) {
    const found = problemOf(() => readMesh(text(content), 'a.stl'))
    expect(found.code, content).toBe(code)
    expect(found.message, content).toMatch(message)
    expect(found.advice, content).not.toBe('')
  }
})
