import { expect, test, vi } from 'vitest'
import { readMesh } from '../../../src/core/formats/read.ts'
import { box } from '../../support/meshes.ts'
import { problemOf } from '../../support/problemOf.ts'
import { signedVolume } from '../../support/signedVolume.ts'
import { writeStlAscii } from '../../support/writeMesh.ts'

// On a busy machine the same work may take the wall clock ten times as long.
vi.setConfig({ testTimeout: 60_000 })

const BOX = box(2, 3, 4)
const TEXT = decode(writeStlAscii(BOX, { name: 'front arm' }))

const read = (text: string) => readMesh(encode(text), 'arm.stl')
const problem = (text: string) => problemOf(() => read(text))

test('a box reads as 8 vertices, 12 triangles and its volume', () => {
  const { format, unit, mesh, pieces, findings } = read(TEXT)
  expect(format).toBe('stl-ascii')
  expect(unit).toBeNull()
  expect(mesh.positions).toHaveLength(3 * 8)
  expect(signedVolume(mesh)).toBe(24)
  expect(pieces).toEqual([{ name: 'front arm', firstTriangle: 0, triangleCount: 12 }])
  expect(findings).toEqual([])
})

test('any way to write a number gives the same mesh', () => {
  const expected = read(TEXT).mesh
  const spellings: readonly ((value: number) => string)[] = [
    (v) => v.toExponential(6),
    (v) => v.toExponential(6).toUpperCase(),
    (v) => `${v >= 0 ? '+' : ''}${v}.`,
    (v) => `${v * 1000}.e-3`,
    (v) => `${v / 100000}e5`,
    (v) => `${v < 0 ? '-' : ''}${(Math.abs(v) / 10).toFixed(1).slice(1)}E+01`,
  ]
  for (const number of spellings) {
    expect(readMesh(writeStlAscii(BOX, { number }), '').mesh, number(2)).toEqual(expected)
  }
})

test('any line end, letter case and spacing gives the same mesh', () => {
  const expected = read(TEXT).mesh
  const variants = {
    windows: TEXT.replaceAll('\n', '\r\n'),
    'old Macintosh': TEXT.replaceAll('\n', '\r'),
    'upper case': TEXT.toUpperCase(),
    'mixed case': TEXT.replaceAll('vertex', 'Vertex').replaceAll('facet', 'FACET'),
    tabs: TEXT.replaceAll(' ', '\t'),
    'wide gaps': TEXT.replaceAll(' ', ' \t  ').replaceAll('\n', '\n\n'),
    'one line': TEXT.replaceAll('\n', ' '),
    'leading blank lines': `\n\n  ${TEXT}`,
    'byte order mark': `\ufeff${TEXT}`,
    'no name': TEXT.replaceAll(' front arm', ''),
    'no line end at the end': TEXT.trimEnd(),
  }
  for (const [title, text] of Object.entries(variants)) {
    const again = read(text)
    expect(again.mesh, title).toEqual(expected)
    expect(again.findings, title).toEqual([])
  }
})

test('UTF-16 of either order, with or without its mark, gives the same mesh', () => {
  const expected = read(TEXT).mesh
  for (const bigEndian of [false, true]) {
    for (const mark of ['\ufeff', '']) {
      expect(readMesh(encodeWide(mark + TEXT, bigEndian), 'arm.stl').mesh).toEqual(expected)
    }
  }
})

test('several solids are several pieces; one without facets is none', () => {
  const many = `${TEXT}solid empty\nendsolid empty\n${TEXT.replaceAll('front arm', 'facet mount')}`
  expect(read(many).pieces).toEqual([
    { name: 'front arm', firstTriangle: 0, triangleCount: 12 },
    { name: 'facet mount', firstTriangle: 12, triangleCount: 12 },
  ])
  expect(signedVolume(read(many).mesh)).toBe(48)
})

test('normals are not looked at, whatever they say', () => {
  expect(signedVolume(read(TEXT.replaceAll(/normal .*/g, 'normal nan -nan(ind) 1,5')).mesh)).toBe(
    24,
  )
  expect(signedVolume(read(TEXT.replaceAll(/ normal .*/g, '')).mesh)).toBe(24)
})

test('words between facets that are not of the format are left out and counted', () => {
  const coloured = TEXT.replace('endfacet', 'endfacet\n  colour 1 0 0')
  expect(read(coloured).findings).toEqual([
    {
      code: 'skipped-content',
      grade: 'worth knowing',
      short: 'unknown words left out',
      message: `4 words between facets were left out, the first "colour" at byte ${coloured.indexOf('colour')}.`,
      count: 4,
    },
  ])
})

test('a text cut anywhere gives its whole facets with a finding, or is refused when there are none', () => {
  const firstEnd = TEXT.indexOf('endfacet') + 'endfacet'.length
  for (let length = 5; length < TEXT.lastIndexOf('endsolid'); length++) {
    const cut = TEXT.slice(0, length)
    if (length < firstEnd) {
      expect(problem(cut).code, cut).toMatch(/^(truncated|no-triangles)$/)
    } else {
      const { mesh, findings } = read(cut)
      expect(
        findings.map(({ code }) => code),
        cut,
      ).toEqual(['short-count'])
      expect(mesh.indices.length / 3, cut).toBe(cut.split('endfacet').length - 1)
    }
  }
})

test('a decimal comma is named with its byte', () => {
  const text = TEXT.replace('vertex 2 3 0', 'vertex 2,5 3 0')
  expect(problem(text)).toEqual({
    code: 'bad-number',
    message: `arm.stl: There is a decimal comma at byte ${text.indexOf('2,5')} in facet 4: "2,5".`,
    advice:
      'Export it again with decimal points; set the program or the system to a language that writes 1.5.',
  })
})

test('in UTF-16 the byte named is the byte in the file', () => {
  const text = TEXT.replace('vertex 2 3 0', 'vertex 2,5 3 0')
  const { message } = problemOf(() => readMesh(encodeWide(`\ufeff${text}`, false), 'arm.stl'))
  expect(message).toContain(`at byte ${2 + 2 * text.indexOf('2,5')} `)
})

test('a coordinate that is not a number, too large or missing is refused with its byte', () => {
  const at = TEXT.indexOf('vertex 2 3 0') + 'vertex '.length
  for (const [word, code] of [
    ['nan', 'not-finite'],
    ['-nan(ind)', 'not-finite'],
    ['1.#QNAN', 'not-finite'],
    ['inf', 'not-finite'],
    ['1e39', 'not-finite'],
    ['1e999', 'not-finite'],
    ['two', 'bad-number'],
    ['1.2.3', 'bad-number'],
    ['0x10', 'bad-number'],
  ]) {
    const found = problem(TEXT.replace('vertex 2 3 0', `vertex ${word} 3 0`))
    expect(found.code, word).toBe(code)
    expect(found.message, word).toContain(`at byte ${at} in facet 4`)
  }
})

test('a facet with more or fewer than three corners is refused', () => {
  expect(problem(TEXT.replace('vertex 2 3 0', 'vertex 2 3 0\nvertex 9 9 9')).message).toMatch(
    /^arm\.stl: Facet 4, which ends at byte \d+, has 4 corners instead of 3\.$/,
  )
  expect(problem(TEXT.replace(/vertex .*\n/, '')).message).toContain('has 2 corners instead of 3')
})

test('a misspelt word in a facet is refused with its byte', () => {
  const text = TEXT.replace('endloop', 'enddloop')
  expect(problem(text)).toMatchObject({
    code: 'bad-number',
    message: `arm.stl: "enddloop" at byte ${text.indexOf('enddloop')} is out of place in facet 1.`,
  })
  expect(problem(TEXT.replace('facet', 'face')).message).toContain('is out of place between facets')
})

test('a solid without facets is refused', () => {
  expect(problem('solid nothing\nendsolid nothing\n').code).toBe('no-triangles')
})

test('reading takes time in proportion to the text, whatever the name line holds', () => {
  const nasty = `solid ${'facet '.repeat(200_000)}\n${TEXT.slice(TEXT.indexOf('\n') + 1)}`
  expect(signedVolume(read(nasty).mesh)).toBe(24)
})

function encode(text: string): Uint8Array {
  return new TextEncoder().encode(text)
}

function decode(bytes: Uint8Array): string {
  return new TextDecoder().decode(bytes)
}

function encodeWide(text: string, bigEndian: boolean): Uint8Array {
  const bytes = new Uint8Array(2 * text.length)
  const view = new DataView(bytes.buffer)
  for (let i = 0; i < text.length; i++) view.setUint16(2 * i, text.charCodeAt(i), !bigEndian)
  return bytes
}
