import { Inflate, inflateSync, strFromU8 } from 'fflate'
import { PreweighError } from '../model/problem.ts'
import { MAX_DEFLATE_RATIO, MAX_UNPACKED_BYTES } from './limits.ts'
import { counted, grouped } from '../words/counts.ts'
import { refuse } from './refuse.ts'

/**
 * One file in a ZIP, as its central directory tells it (PKWARE, .ZIP File Format Specification 6.3,
 * sections 4.3–4.5).
 */
export interface ZipEntry {
  /** Path with forward slashes and none in front. */
  readonly path: string
  readonly method: number
  readonly encrypted: boolean
  readonly crc: number
  readonly packedBytes: number
  readonly unpackedBytes: number
  /** Byte offset of the entry's local header. */
  readonly headerAt: number
}

/** Bytes that may still be unpacked from one archive; every entry draws on it. */
export interface UnpackBudget {
  left: number
}

const LOCAL = 0x04034b50
const CENTRAL = 0x02014b50
const END = 0x06054b50
const END_64 = 0x06064b50
const LOCATOR_64 = 0x07064b50
const END_BYTES = 22
const MAX_COMMENT = 0xffff
/**
 * Compressed bytes handed to the inflater at a time: an entry that lies about its size is caught
 * within 16 MB.
 */
const STEP = 16 * 1024

const DAMAGED = 'The archive is damaged or was cut off: copy, download or pack it again.'

/** Begins as a ZIP with at least one entry does. */
export function isZip(bytes: Uint8Array): boolean {
  return bytes.length >= 4 && viewOf(bytes).getUint32(0, true) === LOCAL
}

/** A ZIP with no entry has its end alone. */
export function isEmptyZip(bytes: Uint8Array): boolean {
  return bytes.length >= END_BYTES && viewOf(bytes).getUint32(0, true) === END
}

export function newBudget(): UnpackBudget {
  return { left: MAX_UNPACKED_BYTES }
}

/** The archive's files, folders left out, in the order of its directory. Throws `bad-archive`. */
export function listEntries(bytes: Uint8Array, name: string): readonly ZipEntry[] {
  const view = viewOf(bytes)
  const directory = findDirectory(view, name)
  const entries: ZipEntry[] = []
  let at = directory.at
  for (let i = 0; i < directory.count; i++) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== CENTRAL) {
      refuse(
        name,
        'bad-archive',
        `Entry ${grouped(i + 1)} of ${grouped(directory.count)} of its directory is not at byte ${grouped(at)}.`,
        DAMAGED,
      )
    }
    const pathBytes = view.getUint16(at + 28, true)
    const extraBytes = view.getUint16(at + 30, true)
    const extraAt = at + 46 + pathBytes
    let unpackedBytes = view.getUint32(at + 24, true)
    let packedBytes = view.getUint32(at + 20, true)
    let headerAt = view.getUint32(at + 42, true)
    // ZIP64 puts a field that does not fit 32 bits into an extra record, in this order.
    const wide = wideFields(view, extraAt, Math.min(extraAt + extraBytes, bytes.length))
    if (unpackedBytes === 0xffffffff) unpackedBytes = wide.shift() ?? unpackedBytes
    if (packedBytes === 0xffffffff) packedBytes = wide.shift() ?? packedBytes
    if (headerAt === 0xffffffff) headerAt = wide.shift() ?? headerAt
    const path = strFromU8(bytes.subarray(at + 46, extraAt))
      .replaceAll('\\', '/')
      .replace(/^\/+/, '')
    if (path !== '' && !path.endsWith('/')) {
      entries.push({
        path,
        method: view.getUint16(at + 10, true),
        encrypted: (view.getUint16(at + 8, true) & 1) !== 0,
        crc: view.getUint32(at + 16, true),
        packedBytes,
        unpackedBytes,
        headerAt,
      })
    }
    at = extraAt + extraBytes + view.getUint16(at + 32, true)
  }
  return entries
}

/**
 * Unpacks one entry and checks its length and its checksum. Throws `too-large` before unpacking
 * more than the budget, `bad-archive` for damage, passwords and other methods.
 */
export function unpackEntry(
  bytes: Uint8Array,
  entry: ZipEntry,
  budget: UnpackBudget,
  name: string,
): Uint8Array {
  if (entry.encrypted) {
    refuse(
      name,
      'bad-archive',
      `"${entry.path}" is locked with a password.`,
      'Unpack it yourself and drop the meshes.',
    )
  }
  if (entry.method !== 0 && entry.method !== 8) {
    refuse(
      name,
      'bad-archive',
      `"${entry.path}" is packed with method ${entry.method}; only 0 (stored) and 8 (deflate) are read.`,
      'Pack it again as a plain ZIP.',
    )
  }
  if (entry.unpackedBytes > budget.left) {
    refuse(
      name,
      'too-large',
      `"${entry.path}" unpacks to ${counted(entry.unpackedBytes, 'byte')}, ` +
        `and ${grouped(budget.left)} of ${grouped(MAX_UNPACKED_BYTES)} are left for this archive.`,
      'Drop the meshes in several smaller archives, or export them with a coarser mesh.',
    )
  }
  const view = viewOf(bytes)
  const { headerAt } = entry
  if (headerAt + 30 > bytes.length || view.getUint32(headerAt, true) !== LOCAL) {
    refuse(name, 'bad-archive', `"${entry.path}" is not at byte ${grouped(headerAt)}.`, DAMAGED)
  }
  const start =
    headerAt + 30 + view.getUint16(headerAt + 26, true) + view.getUint16(headerAt + 28, true)
  if (start + entry.packedBytes > bytes.length) {
    refuse(
      name,
      'bad-archive',
      `"${entry.path}" should end at byte ${grouped(start + entry.packedBytes)}, and the file ends at ` +
        `${grouped(bytes.length)}.`,
      DAMAGED,
    )
  }
  const packed = bytes.subarray(start, start + entry.packedBytes)
  const unpacked = entry.method === 0 ? packed : inflate(packed, entry, name)
  if (unpacked.length !== entry.unpackedBytes) refuseLength(entry, unpacked.length, name)
  if (checksum(unpacked) !== entry.crc) {
    refuse(name, 'bad-archive', `"${entry.path}" does not match its checksum.`, DAMAGED)
  }
  budget.left -= unpacked.length
  return unpacked
}

function inflate(packed: Uint8Array, entry: ZipEntry, name: string): Uint8Array {
  if (entry.unpackedBytes > MAX_DEFLATE_RATIO * packed.length + 64) {
    refuse(
      name,
      'bad-archive',
      `"${entry.path}" claims to unpack from ${counted(packed.length, 'byte')} to ` +
        `${grouped(entry.unpackedBytes)}, which no compression does.`,
      DAMAGED,
    )
  }
  try {
    if (packed.length > STEP) return inflateInSteps(packed, entry, name)
    // One byte of room more than promised shows an entry that gives too much. The stepwise inflater
    // moves a 128 kB buffer about for every part: a small package takes it 0.25 ms, this way 0.1
    // ms.
    return inflateSync(packed, { out: new Uint8Array(entry.unpackedBytes + 1) })
  } catch (error) {
    if (error instanceof PreweighError) throw error
    refuse(
      name,
      'bad-archive',
      `"${entry.path}" cannot be unpacked: ${error instanceof Error ? error.message : 'unknown cause'}.`,
      DAMAGED,
    )
  }
}

function inflateInSteps(packed: Uint8Array, entry: ZipEntry, name: string): Uint8Array {
  const unpacked = new Uint8Array(entry.unpackedBytes)
  let length = 0
  const inflater = new Inflate((chunk) => {
    if (length + chunk.length > unpacked.length) refuseLength(entry, length + chunk.length, name)
    unpacked.set(chunk, length)
    length += chunk.length
  })
  for (let at = 0; at < packed.length; at += STEP) {
    inflater.push(packed.subarray(at, at + STEP), at + STEP >= packed.length)
  }
  return unpacked.subarray(0, length)
}

function refuseLength(entry: ZipEntry, length: number, name: string): never {
  refuse(
    name,
    'bad-archive',
    `"${entry.path}" should unpack to ${counted(entry.unpackedBytes, 'byte')} and gives ` +
      `${grouped(length)}${length > entry.unpackedBytes ? ' or more' : ''}.`,
    DAMAGED,
  )
}

/**
 * Where the central directory begins and how many entries it holds, from the record at the
 * archive's end.
 */
function findDirectory(view: DataView, name: string): { at: number; count: number } {
  const last = view.byteLength - END_BYTES
  for (let at = last; at >= Math.max(0, last - MAX_COMMENT); at--) {
    if (view.getUint32(at, true) !== END) continue
    const count = view.getUint16(at + 10, true)
    const directoryAt = view.getUint32(at + 16, true)
    if (count !== 0xffff && directoryAt !== 0xffffffff) return { at: directoryAt, count }
    if (at >= 20 && view.getUint32(at - 20, true) === LOCATOR_64) {
      const wideAt = Number(view.getBigUint64(at - 12, true))
      if (wideAt + 56 <= view.byteLength && view.getUint32(wideAt, true) === END_64) {
        return {
          at: Number(view.getBigUint64(wideAt + 48, true)),
          count: Number(view.getBigUint64(wideAt + 32, true)),
        }
      }
    }
    return { at: directoryAt, count }
  }
  refuse(
    name,
    'bad-archive',
    `It is a ZIP of ${counted(view.byteLength, 'byte')} without the directory that should stand at its end.`,
    DAMAGED,
  )
}

function wideFields(view: DataView, start: number, end: number): number[] {
  const fields: number[] = []
  for (let at = start; at + 4 <= end; at += 4 + view.getUint16(at + 2, true)) {
    if (view.getUint16(at, true) !== 1) continue
    const stop = Math.min(at + 4 + view.getUint16(at + 2, true), end)
    for (let k = at + 4; k + 8 <= stop; k += 8) fields.push(Number(view.getBigUint64(k, true)))
    break
  }
  return fields
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1
  return c
})

/** CRC-32 as ZIP uses it (polynomial 0xEDB88320; ISO/IEC 8802-3). */
function checksum(bytes: Uint8Array): number {
  let crc = 0xffffffff
  for (let i = 0; i < bytes.length; i++) crc = CRC_TABLE[(crc ^ bytes[i]!) & 0xff]! ^ (crc >>> 8)
  return (crc ^ 0xffffffff) >>> 0
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
}
