import { describe, expect, it } from 'vitest'
import {
  COUNTERSINKS,
  HEADS,
  NUTS,
  THREADS,
  WASHERS,
} from '../../../../src/core/aircraft/hardware/data.ts'

const sizesOf = (table: object) => Object.keys(table)

describe('hardware tables', () => {
  // engineeringhardware.com/?p=12: dk, k, hex, least socket depth.
  it.each([
    ['M2', 3.8, 2, 1.5, 1],
    ['M2.5', 4.5, 2.5, 2, 1.1],
    ['M3', 5.5, 3, 2.5, 1.3],
    ['M4', 7, 4, 3, 2],
    ['M5', 8.5, 5, 4, 2.5],
  ] as const)('holds the ISO 4762 head of %s', (size, widthMm, heightMm, hexMm, socketMm) => {
    expect(HEADS['ISO 4762'][size]).toMatchObject({ widthMm, heightMm, hexMm, socketMm })
  })

  // scribd.com/doc/270233937 (ISO 7380 and ANSI B18.3.4M sheet).
  it.each([
    ['M3', 5.7, 1.65, 2, 1.04],
    ['M4', 7.6, 2.2, 2.5, 1.3],
    ['M5', 9.5, 2.75, 3, 1.56],
  ] as const)('holds the ISO 7380-1 head of %s', (size, widthMm, heightMm, hexMm, socketMm) => {
    expect(HEADS['ISO 7380-1'][size]).toMatchObject({ widthMm, heightMm, hexMm, socketMm })
  })

  // EN ISO 10642 sheet, scribd.com/document/342214778.
  it.each([
    ['M3', 6.72, 1.86, 2, [5.54, 6.72], 3.3],
    ['M4', 8.96, 2.48, 2.5, [7.53, 8.96], 4.4],
    ['M5', 11.2, 3.1, 3, [9.43, 11.2], 5.5],
  ] as const)(
    'holds the ISO 10642 head and pocket of %s',
    (size, widthMm, heightMm, hexMm, pocketMm, neckMm) => {
      expect(HEADS['ISO 10642'][size]).toMatchObject({ widthMm, heightMm, hexMm })
      expect(COUNTERSINKS[size]).toEqual({ widthMm: pocketMm, neckMm, depthMm: heightMm })
      // A 90° cone from the sharp edge to the shank is as deep as the head: the sheet agrees with
      // itself.
      expect((widthMm - THREADS[size].diameterMm) / 2).toBeCloseTo(heightMm, 9)
    },
  )

  it('leaves out the sizes a standard does not have', () => {
    expect(sizesOf(HEADS['ISO 7380-1'])).toEqual(['M3', 'M4', 'M5'])
    expect(sizesOf(HEADS['ISO 10642'])).toEqual(['M3', 'M4', 'M5'])
    expect(sizesOf(NUTS['ISO 7040'])).toEqual(['M3', 'M4', 'M5'])
  })

  it('holds nut and washer sizes as read (BS EN ISO 4032:2001 table 1; DIN 985:1987; engineeringhardware.com)', () => {
    expect(NUTS['ISO 4032']).toEqual({
      M2: [4, 1.6],
      'M2.5': [5, 2],
      M3: [5.5, 2.4],
      M4: [7, 3.2],
      M5: [8, 4.7],
    })
    expect(NUTS['ISO 7040']).toEqual({ M3: [5.5, 4], M4: [7, 5], M5: [8, 5] })
    expect(WASHERS.M3).toMatchObject({ innerMm: 3.2, outerMm: 7, heightMm: 0.5 })
    expect(WASHERS.M4).toMatchObject({ innerMm: 4.3, outerMm: 9, heightMm: 0.8 })
    expect(WASHERS.M5).toMatchObject({ innerMm: 5.3, outerMm: 10, heightMm: 1 })
  })
})
