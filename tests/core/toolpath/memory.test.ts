import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { expect, test } from 'vitest'
import type { Move } from '../../../src/core/model/toolpath.ts'
import { layerGatherer, MOST_MOVES } from '../../../src/core/toolpath/layerMoves.ts'
import { moveReader } from '../../../src/core/toolpath/moveReader.ts'
import { toolpathReader, type ToolpathReader } from '../../../src/core/toolpath/readToolpath.ts'
import { SMALL_BOX, writeBox } from '../../support/writeToolpath.ts'

/*
 * A file of 300 MB must not be held in memory. What the reader holds is counted after the collector ran, at two places
 * of a file that never ends: bytes, not a clock.
 */

const MOTION = { accelMmS2: 1000, wallAccelMmS2: 1000, travelAccelMmS2: 1000, cornerMmS: 8 }
const PIECE_BYTES = 1 << 16

setFlagsFromString('--expose-gc')
const collect = runInNewContext('gc') as () => void

function heldBytes(): number {
  collect()
  collect()
  const { heapUsed, arrayBuffers } = process.memoryUsage()
  return heapUsed + arrayBuffers
}

/**
 * Pushes the same text again and again, as boxes printed one after the other, until so many bytes
 * are gone.
 */
function stream(reader: ToolpathReader, text: Uint8Array, bytes: number): void {
  for (let done = 0; done < bytes; done += text.length) {
    for (let from = 0; from < text.length; from += PIECE_BYTES) {
      reader.push(text.slice(from, from + PIECE_BYTES))
    }
  }
}

test('what a reader holds does not grow with its file', () => {
  const { text, filamentMm } = writeBox(SMALL_BOX)
  const bytes = new TextEncoder().encode(`${text}\nG92 E0\n`)
  const reader = toolpathReader({ ...MOTION, diameterMm: 1.75 })
  const rounds = (mega: number): number => Math.ceil((mega * 1e6) / bytes.length)
  stream(reader, bytes, rounds(1) * bytes.length)
  const early = heldBytes()
  stream(reader, bytes, rounds(3) * bytes.length)
  const grown = heldBytes() - early
  expect(grown / (rounds(3) * bytes.length)).toBeLessThan(0.05)
  // All of it was read.
  const boxes = rounds(1) + rounds(3)
  expect((1000 * reader.end().filamentM) / filamentMm / boxes).toBeCloseTo(1, 4)
})

test('a line without an end is not kept', () => {
  const reader = moveReader(() => undefined)
  const piece = new Uint8Array(PIECE_BYTES).fill(88)
  reader.push(piece)
  const early = heldBytes()
  for (let k = 0; k < 200; k++) reader.push(piece)
  expect((heldBytes() - early) / (200 * PIECE_BYTES)).toBeLessThan(0.05)
  expect(reader.end()).toMatchObject({ lines: 1, moves: 0 })
})

test('a layer without an end is handed on in pieces, nothing of it lost', () => {
  const counts: number[] = []
  const gatherer = layerGatherer(({ count, topMm }) => {
    expect(topMm).toBe(0.2)
    counts.push(count)
  })
  const move: Move = {
    fromX: 0,
    fromY: 0,
    fromZ: 0.2,
    toX: 1,
    toY: 0,
    toZ: 0.2,
    filamentMm: 1,
    laidMm: 1,
    speedMmS: 50,
    accelMmS2: 0,
  }
  for (let k = 0; k < 2 * MOST_MOVES + 7; k++) gatherer.add(move)
  gatherer.end()
  expect(counts).toEqual([MOST_MOVES, MOST_MOVES, 7])
})
