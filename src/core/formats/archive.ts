import { PreweighError } from '../model/problem.ts'
import type { Problem } from '../model/problem.ts'
import { looksLikeMesh } from './read.ts'
import { counted } from '../words/counts.ts'
import { refuse } from './refuse.ts'
import { looksLike3mf } from './threemf.ts'
import { isZip, listEntries, newBudget, unpackEntry } from './zip.ts'
import type { ZipEntry } from './zip.ts'
import { isNamedProject, spoiltProject } from './unknown.ts'

/** A mesh file, found in an archive or given by itself. */
export interface MeshFile {
  /** Path inside the archive, or the given name. */
  readonly name: string
  readonly bytes: Uint8Array
  /**
   * Why the archive's entry could not be unpacked; `bytes` is empty then. Absent for a sound one.
   */
  readonly problem?: Problem
}

const MESH_NAME = /\.(stl|obj|3mf)$/i
/**
 * Folders and files that systems add to archives on their own; a path that starts with `./` or
 * `../` is none.
 */
const CLUTTER = /(^|\/)(__macosx\/|\.(?!\.?\/)|thumbs\.db$|desktop\.ini$)/i

/**
 * The mesh files in a ZIP, by their names, or by their content where no name tells. Anything that
 * is not a ZIP of meshes, a 3MF too, yields itself. An entry that cannot be unpacked is yielded
 * with its problem; the others go on. Throws `bad-archive` where the archive is broken or holds no
 * mesh, `bad-project` for a saved frame that is.
 */
export function listMeshFiles(bytes: Uint8Array, name: string): readonly MeshFile[] {
  if (!isZip(bytes) || looksLike3mf(bytes)) {
    if (isNamedProject(name) && !looksLikeMesh(bytes)) throw spoilt(bytes, name)
    return [{ name, bytes }]
  }
  const entries = listSound(bytes, name).filter(({ path }) => !CLUTTER.test(path))
  const named = entries.filter(({ path }) => MESH_NAME.test(path))
  const budget = newBudget()
  const unpack = (entry: ZipEntry): MeshFile => {
    try {
      return { name: entry.path, bytes: unpackEntry(bytes, entry, budget, name) }
    } catch (error) {
      if (!(error instanceof PreweighError)) throw error
      return { name: entry.path, bytes: new Uint8Array(0), problem: error.problem }
    }
  }
  if (named.length > 0) return named.map(unpack)
  const meshes = entries.map(unpack).filter((file) => looksLikeMesh(file.bytes))
  if (meshes.length === 0) {
    refuse(
      name,
      'bad-archive',
      `It is a ZIP with ${counted(entries.length, 'file')}, and none is an STL, OBJ or 3MF.`,
      'Pack the meshes themselves; an archive inside an archive is not opened.',
    )
  }
  return meshes
}

/** A saved frame is a ZIP too. */
function listSound(bytes: Uint8Array, name: string): readonly ZipEntry[] {
  try {
    return listEntries(bytes, name)
  } catch (error) {
    if (isNamedProject(name)) throw spoilt(bytes, name)
    throw error
  }
}

function spoilt(bytes: Uint8Array, name: string): PreweighError {
  const { code, message, advice } = spoiltProject(bytes, name)
  return new PreweighError(code, message, advice)
}
