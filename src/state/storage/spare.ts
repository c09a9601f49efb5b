import type { Frame } from '../../core/model/frame.ts'
import { hashBytes } from '../../jobs/hash.ts'
import type { Workshop } from '../store/workshop.ts'
import { hashesIn } from './hashesIn.ts'

/** A second copy of every project, apart from the database. Each method may reject. */
export interface Spare {
  /** Every frame that can be read, unchecked; the one changed last comes last. */
  frames(): Promise<readonly unknown[]>
  /** Null when it is not there or its bytes are not those of the hash. */
  mesh(hash: string): Promise<Blob | null>
  has(projectId: string): Promise<boolean>
  /** The workshop, unchecked; null when it is not there or cannot be read. */
  workshop(): Promise<unknown>
  keepWorkshop(workshop: Workshop): Promise<void>
  /** Meshes that are not here yet are asked for. */
  keep(frame: Frame, loadMesh: (hash: string) => Promise<Blob | null>): Promise<void>
  /** Throws out all but these. */
  keepOnly(projectIds: ReadonlySet<string>, hashes: ReadonlySet<string>): Promise<void>
}

const WORKSHOP_FILE = 'current.json'

/**
 * The copy as files in a folder that belongs to this page alone (the browser’s private file
 * system).
 */
export function createFolderSpare(openRoot: () => Promise<FileSystemDirectoryHandle>): Spare {
  const folder = async (name: 'frames' | 'meshes' | 'workshop') =>
    (await openRoot()).getDirectoryHandle(name, { create: true })
  const fileOf = (projectId: string) => `${encodeURIComponent(projectId)}.json`

  async function read(where: FileSystemDirectoryHandle, name: string): Promise<File | null> {
    try {
      return await (await where.getFileHandle(name)).getFile()
    } catch {
      return null
    }
  }

  async function write(where: FileSystemDirectoryHandle, name: string, content: Blob | string) {
    const handle = await where.getFileHandle(name, { create: true })
    // Written beside the old file and put in its place when whole.
    const writing = await handle.createWritable()
    await writing.write(content)
    await writing.close()
  }

  async function namesIn(where: FileSystemDirectoryHandle): Promise<readonly string[]> {
    const names: string[] = []
    for await (const name of where.keys()) names.push(name)
    return names
  }

  async function drop(where: FileSystemDirectoryHandle, kept: ReadonlySet<string>): Promise<void> {
    for (const name of await namesIn(where)) if (!kept.has(name)) await where.removeEntry(name)
  }

  return {
    async workshop() {
      const file = await read(await folder('workshop'), WORKSHOP_FILE)
      try {
        return file === null ? null : (JSON.parse(await file.text()) as unknown)
      } catch {
        return null
      }
    },
    async keepWorkshop(workshop) {
      await write(await folder('workshop'), WORKSHOP_FILE, JSON.stringify(workshop))
    },
    async frames() {
      const where = await folder('frames')
      const reading = (await namesIn(where)).map((name) => read(where, name))
      const files = (await Promise.all(reading)).filter((file) => file !== null)
      const texts = await Promise.all(
        files.toSorted((a, b) => a.lastModified - b.lastModified).map((file) => file.text()),
      )
      return texts.flatMap((text): unknown[] => {
        try {
          return [JSON.parse(text)]
        } catch {
          // Cut off while it was written for the first time.
          return []
        }
      })
    },
    async mesh(hash) {
      const file = await read(await folder('meshes'), hash)
      if (file === null) return null
      const bytes = new Uint8Array(await file.arrayBuffer())
      return (await hashBytes(bytes)) === hash ? new Blob([bytes]) : null
    },
    async has(projectId) {
      return (await read(await folder('frames'), fileOf(projectId))) !== null
    },
    async keep(frame, loadMesh) {
      const meshes = await folder('meshes')
      for (const hash of new Set(hashesIn(frame))) {
        const here = await read(meshes, hash)
        const mesh = here === null || here.size === 0 ? await loadMesh(hash) : null
        if (mesh !== null) await write(meshes, hash, mesh)
      }
      await write(await folder('frames'), fileOf(frame.id), JSON.stringify(frame))
    },
    async keepOnly(projectIds, hashes) {
      await drop(await folder('frames'), new Set([...projectIds].map(fileOf)))
      await drop(await folder('meshes'), hashes)
    },
  }
}
