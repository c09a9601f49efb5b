import { strFromU8 } from 'fflate'

/**
 * Text to be read byte by byte. UTF-16 is narrowed first, so that one reader serves every encoding.
 */
export interface Text {
  /**
   * One byte a character where the file is UTF-16 (characters beyond ASCII become '?'), else the
   * file's own bytes.
   */
  readonly bytes: Uint8Array
  /** Byte offset in the file of the text at `at`. */
  readonly byteAt: (at: number) => number
  /** Where the text begins: after a byte order mark. */
  readonly start: number
}

/** A place in a text; the readers move `at` forward. */
export interface Cursor {
  readonly bytes: Uint8Array
  at: number
}

const SPACE = 0x20
const TAB = 0x09
export const LINE_FEED = 0x0a
export const RETURN = 0x0d

/** How many bytes are looked at to tell text from binary. */
const PROBE_BYTES = 1024

/**
 * The file as text, or null where its first bytes are not text in UTF-8, UTF-16 or an 8-bit code
 * page.
 */
export function decodeText(bytes: Uint8Array): Text | null {
  const wide = wideOrder(bytes)
  if (wide !== null) return narrow(bytes, wide.littleEndian, wide.start)
  const start = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0
  const end = Math.min(bytes.length, PROBE_BYTES)
  for (let at = start; at < end; at++) {
    const byte = bytes[at]!
    // Below the space only tab to return (9–13) and the old end-of-file mark (26) occur in text.
    if (byte < SPACE && (byte < TAB || byte > RETURN) && byte !== 0x1a) return null
  }
  return { bytes, start, byteAt: (at) => at }
}

/** UTF-16 shows itself by its mark or by every other byte of plain text being zero. */
function wideOrder(bytes: Uint8Array): { littleEndian: boolean; start: number } | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { littleEndian: true, start: 2 }
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { littleEndian: false, start: 2 }
  const end = Math.min(bytes.length & ~1, 32)
  if (end < 8) return null
  let even = 0
  let odd = 0
  for (let at = 0; at < end; at += 2) {
    if (bytes[at] === 0) even++
    if (bytes[at + 1] === 0) odd++
  }
  if (odd === end / 2 && even === 0) return { littleEndian: true, start: 0 }
  if (even === end / 2 && odd === 0) return { littleEndian: false, start: 0 }
  return null
}

function narrow(bytes: Uint8Array, littleEndian: boolean, start: number): Text {
  const characters = (bytes.length - start) >> 1
  const narrowed = new Uint8Array(characters)
  const low = littleEndian ? 0 : 1
  for (let i = 0; i < characters; i++) {
    const at = start + 2 * i
    const code = bytes[at + low]!
    narrowed[i] = bytes[at + 1 - low] !== 0 || code > 0x7f ? 0x3f : code
  }
  return { bytes: narrowed, start: 0, byteAt: (at) => start + 2 * at }
}

/** Space, tab, any line end, form feed, vertical tab, NUL and the old end-of-file mark. */
export function isBlank(byte: number | undefined): boolean {
  return (
    byte === SPACE ||
    (byte !== undefined && byte <= RETURN && byte >= TAB) ||
    byte === 0 ||
    byte === 0x1a
  )
}

export function isLineEnd(byte: number | undefined): boolean {
  return byte === LINE_FEED || byte === RETURN
}

/** Whether `word` (lower case ASCII) stands at `at`, in any letter case. */
export function hasWord(bytes: Uint8Array, at: number, word: string): boolean {
  for (let i = 0; i < word.length; i++) {
    const byte = bytes[at + i]
    if (byte === undefined || (byte | 0x20) !== word.charCodeAt(i)) return false
  }
  return true
}

/** Bytes from `start` to `end` as a trimmed string; for names and messages, not for bulk. */
export function textBetween(bytes: Uint8Array, start: number, end: number): string {
  return strFromU8(bytes.subarray(start, end)).trim()
}

/** The word at `at` for a message, cut at 24 characters. */
export function wordAt(bytes: Uint8Array, at: number): string {
  let end = at
  while (end < bytes.length && end < at + 24 && !isBlank(bytes[end])) end++
  return textBetween(bytes, at, end)
}
