import { weldSoup } from '../model/weld.ts'
import type { Finding, MeshPiece, ReadMesh } from '../model/mesh.ts'
import { addFloats, growingFloats } from './grow.ts'
import { MAX_COORDINATE, MAX_TRIANGLES } from './limits.ts'
import { refuseNumber, scanNumber } from './number.ts'
import { counted, grouped } from '../words/counts.ts'
import { refuse, refuseTooMany } from './refuse.ts'
import { decodeText, hasWord, isBlank, isLineEnd, textBetween, wordAt } from './text.ts'
import type { Cursor } from './text.ts'

type Word =
  'facet' | 'normal' | 'outer' | 'loop' | 'vertex' | 'endloop' | 'endfacet' | 'solid' | 'endsolid'

const WORDS: readonly Word[] = [
  'vertex',
  'endloop',
  'endfacet',
  'facet',
  'normal',
  'outer',
  'loop',
  'solid',
  'endsolid',
]

/** Text whose first word is "solid", in any letter case. */
export function looksLikeStlAscii(bytes: Uint8Array): boolean {
  const text = decodeText(bytes)
  if (text === null) return false
  let at = text.start
  while (at < text.bytes.length && isBlank(text.bytes[at])) at++
  return hasWord(text.bytes, at, 'solid')
}

/**
 * Reads an ASCII STL, one piece per solid; normals are not used, so what they say cannot do harm.
 * Words between facets that belong to no STL are left out with a finding; inside a facet they
 * refuse the file. Throws `truncated`, `no-triangles`, `bad-number`, `not-finite`, `too-large`.
 */
export function readStlAscii(bytes: Uint8Array, name: string): ReadMesh {
  const text = decodeText(bytes) ?? { bytes, start: 0, byteAt: (at: number) => at }
  const cursor: Cursor = { bytes: text.bytes, at: text.start }
  const end = text.bytes.length
  const soup = growingFloats()
  const pieces: MeshPiece[] = []
  let pieceName = ''
  let pieceStart = 0
  let facets = 0
  let closed = true
  let strange = 0
  let firstStrange = 0
  /**
   * Where the reader stands in a facet; 'head' is between `facet` and its loop, 'tail' behind the
   * loop.
   */
  let place: 'outside' | 'head' | 'loop' | 'tail' = 'outside'
  let corners = 0

  const inFacet = () => `in facet ${grouped(facets + 1)}`
  const finishPiece = () => {
    if (facets > pieceStart) {
      pieces.push({
        name: pieceName,
        firstTriangle: pieceStart,
        triangleCount: facets - pieceStart,
      })
    }
    pieceStart = facets
  }

  for (;;) {
    skipBlank(cursor)
    if (cursor.at >= end) break
    const start = cursor.at
    const word = nextWord(cursor)
    // A word that the end of the file cuts short is no wrong word.
    if (word === null && cursor.at >= end && !closed) break
    if (place === 'outside') {
      if (word === 'facet') {
        place = 'head'
        closed = false
      } else if (word === 'solid') {
        finishPiece()
        pieceName = solidName(cursor)
        closed = false
      } else if (word === 'endsolid') {
        finishPiece()
        solidName(cursor)
        closed = true
      } else if (word === null) {
        if (strange++ === 0) firstStrange = start
      } else refuseWord(start)
    } else if (place === 'head') {
      if (word === 'outer') {
        skipBlank(cursor)
        const loopStart = cursor.at
        if (nextWord(cursor) !== 'loop' && cursor.at < end) refuseWord(loopStart)
        place = 'loop'
        corners = 0
      } else if (word !== 'normal' && word !== null) refuseWord(start)
    } else if (place === 'loop') {
      if (word === 'vertex') {
        const x = coordinate()
        const y = coordinate()
        const z = coordinate()
        if (cursor.at > end) break
        if (++corners <= 3) addFloats(soup, x, y, z)
      } else if (word === 'endloop') {
        if (corners !== 3) refuseCorners(start)
        place = 'tail'
      } else refuseWord(start)
    } else if (word === 'endfacet') {
      place = 'outside'
      if (++facets > MAX_TRIANGLES) refuseTooMany(name, facets)
    } else refuseWord(start)
  }
  finishPiece()

  const length = counted(bytes.length, 'byte')
  if (facets === 0) {
    if (place === 'outside') {
      refuse(
        name,
        'no-triangles',
        `It is an STL text of ${length} without a facet.`,
        'Export the part again, as a mesh and with the body selected.',
      )
    }
    refuse(
      name,
      'truncated',
      `It ends after ${length}, within its first facet.`,
      'The file was cut off: copy or export it again.',
    )
  }
  const findings: Finding[] = []
  if (place !== 'outside' || !closed) {
    findings.push({
      code: 'short-count',
      grade: place === 'outside' ? 'worth knowing' : 'changes the grams',
      short: place === 'outside' ? 'may be cut off' : 'cut off',
      message:
        place === 'outside'
          ? `It ends after ${length} and ${counted(facets, 'whole facet')} without "endsolid": ` +
            'it may have been cut off. Copy or export it again if something is missing.'
          : `It ends after ${length} within facet ${grouped(facets + 1)}: ` +
            `the ${counted(facets, 'whole facet')} before were read. The file was cut off: ` +
            'copy or export it again.',
    })
  }
  if (strange > 0) {
    findings.push({
      code: 'skipped-content',
      grade: 'worth knowing',
      short: 'unknown words left out',
      message:
        `${counted(strange, 'word')} between facets ` +
        `${strange === 1 ? 'was left out:' : 'were left out, the first'} ` +
        `"${wordAt(text.bytes, firstStrange)}" at byte ${grouped(text.byteAt(firstStrange))}.`,
      count: strange,
    })
  }
  return {
    format: 'stl-ascii',
    mesh: weldSoup(soup.data.subarray(0, 9 * facets)),
    unit: null,
    pieces,
    findings,
  }

  /** A coordinate, or a cursor beyond the end where the text stops before or within it. */
  function coordinate(): number {
    skipBlank(cursor)
    const start = cursor.at
    const value = start < end ? scanNumber(cursor) : NaN
    if (Math.abs(value) <= MAX_COORDINATE) return value
    cursor.at = start
    if (start < end) nextWord(cursor)
    if (cursor.at < end) refuseNumber(text, start, name, inFacet())
    cursor.at = end + 1
    return NaN
  }

  function refuseCorners(at: number): never {
    refuse(
      name,
      'bad-number',
      `Facet ${grouped(facets + 1)}, which ends at byte ${grouped(text.byteAt(at))}, ` +
        `has ${counted(corners, 'corner')} instead of 3.`,
      'The file is damaged: export it again as triangles.',
    )
  }

  function refuseWord(at: number): never {
    refuse(
      name,
      'bad-number',
      `"${wordAt(text.bytes, at)}" at byte ${grouped(text.byteAt(at))} is out of place ` +
        `${place === 'outside' ? 'between facets' : inFacet()}.`,
      'The file is damaged or was edited by hand: export it again.',
    )
  }
}

function skipBlank(cursor: Cursor): void {
  const { bytes } = cursor
  let at = cursor.at
  while (at < bytes.length && isBlank(bytes[at])) at++
  cursor.at = at
}

/** Moves behind the word at the cursor; null for a word that is not STL's. */
function nextWord(cursor: Cursor): Word | null {
  const { bytes, at } = cursor
  let stop = at
  while (stop < bytes.length && !isBlank(bytes[stop])) stop++
  cursor.at = stop
  for (const word of WORDS) {
    if (word.length === stop - at && hasWord(bytes, at, word)) return word
  }
  return null
}

/** The rest of the line, or up to a `facet normal` on the same line. */
function solidName(cursor: Cursor): string {
  const { bytes } = cursor
  const start = cursor.at
  let at = start
  for (; at < bytes.length && !isLineEnd(bytes[at]); at++) {
    if (!hasWord(bytes, at, 'facet') || !isBlank(bytes[at - 1])) continue
    const next: Cursor = { bytes, at: at + 5 }
    skipBlank(next)
    if (nextWord(next) === 'normal') break
  }
  cursor.at = at
  return textBetween(bytes, start, at)
}
