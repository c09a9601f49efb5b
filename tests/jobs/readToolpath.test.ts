import { gzipSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { createMeshShelf } from '../../src/jobs/meshShelf.ts'
import type { JobEvent } from '../../src/jobs/protocol.ts'
import { isToolpath, readToolpath } from '../../src/jobs/readToolpath.ts'
import { box } from '../support/meshes.ts'
import { problemOf } from '../support/problemOf.ts'
import { writeStlBinary } from '../support/writeMesh.ts'
import { SMALL_BOX, writeBox } from '../support/writeToolpath.ts'

const settings = {
  accelMmS2: 1000,
  wallAccelMmS2: 1000,
  travelAccelMmS2: 1000,
  cornerMmS: 8,
  diameterMm: 1.75,
}
const { text, filamentMm } = writeBox(SMALL_BOX)
const bytes = new TextEncoder().encode(text)

/** A blob that is read in pieces, as one of a disk is; of a single one Node gives all at once. */
const inPieces = (all: Uint8Array): Blob =>
  new Blob(
    Array.from({ length: 10 }, (_, i) =>
      all.slice((i * all.length) / 10, ((i + 1) * all.length) / 10),
    ),
  )

async function read(blob: Blob, name = 'print.gcode') {
  const told: number[] = []
  const { sizeMm, layers, layerMm } = SMALL_BOX
  const mesh = writeStlBinary(box(sizeMm[0], sizeMm[1], layers * layerMm))
  const source = { hash: 'b', name: 'block.stl', blob: new Blob([mesh.slice()]) }
  const parts = [{ item: 'block', source, unit: 'millimetre' }] as const
  const answer = await readToolpath(
    { kind: 'toolpath', name, blob, settings, parts },
    createMeshShelf(),
    (event: JobEvent) => {
      if (event.kind === 'progress') told.push(event.fraction)
    },
  )
  return { ...answer, told }
}

test('a file is read piece by piece, and how far is told on the way to its end', async () => {
  const { figures, match, told } = await read(inPieces(bytes))
  expect((1000 * figures.filamentM) / filamentMm).toBeCloseTo(1, 4)
  expect(match?.item).toBe('block')
  expect(told.length).toBeGreaterThan(5)
  expect(told).toEqual(told.toSorted((a, b) => a - b))
  expect(told.at(-1)).toBe(1)
})

test('packed with gzip it gives the same, and is known by its start', async () => {
  const packed = new Blob([Uint8Array.from(gzipSync(bytes))])
  const plain = await read(inPieces(bytes))
  const { figures, told } = await read(packed, 'print.gcode.gz')
  expect(figures).toEqual(plain.figures)
  // Of the packed bytes, which are what is read.
  expect(told.at(-1)).toBe(1)
  expect(await isToolpath(packed, 'print.gcode.gz')).toBe(true)
  expect(await isToolpath(new Blob([bytes]), 'print.gcode')).toBe(true)
  expect(await isToolpath(new Blob(['Dear builder,\n']), 'letter.gcode')).toBe(false)
})

test('one cut short is refused by name, with what to do', async () => {
  const whole = gzipSync(bytes)
  const cut = new Blob([Uint8Array.from(whole.subarray(0, whole.length / 2))])
  const error: unknown = await read(cut, 'cut.gcode.gz').catch((reason: unknown) => reason)
  const { code, message, advice } = problemOf(() => {
    throw error
  })
  expect(code).toBe('unreadable-file')
  expect(message).toContain('“cut.gcode.gz” is packed with gzip and cannot be unpacked to its end')
  expect(advice).toContain('export the print again')
})
