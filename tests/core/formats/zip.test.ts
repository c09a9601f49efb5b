import { crc32 } from 'node:zlib'
import { strToU8, zipSync } from 'fflate'
import { expect, test, vi } from 'vitest'
import { listEntries, newBudget, unpackEntry } from '../../../src/core/formats/zip.ts'
import { problemOf } from '../../support/problemOf.ts'
import { seededRandom } from '../../support/random.ts'

// On a busy machine the same work may take the wall clock ten times as long.
vi.setConfig({ testTimeout: 60_000 })

const random = seededRandom(20_254)
const NOISE = Uint8Array.from({ length: 200_000 }, () => Math.floor(random() * 256))
const FILES = {
  'a/plain.txt': strToU8('Ananas '.repeat(20_000)),
  noise: NOISE,
  empty: new Uint8Array(0),
}

test('entries unpack to what was packed, whatever the level', () => {
  for (const level of [0, 1, 6, 9] as const) {
    const zip = zipSync(FILES, { level })
    const budget = newBudget()
    const before = budget.left
    const entries = listEntries(zip, '')
    expect(entries.map(({ path }) => path)).toEqual(Object.keys(FILES))
    for (const entry of entries) {
      const unpacked = unpackEntry(zip, entry, budget, '')
      const packed = FILES[entry.path as keyof typeof FILES]
      expect(Buffer.compare(unpacked, packed), entry.path).toBe(0)
    }
    expect(before - budget.left).toBe(140_000 + 200_000)
  }
})

test('the checksum is CRC-32 as zlib has it', () => {
  // Reference: zlib's crc32, through Node.
  const [entry] = listEntries(zipSync({ noise: NOISE }), '')
  expect(entry?.crc).toBe(crc32(NOISE))
  const zip = zipSync({ noise: NOISE }, { level: 0 })
  expect(Buffer.compare(unpackEntry(zip, listEntries(zip, '')[0]!, newBudget(), ''), NOISE)).toBe(0)
})

test('all entries draw on one budget', () => {
  const zip = zipSync({ a: new Uint8Array(600), b: new Uint8Array(600) })
  const [a, b] = listEntries(zip, '')
  const budget = { left: 1000 }
  expect(unpackEntry(zip, a!, budget, 'two.zip')).toHaveLength(600)
  expect(problemOf(() => unpackEntry(zip, b!, budget, 'two.zip'))).toMatchObject({
    code: 'too-large',
    message: 'two.zip: "b" unpacks to 600 bytes, and 400 of 536,870,912 are left for this archive.',
  })
})

test('sizes and places in ZIP64 fields are read', () => {
  // PKWARE, .ZIP File Format Specification 6.3.x, sections 4.5.3, 4.3.14 and 4.3.15: made by hand
  // from a plain ZIP.
  const plain = zipSync({ 'a.txt': strToU8('hello hello') }, { level: 0 })
  const view = new DataView(plain.buffer)
  const end = plain.length - 22
  const directoryAt = view.getUint32(end + 16, true)
  const entry = plain.slice(directoryAt, directoryAt + 46 + 5)
  const extra = new Uint8Array(28)
  const extraView = new DataView(extra.buffer)
  extraView.setUint16(0, 1, true)
  extraView.setUint16(2, 24, true)
  extraView.setBigUint64(4, 11n, true)
  extraView.setBigUint64(12, 11n, true)
  extraView.setBigUint64(20, 0n, true)
  const entryView = new DataView(entry.buffer)
  entryView.setUint32(20, 0xffff_ffff, true)
  entryView.setUint32(24, 0xffff_ffff, true)
  entryView.setUint16(30, extra.length, true)
  entryView.setUint32(42, 0xffff_ffff, true)
  const tail = new Uint8Array(56 + 20 + 22)
  const tailView = new DataView(tail.buffer)
  const end64At = directoryAt + entry.length + extra.length
  tailView.setUint32(0, 0x06064b50, true)
  tailView.setBigUint64(32, 1n, true)
  tailView.setBigUint64(48, BigInt(directoryAt), true)
  tailView.setUint32(56, 0x07064b50, true)
  tailView.setBigUint64(64, BigInt(end64At), true)
  tailView.setUint32(76, 0x06054b50, true)
  tailView.setUint16(86, 0xffff, true)
  tailView.setUint32(92, 0xffff_ffff, true)
  const wide = Uint8Array.from([...plain.subarray(0, directoryAt), ...entry, ...extra, ...tail])

  const [found] = listEntries(wide, '')
  expect(found).toMatchObject({ path: 'a.txt', packedBytes: 11, unpackedBytes: 11, headerAt: 0 })
  expect(unpackEntry(wide, found!, newBudget(), '')).toEqual(strToU8('hello hello'))
})
