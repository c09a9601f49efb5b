import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'

import type { TypedLoads } from '../core/aircraft/twin/loadOf.ts'
import type { Frame, Part } from '../core/model/frame.ts'
import type { Outcome, Problem } from '../core/model/problem.ts'
import { PreweighError } from '../core/model/problem.ts'
import { looksLikeMesh } from '../core/formats/read.ts'
import { looksLike3mf } from '../core/formats/threemf.ts'
import { isNamedProject, spoiltProject } from '../core/formats/unknown.ts'
import { isZip } from '../core/formats/zip.ts'
import { isProject, unpackEntries } from '../jobs/archive.ts'
import { hashBytes } from '../jobs/hash.ts'
import { demoFrame, demoPart } from '../state/actions/demoFrame.ts'
import type { DemoId } from '../state/actions/demos.ts'
import { createDemoSource } from '../state/actions/demos.ts'
import { emptyFrame } from '../state/store/emptyFrame.ts'
import { EMPTY_WORKSHOP, mineOf } from '../state/store/workshop.ts'
import { newPart } from '../state/actions/intake.ts'
import { readProject } from '../state/storage/projectFile.ts'
import { whyUnread } from './whyUnread.ts'

/** A frame with the bytes of its meshes, by hash. */
export interface LoadedFrame {
  readonly frame: Frame
  readonly meshes: ReadonlyMap<string, Uint8Array>
  /** What could not be read, each in a sentence. */
  readonly complaints: readonly string[]
  /** How parts are held and pushed, where somebody says so; a file does not. */
  readonly loads?: TypedLoads
}

const DEMOS: Readonly<Record<string, DemoId>> = {
  demo: 'sandpiper',
  sandpiper: 'sandpiper',
  tern: 'tern',
}
const PUBLIC = new URL('../../public/', import.meta.url).href

/**
 * Loads a demo by its id or a project file by its path, which counts from `base`. `locale` decides
 * the currency of a demo. Never rejects for what is wrong with the file.
 */
export function loadFrame(
  name: string,
  base: string,
  locale: string,
): Promise<Outcome<LoadedFrame>> {
  const demo = Object.hasOwn(DEMOS, name) ? DEMOS[name] : undefined
  return demo === undefined ? loadProject(name, resolve(base, name)) : loadDemo(demo, locale)
}

async function loadProject(name: string, path: string): Promise<Outcome<LoadedFrame>> {
  let bytes: Uint8Array<ArrayBuffer>
  try {
    bytes = Uint8Array.from(await readFile(path))
  } catch (error) {
    return { ok: false, problem: unreadable(name, whyUnread(error, path)) }
  }
  if (!isProject(bytes)) return { ok: false, problem: noProject(name, bytes) }
  try {
    const read = await readProject(await unpackEntries(bytes, name))
    if (!read.ok) return read
    const { frame, complaints } = read.value
    const meshes = new Map<string, Uint8Array>()
    for (const { hash, blob } of read.value.meshes) meshes.set(hash, await bytesOf(blob))
    return { ok: true, value: { frame, meshes, complaints } }
  } catch (error) {
    if (error instanceof PreweighError) return { ok: false, problem: error.problem }
    throw error
  }
}

async function loadDemo(id: DemoId, locale: string): Promise<Outcome<LoadedFrame>> {
  const source = createDemoSource(PUBLIC, async (input) => {
    const url = new URL(input instanceof Request ? input.url : input)
    return new Response(Uint8Array.from(await readFile(url)))
  })
  const loaded = await source.load(id)
  if (!loaded.ok) return loaded
  const demo = loaded.value
  const meshes = new Map<string, Uint8Array>()
  const parts: Part[] = []
  for (const [index, each] of demo.parts.entries()) {
    const bytes = await bytesOf(each.file.blob)
    const hash = await hashBytes(bytes)
    meshes.set(hash, bytes)
    const opened = {
      ok: true,
      source: { hash, name: each.file.name, blob: each.file.blob },
      unit: null,
      raw: { volumeMm3: 0, areaMm2: 0 },
    } as const
    parts.push(demoPart(newPart(`part-${index + 1}`, opened, new Set()), each))
  }
  const blank = emptyFrame(id, mineOf(EMPTY_WORKSHOP, locale))
  return { ok: true, value: { frame: demoFrame(blank, demo, parts), meshes, complaints: [] } }
}

async function bytesOf(blob: Blob): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await blob.arrayBuffer())
}

function noProject(name: string, bytes: Uint8Array): Problem {
  if (bytes.length > 0 && isNamedProject(name)) return spoiltProject(bytes, name)
  // A ZIP of anything can pass for a binary STL.
  const isMesh = isZip(bytes) ? looksLike3mf(bytes) : looksLikeMesh(bytes)
  const what = isMesh ? 'a mesh' : bytes.length === 0 ? 'empty' : 'something else'
  return {
    code: 'bad-project',
    message: `“${name}” is ${what}, not a frame saved by the page.`,
    advice: isMesh
      ? 'Price it without --frame, or open it in the page and save the project there.'
      : 'Name a project file saved by the page, or one of demo, sandpiper and tern.',
  }
}

function unreadable(name: string, reason: string): Problem {
  return {
    code: 'unreadable-file',
    message: `The frame “${name}” could not be read: ${reason}.`,
    advice: 'Name a project file saved by the page, or one of demo, sandpiper and tern.',
  }
}
