import { describe, expect, test } from 'vitest'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import type { LayerWork } from '../../../src/core/figures/layerSeconds.ts'
import type { Printer } from '../../../src/core/model/figures.ts'
import { runSeconds, type TimedPiece } from '../../../src/core/runs/runSeconds.ts'

/** Ways of 30 mm at 300 mm/s from rest to rest with 30 000 mm/s²: 30/300 + 300/30 000 = 0.11 s. */
const PRINTER: Printer = {
  ...PRINTER_DEFAULT,
  startS: 300,
  leastLayerS: 6,
  floorMmS: 1,
  layerChangeS: 1,
  retractS: 0.3,
  travelMmS: 300,
  travelAccelMmS2: 30_000,
}

/**
 * A piece of equal layers: seconds of lines and a second to change; 1000 s at the slowest speed.
 */
function piece(layers: number, laidS: number, xMm: number): TimedPiece {
  const work: LayerWork = {
    ownS: new Float64Array(layers).fill(laidS + 1),
    slowestS: new Float64Array(layers).fill(1000),
  }
  return { work, xMm, yMm: 0 }
}

describe('a run by hand', () => {
  test('one piece takes what it takes alone: start, and six seconds a layer', () => {
    expect(runSeconds([piece(100, 2, 0)], PRINTER)).toBeCloseTo(300 + 100 * 6, 9)
  })

  test('four small tubes share one start and one least layer time', () => {
    // Each layer 4 × 2 s of lines, 1 s of change, 3 ways of 0.11 + 0.3 s: 10.23 s, past the least
    // of 6.
    const four = [0, 30, 60, 90].map((x) => piece(100, 2, x))
    expect(runSeconds(four, PRINTER)).toBeCloseTo(300 + 100 * (8 + 1 + 3 * 0.41), 9)
    // Alone they would take 4 × (300 + 600) s.
    expect(runSeconds(four, PRINTER)).toBeLessThan(0.4 * 4 * 900)
  })

  test('two that together stay under the least layer time take it once', () => {
    const two = [piece(50, 1, 0), piece(50, 1, 30)]
    // 2 + 1 + 0.41 s, stretched to 6.
    expect(runSeconds(two, PRINTER)).toBeCloseTo(300 + 50 * 6, 9)
  })

  test('a lower piece is passed over where it ends', () => {
    const two = [piece(10, 4, 0), piece(30, 9, 30)]
    expect(runSeconds(two, PRINTER)).toBeCloseTo(300 + 10 * (4 + 9 + 1 + 0.41) + 20 * (9 + 1), 9)
  })

  test('the way goes to the nearest piece, in whatever order they come', () => {
    const places = [90, 0, 60, 30]
    const four = places.map((x) => piece(100, 2, x))
    expect(runSeconds(four, PRINTER)).toBeCloseTo(300 + 100 * (8 + 1 + 3 * 0.41), 9)
  })

  test('one at a time saves starts, not layers', () => {
    const four = [0, 30, 60, 90].map((x) => piece(100, 2, x))
    expect(runSeconds(four, PRINTER, 'one at a time')).toBeCloseTo(300 + 4 * 600 + 3 * 0.41, 9)
  })
})
