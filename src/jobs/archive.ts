import { zipSync, type Zippable } from 'fflate'
import { isZip, listEntries, unpackEntry, type ZipEntry } from '../core/formats/zip.ts'
import { PreweighError } from '../core/model/problem.ts'
import { hashBytes } from './hash.ts'
import { PROJECT_ENTRY } from './projectMark.ts'
import type { PackEntry, UnpackAnswer, UnpackedEntry } from './asks/fileAsks.ts'

const LOCAL = 0x04034b50
const LOCAL_BYTES = 30
/** Most bytes one project file may unpack to. */
const MAX_PROJECT_BYTES = 2 ** 31
/**
 * Light: binary meshes shrink to about half at any level, and a higher one costs seconds (level 6
 * of deflate is the usual).
 */
const LEVEL = 3

/** Packs entries into one ZIP, in their order. */
export async function packEntries(entries: readonly PackEntry[]): Promise<Blob> {
  const files: Zippable = {}
  for (const { path, content } of entries) {
    const blob = typeof content === 'string' ? new Blob([content]) : content
    const bytes = new Uint8Array(await blob.arrayBuffer())
    // A 3MF is packed already.
    files[path] = [bytes, { level: isZip(bytes) ? 0 : LEVEL }]
  }
  return new Blob([zipSync(files)], { type: 'application/zip' })
}

/**
 * Unpacks everything that is sound; a damaged entry is told and the others go on. Throws when it is
 * no ZIP at all.
 */
export async function unpackEntries(
  bytes: Uint8Array<ArrayBuffer>,
  name: string,
): Promise<UnpackAnswer> {
  const { listed, cutShort } = listOrWalk(bytes, name)
  const budget = { left: MAX_PROJECT_BYTES }
  const entries: UnpackedEntry[] = []
  for (const entry of listed) {
    const { path } = entry
    try {
      const unpacked = unpackEntry(bytes, entry, budget, name) as Uint8Array<ArrayBuffer>
      entries.push({ ok: true, path, blob: new Blob([unpacked]), hash: await hashBytes(unpacked) })
    } catch (error) {
      if (!(error instanceof PreweighError)) throw error
      entries.push({ ok: false, path, reason: `is damaged: ${error.problem.message}` })
    }
  }
  return { entries, cutShort }
}

/** Whether a file is one of our project files, by its content. */
export function isProject(bytes: Uint8Array): boolean {
  if (!isZip(bytes)) return false
  // Ours begin with it, so this holds for one cut short too.
  if (walkEntries(bytes, 1)[0]?.path === PROJECT_ENTRY) return true
  try {
    return listEntries(bytes, '').some((entry) => entry.path === PROJECT_ENTRY)
  } catch {
    return false
  }
}

function listOrWalk(
  bytes: Uint8Array,
  name: string,
): { listed: readonly ZipEntry[]; cutShort: boolean } {
  try {
    return { listed: listEntries(bytes, name), cutShort: false }
  } catch (error) {
    const listed = isZip(bytes) ? walkEntries(bytes) : []
    if (listed.length === 0) throw error
    return { listed, cutShort: true }
  }
}

/**
 * Entries from the headers in front of each, for an archive whose table of contents at the end is
 * gone. Stops where sizes are not stated in front (PKWARE .ZIP specification 6.3, section 4.3.9).
 */
function walkEntries(bytes: Uint8Array, most = Infinity): readonly ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const found: ZipEntry[] = []
  let at = 0
  while (found.length < most && at + LOCAL_BYTES <= bytes.length) {
    if (view.getUint32(at, true) !== LOCAL) break
    const flags = view.getUint16(at + 6, true)
    const pathEnd = at + LOCAL_BYTES + view.getUint16(at + 26, true)
    const packedBytes = view.getUint32(at + 18, true)
    if (pathEnd > bytes.length || (flags & 8) !== 0) break
    found.push({
      path: new TextDecoder().decode(bytes.subarray(at + LOCAL_BYTES, pathEnd)),
      method: view.getUint16(at + 8, true),
      encrypted: (flags & 1) !== 0,
      crc: view.getUint32(at + 14, true),
      packedBytes,
      unpackedBytes: view.getUint32(at + 22, true),
      headerAt: at,
    })
    at = pathEnd + view.getUint16(at + 28, true) + packedBytes
  }
  return found
}
