import { strToU8, zipSync } from 'fflate'
import { expect, test, vi } from 'vitest'
import { listMeshFiles } from '../../../src/core/formats/archive.ts'
import { readMesh } from '../../../src/core/formats/read.ts'
import { box } from '../../support/meshes.ts'
import { problemOf } from '../../support/problemOf.ts'
import { signedVolume } from '../../support/signedVolume.ts'
import { write3mf, writeObj, writeStlAscii, writeStlBinary } from '../../support/writeMesh.ts'

// On a busy machine the same work may take the wall clock ten times as long.
vi.setConfig({ testTimeout: 60_000 })

const BOX = box(2, 3, 4)
const MESHES = {
  'arms/front.STL': writeStlBinary(BOX),
  'arms/rear.stl': writeStlAscii(BOX),
  'deck.obj': writeObj(BOX),
  'foot.3mf': write3mf(BOX),
}

/** Where the directory entry of `path` begins. */
function directoryEntry(zip: Uint8Array, path: string): number {
  const view = new DataView(zip.buffer)
  const wanted = strToU8(path).join()
  for (let at = 0; at < zip.length - 46; at++) {
    const named = zip.subarray(at + 46, at + 46 + path.length).join() === wanted
    if (view.getUint32(at, true) === 0x02014b50 && named) return at
  }
  throw new Error(`no ${path}`)
}

test('a file that is no ZIP and a 3MF package yield themselves', () => {
  for (const [name, bytes] of Object.entries(MESHES)) {
    expect(listMeshFiles(bytes, name)).toEqual([{ name, bytes }])
  }
})

test('every mesh in a ZIP is found, packed or stored, and nothing else', () => {
  for (const level of [0, 9] as const) {
    const zip = zipSync(
      {
        ...MESHES,
        'read me.txt': strToU8('v 1 2 3'),
        '__MACOSX/arms/._front.STL': strToU8('x'),
        'arms/.hidden.stl': strToU8('x'),
        'empty folder/': new Uint8Array(0),
      },
      { level },
    )
    const files = listMeshFiles(zip, 'frame.zip')
    expect(files.map(({ name }) => name)).toEqual(Object.keys(MESHES))
    for (const { name, bytes } of files) expect(signedVolume(readMesh(bytes, name).mesh)).toBe(24)
  }
})

test('paths that begin at the folder itself or climb out of it are no hidden files', () => {
  const paths = ['./arm.stl', '../deck.stl', 'a/./b/../foot.stl', './.hidden/x.stl', '.hidden.stl']
  const zip = zipSync(Object.fromEntries(paths.map((path) => [path, writeStlBinary(BOX)])))
  expect(listMeshFiles(zip, '').map(({ name }) => name)).toEqual(paths.slice(0, 3))
})

test('meshes without telling names are found by their content', () => {
  const zip = zipSync({ one: writeStlBinary(BOX), two: strToU8('nothing'), three: writeObj(BOX) })
  expect(listMeshFiles(zip, '').map(({ name }) => name)).toEqual(['one', 'three'])
})

test('a ZIP without a mesh is refused', () => {
  expect(
    problemOf(() => listMeshFiles(zipSync({ 'a.txt': strToU8('hello') }), 'frame.zip')),
  ).toEqual({
    code: 'bad-archive',
    message: 'frame.zip: It is a ZIP with 1 file, and none is an STL, OBJ or 3MF.',
    advice: 'Pack the meshes themselves; an archive inside an archive is not opened.',
  })
})

test('a damaged entry has its problem and the others go on', () => {
  const zip = zipSync(MESHES, { level: 0 })
  // One coordinate of the first file changes; its checksum no longer fits.
  zip[30 + 'arms/front.STL'.length + 84 + 14]! ^= 1
  const files = listMeshFiles(zip, 'frame.zip')
  expect(files.map(({ problem }) => problem?.message)).toEqual([
    'frame.zip: "arms/front.STL" does not match its checksum.',
    undefined,
    undefined,
    undefined,
  ])
  expect(files[0]?.bytes).toHaveLength(0)
})

test('a cut ZIP is refused with what is missing', () => {
  const zip = zipSync(MESHES)
  expect(problemOf(() => listMeshFiles(zip.subarray(0, 500), 'frame.zip'))).toEqual({
    code: 'bad-archive',
    message:
      'frame.zip: It is a ZIP of 500 bytes without the directory that should stand at its end.',
    advice: 'The archive is damaged or was cut off: copy, download or pack it again.',
  })
  const { message } = problemOf(() => readMesh(write3mf(BOX).subarray(0, 500), 'foot.3mf'))
  expect(message).toContain('without the directory')
})

test('a bomb is refused by what it claims and by what it does', () => {
  // 4 MB of zeros pack into 4 kB. The directory first claims more than all that may be unpacked, …
  const zip = zipSync({ 'a.stl': new Uint8Array(4 * 1024 * 1024) }, { level: 9 })
  const view = new DataView(zip.buffer)
  const sizeAt = directoryEntry(zip, 'a.stl') + 24
  view.setUint32(sizeAt, 0xffff_0000, true)
  expect(listMeshFiles(zip, 'a.zip')[0]?.problem?.code).toBe('too-large')
  // … then what no compression reaches, …
  view.setUint32(sizeAt, 500 * 1024 * 1024, true)
  expect(listMeshFiles(zip, 'a.zip')[0]?.problem?.message).toContain('which no compression does')
  // … and then far less than it gives.
  view.setUint32(sizeAt, 1000, true)
  expect(listMeshFiles(zip, 'a.zip')[0]?.problem?.message).toMatch(
    /^a\.zip: "a\.stl" should unpack to 1,000 bytes and gives [\d,]+ or more\.$/,
  )
})

test('passwords and unknown packing methods are named', () => {
  const zip = zipSync(MESHES)
  const view = new DataView(zip.buffer)
  view.setUint16(directoryEntry(zip, 'arms/front.STL') + 8, 1, true)
  view.setUint16(directoryEntry(zip, 'deck.obj') + 10, 14, true)
  expect(listMeshFiles(zip, 'frame.zip').map(({ problem }) => problem?.message)).toEqual([
    'frame.zip: "arms/front.STL" is locked with a password.',
    undefined,
    'frame.zip: "deck.obj" is packed with method 14; only 0 (stored) and 8 (deflate) are read.',
    undefined,
  ])
})
