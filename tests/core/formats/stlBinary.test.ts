import { expect, test } from 'vitest'
import { readMesh } from '../../../src/core/formats/read.ts'
import { box } from '../../support/meshes.ts'
import { problemOf } from '../../support/problemOf.ts'
import { signedVolume } from '../../support/signedVolume.ts'
import { writeStlBinary } from '../../support/writeMesh.ts'

const FILE = writeStlBinary(box(2, 3, 4), 'front arm')

test('a box reads as 8 vertices, 12 triangles and its volume', () => {
  const read = readMesh(FILE, 'arm.stl')
  expect(read.format).toBe('stl-binary')
  expect(read.unit).toBeNull()
  expect(read.mesh.positions).toHaveLength(3 * 8)
  expect(read.mesh.indices).toHaveLength(3 * 12)
  expect(signedVolume(read.mesh)).toBe(24)
  expect(read.pieces).toEqual([{ name: 'front arm', firstTriangle: 0, triangleCount: 12 }])
  expect(read.findings).toEqual([])
})

test('a header that begins with "solid" is noted and read as binary', () => {
  const read = readMesh(writeStlBinary(box(2, 3, 4), 'solid front arm'), 'arm.stl')
  expect(read.format).toBe('stl-binary')
  expect(read.findings.map(({ code }) => code)).toEqual(['solid-header'])
})

test('a file cut within its triangles gives the whole ones and says how many are missing', () => {
  const read = readMesh(FILE.subarray(0, 84 + 50 * 7 + 20), 'arm.stl')
  expect(read.mesh.indices).toHaveLength(3 * 7)
  expect(read.findings).toEqual([
    {
      code: 'short-count',
      grade: 'changes the grams',
      short: 'cut off: 5 triangles missing',
      message:
        'Its header promises 12 triangles, which take 684 bytes, and it is 454 bytes long: ' +
        '7 triangles could be read and 5 are missing. The file was cut off: copy or export it again.',
      count: 5,
    },
  ])
})

test('a file cut before its first triangle ends is refused with both sizes', () => {
  expect(problemOf(() => readMesh(FILE.subarray(0, 100), 'arm.stl'))).toEqual({
    code: 'truncated',
    message:
      'arm.stl: Its header promises 12 triangles, which take 684 bytes, and it is 100 bytes long: ' +
      'not one whole triangle is there.',
    advice: 'The file was cut off: copy or export it again.',
  })
})

test('bytes behind the last triangle are left out and counted', () => {
  const longer = new Uint8Array(FILE.length + 30)
  longer.set(FILE)
  const read = readMesh(longer, 'arm.stl')
  expect(read.mesh.indices).toHaveLength(3 * 12)
  expect(read.findings).toMatchObject([{ code: 'trailing-bytes', count: 30 }])
})

test('a count of four billion allocates nothing for what is not there', () => {
  const promising = FILE.slice()
  new DataView(promising.buffer).setUint32(80, 0xffff_ffff, true)
  const read = readMesh(promising, 'arm.stl')
  expect(signedVolume(read.mesh)).toBe(24)
  expect(read.findings).toMatchObject([{ code: 'short-count', count: 0xffff_ffff - 12 }])
})

test('a count left at 0 by a writer that never came back is made up for', () => {
  const forgotten = FILE.slice()
  new DataView(forgotten.buffer).setUint32(80, 0, true)
  const read = readMesh(forgotten, 'arm.stl')
  expect(signedVolume(read.mesh)).toBe(24)
  expect(read.findings).toMatchObject([{ code: 'short-count', count: 12 }])
})

test('a header without triangles is refused', () => {
  const empty = writeStlBinary({ positions: new Float32Array(0), indices: new Uint32Array(0) })
  expect(problemOf(() => readMesh(empty, 'arm.stl')).code).toBe('no-triangles')
})

test('a coordinate that is not finite is refused with its triangle and byte', () => {
  for (const [value, spelled] of [
    [NaN, 'NaN'],
    [Infinity, 'Infinity'],
    [-Infinity, '-Infinity'],
  ] as const) {
    const broken = FILE.slice()
    // Triangle 3, second corner, y.
    const at = 84 + 50 * 2 + 12 + 4 * 4
    new DataView(broken.buffer).setFloat32(at, value, true)
    expect(problemOf(() => readMesh(broken, 'arm.stl'))).toMatchObject({
      code: 'not-finite',
      message: `arm.stl: Triangle 3 of 12 has the coordinate ${spelled} at byte ${at}.`,
    })
  }
})

test('normals that are not numbers do no harm', () => {
  const odd = FILE.slice()
  for (let k = 0; k < 3; k++) new DataView(odd.buffer).setFloat32(84 + 4 * k, NaN, true)
  expect(signedVolume(readMesh(odd, 'arm.stl').mesh)).toBe(24)
})

test('bytes that start anywhere in their buffer are read', () => {
  const shifted = new Uint8Array(FILE.length + 1).subarray(1)
  shifted.set(FILE)
  expect(signedVolume(readMesh(shifted, 'arm.stl').mesh)).toBe(24)
})
