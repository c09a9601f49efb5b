import { weldSoup } from '../model/weld.ts'
import type { Finding, ReadMesh } from '../model/mesh.ts'
import { MAX_TRIANGLES } from './limits.ts'
import { counted, grouped } from '../words/counts.ts'
import { refuse, refuseTooMany } from './refuse.ts'
import { hasWord, textBetween } from './text.ts'

/** 80 bytes of header and a 32-bit count. */
export const STL_START = 84
/** Twelve 32-bit floats (normal, three corners) and two attribute bytes, little-endian. */
export const STL_STRIDE = 50
const NORMAL_BYTES = 12

/** Triangles looked at where the size alone does not prove the format. */
const PROBE_TRIANGLES = 32

/**
 * The size is exactly what the count promises. No text passes: four letters as a count promise over
 * 5 GB.
 */
export function isExactStlBinary(bytes: Uint8Array): boolean {
  return (
    bytes.length > STL_START && bytes.length === STL_START + STL_STRIDE * promisedTriangles(bytes)
  )
}

/**
 * The exact size, or whole triangles whose numbers look like coordinates, or a start cut off before
 * the first one.
 */
export function looksLikeStlBinary(bytes: Uint8Array): boolean {
  if (bytes.length < STL_START) return false
  if (isExactStlBinary(bytes)) return true
  const whole = Math.floor((bytes.length - STL_START) / STL_STRIDE)
  if (whole === 0) return promisedTriangles(bytes) > 0 || bytes.length === STL_START
  const view = viewOf(bytes)
  let largest = 0
  for (let t = 0; t < Math.min(whole, PROBE_TRIANGLES); t++) {
    for (let k = 0; k < 12; k++) {
      const size = Math.abs(view.getFloat32(STL_START + STL_STRIDE * t + 4 * k, true))
      if (!(size < 1e7) || (size > 0 && size < 1e-30)) return false
      if (size > largest) largest = size
    }
  }
  return largest > 0
}

/**
 * Triangles to read: what the count says, at most what is there; all of them where a writer left
 * the count at 0.
 */
export function presentTriangles(bytes: Uint8Array): number {
  const room = Math.max(0, bytes.length - STL_START)
  const whole = Math.floor(room / STL_STRIDE)
  const promised = promisedTriangles(bytes)
  if (promised === 0 && room % STL_STRIDE === 0) return whole
  return Math.min(promised, whole)
}

/**
 * Reads a binary STL; normals and attribute bytes are not used. Positions keep 32-bit precision.
 * Throws `truncated` when not one whole triangle is there, `no-triangles`, `not-finite`,
 * `too-large`.
 */
export function readStlBinary(bytes: Uint8Array, name: string): ReadMesh {
  if (bytes.length < STL_START) {
    refuse(
      name,
      'truncated',
      `It is ${counted(bytes.length, 'byte')} long, and a binary STL needs ${STL_START} before its first triangle.`,
      'The file was cut off: copy or export it again.',
    )
  }
  const count = presentTriangles(bytes)
  const findings = sizeFindings(bytes, name, count)
  if (count > MAX_TRIANGLES) refuseTooMany(name, count)

  const soup = readCorners(bytes, count)
  if (soup === null) refuseNotFinite(bytes, name, count)

  return {
    format: 'stl-binary',
    mesh: weldSoup(soup),
    unit: null,
    pieces: [{ name: headerName(bytes), firstTriangle: 0, triangleCount: count }],
    findings,
  }
}

/** The corners of the first `count` triangles, 9 numbers each; null where one is not finite. */
export function readCorners(bytes: Uint8Array, count: number): Float32Array | null {
  const view = viewOf(bytes)
  const corners = new Float32Array(9 * count)
  let doubt = 0
  for (let t = 0; t < count; t += BLOCK) {
    doubt += copyCorners(view, corners, t, Math.min(count, t + BLOCK))
  }
  return doubt === 0 ? corners : null
}

/** Triangles copied by one call, for the reason that `quickMeasure` has blocks. */
const BLOCK = 1024

/**
 * Copies the corners of triangles `from` up to `past`; returns 0 where all are finite, else NaN.
 * Number by number it took 60 ms of processor time for a million triangles, like this 45; by 16-bit
 * words 88, by 32-bit words of every second triangle 60.
 */
function copyCorners(view: DataView, corners: Float32Array, from: number, past: number): number {
  let doubt = 0
  let to = 9 * from
  let at = STL_START + STL_STRIDE * from + NORMAL_BYTES
  for (let t = from; t < past; t++, to += 9, at += STL_STRIDE) {
    const ax = view.getFloat32(at, true)
    const ay = view.getFloat32(at + 4, true)
    const az = view.getFloat32(at + 8, true)
    const bx = view.getFloat32(at + 12, true)
    const by = view.getFloat32(at + 16, true)
    const bz = view.getFloat32(at + 20, true)
    const cx = view.getFloat32(at + 24, true)
    const cy = view.getFloat32(at + 28, true)
    const cz = view.getFloat32(at + 32, true)
    corners[to] = ax
    corners[to + 1] = ay
    corners[to + 2] = az
    corners[to + 3] = bx
    corners[to + 4] = by
    corners[to + 5] = bz
    corners[to + 6] = cx
    corners[to + 7] = cy
    corners[to + 8] = cz
    // What is not finite, less itself, is not a number.
    doubt += ax - ax + (ay - ay) + (az - az) + (bx - bx) + (by - by) + (bz - bz)
    doubt += cx - cx + (cy - cy) + (cz - cz)
  }
  return doubt
}

function sizeFindings(bytes: Uint8Array, name: string, count: number): Finding[] {
  const promised = promisedTriangles(bytes)
  const needed = STL_START + STL_STRIDE * promised
  const sizes =
    `Its header promises ${counted(promised, 'triangle')}, which take ${counted(needed, 'byte')}, ` +
    `and it is ${counted(bytes.length, 'byte')} long`
  if (count === 0) {
    if (promised > 0) {
      refuse(
        name,
        'truncated',
        `${sizes}: not one whole triangle is there.`,
        'The file was cut off: copy or export it again.',
      )
    }
    refuse(
      name,
      'no-triangles',
      `Its header promises 0 triangles, and it is ${counted(bytes.length, 'byte')} long.`,
      'Export the part again, as a mesh and with the body selected.',
    )
  }
  const findings: Finding[] = []
  if (hasWord(bytes, 0, 'solid')) {
    findings.push({
      code: 'solid-header',
      grade: 'note',
      short: 'header says solid',
      message:
        'Its header begins with "solid" as text files do; it was read as binary, which its size proves it to be.',
    })
  }
  if (promised === 0) {
    findings.push({
      code: 'short-count',
      grade: 'worth knowing',
      short: 'header counts 0 triangles',
      message:
        `Its header promises 0 triangles, and ${counted(count, 'whole triangle')} follow: ` +
        'all were read. Export it again if something is missing.',
      count,
    })
  } else if (bytes.length < needed) {
    findings.push({
      code: 'short-count',
      grade: 'changes the grams',
      short: `cut off: ${counted(promised - count, 'triangle')} missing`,
      message:
        `${sizes}: ${counted(count, 'triangle')} could be read and ${grouped(promised - count)} ` +
        `${promised - count === 1 ? 'is' : 'are'} missing. The file was cut off: ` +
        'copy or export it again.',
      count: promised - count,
    })
  } else if (bytes.length > needed) {
    findings.push({
      code: 'trailing-bytes',
      grade: 'worth knowing',
      short: 'more bytes than counted',
      message:
        `${sizes}: the ${counted(bytes.length - needed, 'byte')} at the end ` +
        `${bytes.length - needed === 1 ? 'was' : 'were'} left out. ` +
        'Export it again if something is missing.',
      count: bytes.length - needed,
    })
  }
  return findings
}

function refuseNotFinite(bytes: Uint8Array, name: string, count: number): never {
  const view = viewOf(bytes)
  const placeOf = (i: number): number =>
    STL_START + STL_STRIDE * Math.floor(i / 9) + NORMAL_BYTES + 4 * (i % 9)
  let bad = 0
  while (Number.isFinite(view.getFloat32(placeOf(bad), true))) bad++
  const triangle = Math.floor(bad / 9)
  refuse(
    name,
    'not-finite',
    `Triangle ${grouped(triangle + 1)} of ${grouped(count)} has the coordinate ` +
      `${view.getFloat32(placeOf(bad), true)} at byte ${grouped(placeOf(bad))}.`,
    'Repair the model where it was drawn and export it again.',
  )
}

/** The header up to its first NUL, if it is readable ASCII; it is a remark, seldom a name. */
function headerName(bytes: Uint8Array): string {
  let end = 0
  while (end < 80 && bytes[end]! >= 0x20 && bytes[end]! < 0x7f) end++
  return bytes[end] === 0 || end === 80 ? textBetween(bytes, 0, end) : ''
}

function promisedTriangles(bytes: Uint8Array): number {
  return viewOf(bytes).getUint32(80, true)
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
}
