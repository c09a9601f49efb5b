import { weldSoup } from '../model/weld.ts'
import type { Finding, MeshPiece, ReadMesh } from '../model/mesh.ts'
import { addFloats, addWhole, growingFloats, growingWholes } from './grow.ts'
import type { Growing } from './grow.ts'
import { MAX_COORDINATE, MAX_FACE_CORNERS, MAX_TRIANGLES } from './limits.ts'
import { refuseNumber, scanNumber } from './number.ts'
import { faceEffort, splitFace } from './polygon.ts'
import { counted, grouped } from '../words/counts.ts'
import { refuse, refuseTooMany } from './refuse.ts'
import { decodeText, isBlank, isLineEnd, LINE_FEED, RETURN, textBetween, wordAt } from './text.ts'
import type { Cursor, Text } from './text.ts'

const BACKSLASH = 0x5c
const HASH = 0x23
const SLASH = 0x2f

/** Statements that say nothing about the solid: looks, texture, normals, points, lines. */
const QUIET = new Set(
  'vt vn vp p l s mg mtllib usemtl maplib usemap bevel c_interp d_interp lod shadow_obj trace_obj'.split(
    ' ',
  ),
)
/** Statements of curved surfaces, which are not triangles. */
const CURVED = new Set(
  'cstype deg bmat step curv curv2 surf parm trim hole scrv sp end con ctech stech'.split(' '),
)
const SHAPE = new Set(['v', 'f', 'o', 'g'])

const LETTERS = Array.from({ length: 128 }, (_, code) => String.fromCharCode(code))

/** Text whose first statement, after comments, begins with a word of the OBJ format. */
export function looksLikeObj(bytes: Uint8Array): boolean {
  const text = decodeText(bytes)
  if (text === null) return false
  const cursor: Cursor = { bytes: text.bytes, at: text.start }
  if (!toStatement(cursor)) return false
  const word = nextWord(cursor)
  return SHAPE.has(word) || QUIET.has(word) || CURVED.has(word)
}

/**
 * Reads the polygons of an OBJ, one piece per object or group that has any; textures, normals,
 * points and lines are not used. Faces may come before their vertices. Throws `no-triangles`,
 * `bad-number`, `bad-index`, `not-finite`, `too-large`.
 */
export function readObj(bytes: Uint8Array, name: string): ReadMesh {
  const text = decodeText(bytes) ?? { bytes, start: 0, byteAt: (at: number) => at }
  const cursor: Cursor = { bytes: text.bytes, at: text.start }
  const positions = growingFloats()
  const faces: Faces = { corners: growingWholes(), ends: growingWholes(), starts: growingWholes() }
  const marks: { name: string; face: number }[] = [{ name: '', face: 0 }]
  let curved = 0
  let thin = 0
  let strange = 0
  let firstStrange = 0

  while (toStatement(cursor)) {
    const start = cursor.at
    const word = nextWord(cursor)
    if (word === 'v') {
      const vertex = positions.length / 3 + 1
      const x = coordinate(cursor, text, name, vertex)
      const y = coordinate(cursor, text, name, vertex)
      const z = coordinate(cursor, text, name, vertex)
      addFloats(positions, x, y, z)
    } else if (word === 'f') {
      if (!readFace(cursor, text, name, start, positions.length / 3, faces)) thin++
    } else if (word === 'o' || word === 'g') {
      marks.push({ name: restOfLine(cursor), face: faces.ends.length })
    } else if (CURVED.has(word)) curved++
    else if (!QUIET.has(word) && strange++ === 0) firstStrange = start
    skipLine(cursor)
  }

  const { soup, pieces } = splitFaces(faces, marks, positions, text, name)
  const findings: Finding[] = []
  if (thin > 0) {
    findings.push({
      code: 'skipped-content',
      grade: 'note',
      short: 'faces of two corners left out',
      message:
        `${counted(thin, 'face')} with fewer than 3 corners ` +
        `${thin === 1 ? 'was left out: it encloses' : 'were left out: they enclose'} nothing.`,
      count: thin,
    })
  }
  if (curved > 0) {
    findings.push({
      code: 'skipped-content',
      grade: 'changes the grams',
      short: 'curved surfaces left out',
      message:
        `${counted(curved, 'line')} of curved surfaces ${curved === 1 ? 'was' : 'were'} left out: ` +
        'only flat faces are read. Export the part again as a mesh.',
      count: curved,
    })
  }
  if (strange > 0) {
    findings.push({
      code: 'skipped-content',
      grade: 'worth knowing',
      short: 'unknown lines left out',
      message:
        `${counted(strange, 'line')} with words unknown to OBJ ` +
        `${strange === 1 ? 'was left out:' : 'were left out, the first'} ` +
        `"${wordAt(text.bytes, firstStrange)}" at byte ${grouped(text.byteAt(firstStrange))}.`,
      count: strange,
    })
  }
  return { format: 'obj', mesh: weldSoup(soup), unit: null, pieces, findings }
}

interface Faces {
  /** Vertex numbers from 0, face after face. */
  readonly corners: Growing<Uint32Array>
  /** Where each face's corners end. */
  readonly ends: Growing<Uint32Array>
  /** Where each face's statement begins in the text, for messages. */
  readonly starts: Growing<Uint32Array>
}

/**
 * Adds the face at the cursor; false, with nothing added, where it has fewer than three corners.
 */
function readFace(
  cursor: Cursor,
  text: Text,
  name: string,
  start: number,
  vertices: number,
  faces: Faces,
): boolean {
  const { corners, ends, starts } = faces
  const first = corners.length
  for (;;) {
    skipBlank(cursor)
    const at = cursor.at
    if (isStatementEnd(cursor)) break
    const index = scanIndex(cursor)
    if (Number.isNaN(index)) {
      refuse(
        name,
        'bad-index',
        `A vertex number was expected at byte ${grouped(text.byteAt(at))}, ` +
          `but "${wordAt(text.bytes, at)}" stands there.`,
        'The file is damaged or was edited by hand: export it again.',
      )
    }
    // Numbers count from 1, negative ones back from the newest vertex.
    const vertex = index < 0 ? vertices + index : index - 1
    if (vertex < 0 || vertex > 0xffff_fffe) {
      refuseIndex(name, text, start, index, vertices)
    }
    addWhole(corners, vertex)
  }
  if (corners.length - first < 3) {
    corners.length = first
    return false
  }
  if (corners.length - first > MAX_FACE_CORNERS) {
    refuse(
      name,
      'too-large',
      `The face at byte ${grouped(text.byteAt(start))} has ${grouped(corners.length - first)} corners, ` +
        `and ${grouped(MAX_FACE_CORNERS)} is the most that can be split.`,
      'Export it again as triangles.',
    )
  }
  addWhole(ends, corners.length)
  addWhole(starts, start)
  return true
}

/** Every face as triangles, nine numbers each, and the runs of triangles between two marks. */
function splitFaces(
  faces: Faces,
  marks: readonly { name: string; face: number }[],
  positions: Growing<Float64Array>,
  text: Text,
  name: string,
): { soup: Float64Array; pieces: MeshPiece[] } {
  const { corners, ends, starts } = faces
  const vertices = positions.length / 3
  const triangles = corners.length - 2 * ends.length
  if (triangles === 0) {
    refuse(
      name,
      'no-triangles',
      `It holds ${counted(vertices, 'vertex', 'vertices')} and no face.`,
      'A cloud of points encloses nothing: export the part again as a mesh.',
    )
  }
  if (triangles > MAX_TRIANGLES) refuseTooMany(name, triangles)

  const soup = new Float64Array(9 * triangles)
  const pieces: MeshPiece[] = []
  let filled = 0
  let firstTriangle = 0
  let mark = 0
  const at = positions.data
  const effort = faceEffort()
  const addCorner = (vertex: number) => {
    soup[filled++] = at[3 * vertex]!
    soup[filled++] = at[3 * vertex + 1]!
    soup[filled++] = at[3 * vertex + 2]!
  }
  const addTriangle = (a: number, b: number, c: number) => {
    addCorner(a)
    addCorner(b)
    addCorner(c)
  }
  const finishPiece = () => {
    const triangleCount = filled / 9 - firstTriangle
    if (triangleCount > 0) pieces.push({ name: marks[mark]!.name, firstTriangle, triangleCount })
    firstTriangle = filled / 9
  }
  let from = 0
  for (let face = 0; face < ends.length; face++) {
    while (mark + 1 < marks.length && marks[mark + 1]!.face <= face) {
      finishPiece()
      mark++
    }
    const end = ends.data[face]!
    for (let i = from; i < end; i++) {
      const vertex = corners.data[i]!
      if (vertex >= vertices) refuseIndex(name, text, starts.data[face]!, vertex + 1, vertices)
    }
    if (end - from === 3) {
      addTriangle(corners.data[from]!, corners.data[from + 1]!, corners.data[from + 2]!)
    } else splitFace(at, corners.data.subarray(from, end), effort, addTriangle)
    from = end
  }
  finishPiece()
  return { soup, pieces }
}

function refuseIndex(
  name: string,
  text: Text,
  start: number,
  index: number,
  vertices: number,
): never {
  refuse(
    name,
    'bad-index',
    index === 0
      ? `The face at byte ${grouped(text.byteAt(start))} names vertex 0, and OBJ counts from 1.`
      : `The face at byte ${grouped(text.byteAt(start))} names vertex ${grouped(index)}, ` +
          `and there are ${grouped(vertices)}${index < 0 ? ' before it' : ''}.`,
    'The file is damaged or cut off: copy or export it again.',
  )
}

/**
 * The whole number before any "/"; what follows it (texture, normal) is passed over. NaN where it
 * is none.
 */
function scanIndex(cursor: Cursor): number {
  const { bytes } = cursor
  let at = cursor.at
  const negative = bytes[at] === 0x2d
  if (negative || bytes[at] === 0x2b) at++
  const digits = at
  let value = 0
  for (; bytes[at]! >= 0x30 && bytes[at]! <= 0x39; at++) value = value * 10 + (bytes[at]! - 0x30)
  if (at === digits) return NaN
  if (bytes[at] === SLASH) {
    while (at < bytes.length && isIndexPart(bytes[at]!)) at++
  }
  if (at < bytes.length && !isBlank(bytes[at]) && bytes[at] !== BACKSLASH) {
    return NaN
  }
  cursor.at = at
  return negative ? -value : value
}

function isIndexPart(byte: number): boolean {
  return (byte >= 0x30 && byte <= 0x39) || byte === SLASH || byte === 0x2d || byte === 0x2b
}

function coordinate(cursor: Cursor, text: Text, name: string, vertex: number): number {
  skipBlank(cursor)
  const start = cursor.at
  if (isStatementEnd(cursor)) {
    refuse(
      name,
      'bad-number',
      `Vertex ${grouped(vertex)} has fewer than 3 coordinates at byte ${grouped(text.byteAt(start))}.`,
      'The file is damaged or cut off: copy or export it again.',
    )
  }
  const value = scanNumber(cursor)
  if (Math.abs(value) <= MAX_COORDINATE) return value
  refuseNumber(text, start, name, `in vertex ${grouped(vertex)}`)
}

/** Moves to the next statement, over blank lines and comments; false at the end of the text. */
function toStatement(cursor: Cursor): boolean {
  const { bytes } = cursor
  for (;;) {
    while (cursor.at < bytes.length && isBlank(bytes[cursor.at])) cursor.at++
    if (cursor.at >= bytes.length) return false
    if (bytes[cursor.at] !== HASH) return true
    // A comment ends with its line: a path in it may end in a backslash that continues nothing.
    while (cursor.at < bytes.length && !isLineEnd(bytes[cursor.at])) cursor.at++
  }
}

function nextWord(cursor: Cursor): string {
  const { bytes, at: start } = cursor
  let at = start
  // A backslash may follow at once, to carry the line on.
  while (at < bytes.length && at < start + 16 && !isBlank(bytes[at]) && bytes[at] !== BACKSLASH) {
    at++
  }
  cursor.at = at
  // One letter covers nearly every line, and needs no string to be made.
  if (at === start + 1) return LETTERS[bytes[start]!] ?? ''
  return textBetween(bytes, start, at)
}

/** Blanks within a statement: a backslash at the end of a line carries it on to the next. */
function skipBlank(cursor: Cursor): void {
  const { bytes } = cursor
  for (;;) {
    const byte = bytes[cursor.at]
    if (byte === BACKSLASH) {
      const after = continuation(bytes, cursor.at)
      if (after < 0) return
      cursor.at = after
    } else if (isBlank(byte) && !isLineEnd(byte)) cursor.at++
    else return
  }
}

/**
 * Where the text goes on after a backslash and a line end at `at`; −1 where no line end follows.
 */
function continuation(bytes: Uint8Array, at: number): number {
  if (bytes[at + 1] === RETURN && bytes[at + 2] === LINE_FEED) return at + 3
  return isLineEnd(bytes[at + 1]) ? at + 2 : -1
}

function isStatementEnd(cursor: Cursor): boolean {
  const byte = cursor.bytes[cursor.at]
  return byte === undefined || isLineEnd(byte) || byte === HASH
}

function skipLine(cursor: Cursor): void {
  const { bytes } = cursor
  let at = cursor.at
  while (at < bytes.length && !isLineEnd(bytes[at])) {
    const after = bytes[at] === BACKSLASH ? continuation(bytes, at) : -1
    at = after < 0 ? at + 1 : after
  }
  cursor.at = at
}

function restOfLine(cursor: Cursor): string {
  const start = cursor.at
  skipLine(cursor)
  return textBetween(cursor.bytes, start, cursor.at)
}
