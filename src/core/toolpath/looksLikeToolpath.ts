import { strFromU8 } from 'fflate'

/** A line that moves the head to somewhere, as ISO 6983 writes it. */
const MOVE = /^[ \t]*(?:N\d+[ \t]*)?G0*[0-3][ \t]*(?:[XYZEF][-+.\d]+[ \t]*)+(?:[;(*]|\r?$)/im

/**
 * Whether bytes are the start of a printer's toolpath: text, and a line of it a move. Pictures may
 * stand before the first move as comments, so give some hundred kilobytes.
 */
export function looksLikeToolpath(start: Uint8Array): boolean {
  if (start.includes(0)) return false
  return MOVE.test(strFromU8(start, true))
}
