import fc from 'fast-check'
import { strToU8, zipSync } from 'fflate'
import { expect, test } from 'vitest'
import { isProject, packEntries, unpackEntries } from '../../src/jobs/archive.ts'
import { hashBytes } from '../../src/jobs/hash.ts'

const bytesOf = async (blob: Blob) => new Uint8Array(await blob.arrayBuffer())
const blobOf = (bytes: Uint8Array<ArrayBuffer>) => new Blob([bytes])
/** Bytes that do not repeat, so that damage cannot hide in a copied run. */
const noise = (length: number, seed: number): Uint8Array<ArrayBuffer> => {
  let state = seed
  return Uint8Array.from({ length }, () => {
    state = (Math.imul(state, 1103515245) + 12345) >>> 0
    return state >>> 24
  })
}

test('what is packed comes out byte for byte, in its order, with its digest', async () => {
  const files = fc.uniqueArray(
    fc.tuple(fc.stringMatching(/^[a-z]{1,8}\/[a-z0-9]{1,8}$/), fc.uint8Array({ maxLength: 300 })),
    { selector: ([path]) => path, minLength: 1, maxLength: 6 },
  )
  await fc.assert(
    fc.asyncProperty(files, async (list) => {
      const packed = await packEntries(
        list.map(([path, bytes]) => ({ path, content: blobOf(Uint8Array.from(bytes)) })),
      )
      const { entries, cutShort } = await unpackEntries(await bytesOf(packed), 'x')
      expect(cutShort).toBe(false)
      expect(entries.map((entry) => entry.path)).toEqual(list.map(([path]) => path))
      for (const [i, entry] of entries.entries()) {
        const bytes = Uint8Array.from(list[i]?.[1] ?? [])
        if (!entry.ok) throw new Error(entry.reason)
        expect(await bytesOf(entry.blob)).toEqual(bytes)
        expect(entry.hash).toBe(await hashBytes(bytes))
      }
    }),
    { seed: 12, numRuns: 60 },
  )
})

async function threeEntries(): Promise<Uint8Array<ArrayBuffer>> {
  return bytesOf(
    await packEntries([
      { path: 'project.json', content: '{}' },
      { path: 'meshes/a', content: blobOf(noise(4000, 1)) },
      { path: 'meshes/b', content: blobOf(noise(4000, 2)) },
    ]),
  )
}

test('a damaged entry is named and the others come out', async () => {
  const bytes = await threeEntries()
  bytes[2000] = (bytes[2000] ?? 0) ^ 0xff
  const { entries } = await unpackEntries(bytes, 'x')
  expect(entries.map((entry) => [entry.path, entry.ok])).toEqual([
    ['project.json', true],
    ['meshes/a', false],
    ['meshes/b', true],
  ])
})

test('an archive cut off within its last entry still gives the ones before', async () => {
  const bytes = await threeEntries()
  const { entries, cutShort } = await unpackEntries(bytes.slice(0, 6000), 'x')
  expect(cutShort).toBe(true)
  expect(entries.map((entry) => [entry.path, entry.ok])).toEqual([
    ['project.json', true],
    ['meshes/a', true],
    ['meshes/b', false],
  ])
})

test('something that is no archive is refused', async () => {
  await expect(unpackEntries(noise(100, 3), 'x.preweigh')).rejects.toThrow('x.preweigh')
})

test('a project file is told by what is in it, wherever that stands, also when cut short', async () => {
  const ours = await threeEntries()
  expect(isProject(ours)).toBe(true)
  expect(isProject(ours.slice(0, 300))).toBe(true)
  expect(isProject(zipSync({ 'a.stl': noise(9, 4), 'project.json': strToU8('{}') }))).toBe(true)
  expect(isProject(zipSync({ 'a.stl': noise(9, 4), 'x/project.json': strToU8('{}') }))).toBe(false)
  expect(isProject(noise(100, 5))).toBe(false)
  expect(isProject(new Uint8Array(0))).toBe(false)
})
