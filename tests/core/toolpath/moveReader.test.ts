import { describe, expect, test } from 'vitest'
import type { Move } from '../../../src/core/model/toolpath.ts'
import { moveReader } from '../../../src/core/toolpath/moveReader.ts'

// Words and their meaning: ISO 6983-1 (G00–G03, G90, G91); units, extruder and M words as printers
// speak them (common practice, no source). Expected values are hand arithmetic.

function read(text: string, pieceBytes = Infinity): readonly Move[] {
  const moves: Move[] = []
  const reader = moveReader((move) => moves.push(move))
  const bytes = new TextEncoder().encode(text)
  for (let from = 0; from < bytes.length; from += pieceBytes) {
    reader.push(bytes.subarray(from, Math.min(bytes.length, from + pieceBytes)))
  }
  reader.end()
  return moves
}

const laid = (moves: readonly Move[]): number => moves.reduce((sum, { laidMm }) => sum + laidMm, 0)
const ends = (moves: readonly Move[]) => moves.map(({ toX, toY, toZ }) => [toX, toY, toZ])

describe('moves', () => {
  test('go where they say, from where the last one ended', () => {
    const [a, b] = read('G1 X10 Y5 Z0.2 F1200\nG1 X20\n')
    expect(a).toMatchObject({ fromX: 0, toX: 10, toY: 5, toZ: 0.2, speedMmS: 20 })
    expect(b).toMatchObject({ fromX: 10, fromY: 5, toX: 20, toY: 5, toZ: 0.2, speedMmS: 20 })
  })

  test('are absolute or relative, in millimetres or inches', () => {
    expect(ends(read('G91\nG1 X1 Y2\nG1 X1\nG90\nG1 X1\n'))).toEqual([
      [1, 2, 0],
      [2, 2, 0],
      [1, 2, 0],
    ])
    // One inch is 25.4 mm (NIST SP 811, appendix B).
    expect(ends(read('G20\nG1 X1 F60\nG21\nG1 X1\n'))).toEqual([
      [25.4, 0, 0],
      [1, 0, 0],
    ])
    expect(read('G20\nG1 X1 F60\n')[0]!.speedMmS).toBeCloseTo(25.4, 10)
  })

  test('mean the same whatever the bytes come in, with any ends of line, comments and numbers', () => {
    const plain = 'G1 X1 Y2 E1\nG1 X3 E2\n'
    const dressed =
      'N10 G1 X1 Y2 (to the start) E1*71\r\n; a whole line\r\ng1x3e2 ; last, without an end'
    const wanted = read(plain)
    for (const size of [1, 2, 3, 7, 1000]) expect(read(dressed, size)).toEqual(wanted)
  })

  test('stay when a line names no command', () => {
    expect(ends(read('G1 X1\nX2 Y3\n'))).toEqual([
      [1, 0, 0],
      [2, 3, 0],
    ])
  })

  test('pass over what is not theirs', () => {
    expect(ends(read('M117 Heating X9\nM104 S210\nT0\nG29\n\nhello\nG1 X1 Efoo Y2\n'))).toEqual([
      [1, 2, 0],
    ])
  })
})

describe('plastic', () => {
  test('is what comes out: drawn back and pushed forward counts once', () => {
    const text = 'M83\nG1 X10 E1\nG1 E-0.8\nG1 X20\nG1 E0.8\nG1 X30 E1\n'
    const moves = read(text)
    expect(laid(moves)).toBeCloseTo(2, 12)
    expect(moves.map(({ laidMm }) => laidMm)).toEqual([1, 0, 0, 0, 1])
  })

  test('goes on from a count that begins anew', () => {
    expect(laid(read('M82\nG1 X1 E5\nG92 E0\nG1 X2 E5\n'))).toBeCloseTo(10, 12)
  })

  test('follows G91 unless the extruder was told otherwise', () => {
    expect(laid(read('G91\nG1 X1 E1\nG1 X1 E1\n'))).toBeCloseTo(2, 12)
    expect(laid(read('M82\nG91\nG1 X1 E1\nG1 X1 E2\n'))).toBeCloseTo(2, 12)
  })
})

describe('arcs', () => {
  // Length of a circle: 2πr; of a quarter: πr/2.
  const length = (moves: readonly Move[]): number =>
    moves.reduce((sum, m) => sum + Math.hypot(m.toX - m.fromX, m.toY - m.fromY), 0)

  test('go round their middle, the way they say', () => {
    const short = read('G1 X10 Y0\nG3 X0 Y10 I-10 J0 E1\n').slice(1)
    expect(length(short)).toBeCloseTo(5 * Math.PI, 1)
    expect(laid(short)).toBeCloseTo(1, 9)
    const long = read('G1 X10 Y0\nG2 X0 Y10 I-10 J0\n').slice(1)
    expect(length(long)).toBeCloseTo(15 * Math.PI, 1)
  })

  test('are whole circles where they end at their start', () => {
    expect(length(read('G1 X10 Y0\nG2 X10 Y0 I-10 J0\n').slice(1))).toBeCloseTo(20 * Math.PI, 1)
  })

  test('may be told by their radius, the long way when it is negative', () => {
    expect(length(read('G1 X10 Y0\nG3 X0 Y10 R10\n').slice(1))).toBeCloseTo(5 * Math.PI, 1)
    expect(length(read('G1 X10 Y0\nG3 X0 Y10 R-10\n').slice(1))).toBeCloseTo(15 * Math.PI, 1)
  })

  test('that describe none are straight', () => {
    expect(ends(read('G2 X5 Y5\n'))).toEqual([[5, 5, 0]])
    expect(ends(read('G2 X50 Y0 R1\n'))).toEqual([[50, 0, 0]])
  })
})

test('places that no printer has are left out and counted; a line of any length is read', () => {
  const text = `G1 X1\n;${'x'.repeat(100_000)}\nG1 X999999999\nG1 Y2 ;${'y'.repeat(100_000)}`
  for (const size of [1000, Infinity]) {
    const moves: Move[] = []
    const reader = moveReader((move) => moves.push(move))
    const bytes = new TextEncoder().encode(text)
    for (let from = 0; from < bytes.length; from += size) {
      reader.push(bytes.subarray(from, Math.min(bytes.length, from + size)))
    }
    expect(reader.end()).toMatchObject({ lines: 4, tooFar: 1 })
    expect(ends(moves)).toEqual([
      [1, 0, 0],
      [1, 2, 0],
    ])
  }
})
