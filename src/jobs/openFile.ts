import { listMeshFiles } from '../core/formats/archive.ts'
import { carryFindings } from '../core/formats/carryFindings.ts'
import { quickMeasure } from '../core/formats/quick.ts'
import { readMesh } from '../core/formats/read.ts'
import { measureMesh } from '../core/mesh/measure.ts'
import { isProject } from './archive.ts'
import { hashBytes } from './hash.ts'
import { readBytes, type MeshShelf } from './meshShelf.ts'
import { isToolpath } from './readToolpath.ts'
import { problemOf } from './problemOf.ts'
import type { OpenAnswer, OpenAsk, OpenedFile } from './asks/fileAsks.ts'

/**
 * First look at a file: each mesh in it hashed and roughly measured. Throws PreweighError when it
 * cannot be opened at all.
 */
export async function openFile(ask: OpenAsk, shelf: MeshShelf): Promise<OpenAnswer> {
  // Before all of it is read: a toolpath may be hundreds of megabytes.
  if (await isToolpath(ask.blob, ask.name)) return { kind: 'toolpath' }
  const bytes = await readBytes(ask.blob, ask.name)
  if (isProject(bytes)) return { kind: 'project' }
  const files: OpenedFile[] = []
  for (const file of listMeshFiles(bytes, ask.name)) {
    if (file.problem !== undefined) {
      files.push({ ok: false, name: file.name, problem: file.problem })
      continue
    }
    // They come from one file's bytes, and those are in an ArrayBuffer.
    const own = file.bytes as Uint8Array<ArrayBuffer>
    // The dropped file itself where it is one mesh: it stays on the disk instead of being copied.
    const isWhole = own.buffer === bytes.buffer && own.length === bytes.length
    const blob = isWhole ? ask.blob : new Blob([own])
    files.push(await look(file.name, own, blob, shelf))
  }
  return { kind: 'meshes', files }
}

async function look(
  name: string,
  bytes: Uint8Array<ArrayBuffer>,
  blob: Blob,
  shelf: MeshShelf,
): Promise<OpenedFile> {
  try {
    const hash = await hashBytes(bytes)
    const source = { hash, name, blob }
    // Binary STL, the common and the large one, is measured without building a mesh. It states no
    // unit.
    const quick = quickMeasure(bytes)
    if (quick !== null) {
      const raw = { volumeMm3: quick.volumeMm3, areaMm2: quick.areaMm2 }
      return { ok: true, source, unit: null, raw }
    }
    const read = readMesh(bytes, name)
    shelf.put(hash, read)
    const { volumeMm3, areaMm2 } = carryFindings(read, name, () => measureMesh(read.mesh, 1))
    return { ok: true, source, unit: read.unit, raw: { volumeMm3, areaMm2 } }
  } catch (error) {
    return { ok: false, name, problem: problemOf(error, name) }
  }
}
