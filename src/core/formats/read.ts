import type { ReadMesh } from '../model/mesh.ts'
import { looksLikeObj, readObj } from './obj.ts'
import { isOtherFormat, refuseUnknown } from './unknown.ts'
import { looksLikeStlAscii, readStlAscii } from './stlAscii.ts'
import { isExactStlBinary, looksLikeStlBinary, readStlBinary } from './stlBinary.ts'
import { looksLike3mf, read3mf } from './threemf.ts'

/**
 * Reads a mesh file of any known format. The content decides which; the name serves messages and,
 * where nothing is recognised, a guess at what the file was meant to be.
 *
 * Returns vertices welded by exact position, in the file's own unit. Throws `PreweighError` and
 * nothing else.
 */
export function readMesh(bytes: Uint8Array, name: string): ReadMesh {
  // The exact size is the one proof that text cannot fake, so it goes first: binary headers may say
  // "solid".
  if (isExactStlBinary(bytes)) return readStlBinary(bytes, name)
  if (looksLike3mf(bytes)) return read3mf(bytes, name)
  if (looksLikeStlAscii(bytes)) return readStlAscii(bytes, name)
  if (looksLikeObj(bytes)) return readObj(bytes, name)
  // Without the exact size any binary with tame numbers could pass, so known others are ruled out
  // first.
  if (!isOtherFormat(bytes) && looksLikeStlBinary(bytes)) return readStlBinary(bytes, name)
  refuseUnknown(bytes, name)
}

/** Whether the content is a mesh that `readMesh` would try to read. */
export function looksLikeMesh(bytes: Uint8Array): boolean {
  return (
    (!isOtherFormat(bytes) && looksLikeStlBinary(bytes)) ||
    looksLike3mf(bytes) ||
    looksLikeStlAscii(bytes) ||
    looksLikeObj(bytes)
  )
}
