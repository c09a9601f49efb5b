import { breach } from './breach.ts'
import { counted } from '../words/counts.ts'
import { refuse } from './refuse.ts'
import { readModelPart } from './threemfModel.ts'
import type { ModelPart } from './threemfModel.ts'
import { readXml } from './xml.ts'
import { listEntries, newBudget, unpackEntry } from './zip.ts'

/** The model parts of one 3MF package, read when they are asked for. */
export interface ModelPackage {
  /** Path of the start part, as it stands in the archive. */
  readonly rootPath: string
  /**
   * The part at an absolute or relative path, letter case aside. Throws `bad-3mf` where there is
   * none.
   */
  readonly part: (path: string) => ModelPart
  /** What the package lacks although the standard asks for it, and can be done without. */
  readonly lacks: readonly string[]
}

export const ROOT_RELATIONS = '_rels/.rels'
export const CONTENT_TYPES = '[content_types].xml'
/**
 * The relationship type that names a package's start part ends so in every edition of the standard.
 */
const START_PART = '/3dmodel'

/**
 * Opens a package: its root relationships name the start part; without them a lone model part will
 * do.
 */
export function openPackage(bytes: Uint8Array, name: string): ModelPackage {
  const entries = new Map(listEntries(bytes, name).map((entry) => [partKey(entry.path), entry]))
  const budget = newBudget()
  const parts = new Map<string, ModelPart>()

  const unpack = (path: string): Uint8Array => {
    const entry = entries.get(partKey(path))
    if (entry === undefined) {
      refuse(
        name,
        'bad-3mf',
        `It refers to a part "${path}" that is not among the ${counted(entries.size, 'part')} of the package.`,
        breach('parts and relationships'),
      )
    }
    return unpackEntry(bytes, entry, budget, name)
  }

  const lacks: string[] = []
  if (!entries.has(CONTENT_TYPES)) lacks.push('a list of content types')

  const startPart = (): string => {
    if (entries.has(ROOT_RELATIONS)) {
      const target = startTarget(unpack(ROOT_RELATIONS), name)
      if (target !== null) return target
    }
    const models = [...entries.values()].filter(({ path }) => partKey(path).endsWith('.model'))
    const [only] = models
    if (only !== undefined && models.length === 1) {
      lacks.push('a relationship that names its start part (its only model part was taken)')
      return only.path
    }
    refuse(
      name,
      'bad-3mf',
      `Its relationships name no start part, and it has ${counted(models.length, 'model part')}.`,
      breach('parts and relationships'),
    )
  }

  const part = (path: string): ModelPart => {
    const key = partKey(path)
    const known = parts.get(key)
    if (known !== undefined) return known
    const read = readModelPart(unpack(path), path, name)
    parts.set(key, read)
    return read
  }
  return { rootPath: startPart(), part, lacks }
}

/**
 * Part names are compared without letter case (ISO/IEC 29500-2, Open Packaging Conventions, part
 * names).
 */
export function partKey(path: string): string {
  return decodePercent(path).replace(/^\/+/, '').toLowerCase()
}

function decodePercent(path: string): string {
  if (!path.includes('%')) return path
  try {
    return decodeURIComponent(path)
  } catch {
    // Not percent-encoded after all: a name with a plain "%" in it.
    return path
  }
}

function startTarget(relations: Uint8Array, name: string): string | null {
  let target: string | null = null
  readXml(relations, ROOT_RELATIONS, name, () => ({
    open: (tag, attributes) => {
      if (!/(^|:)Relationship$/.test(tag)) return
      if (attributes['Type']?.endsWith(START_PART)) target ??= attributes['Target'] ?? null
    },
    close: () => {},
  }))
  return target
}
