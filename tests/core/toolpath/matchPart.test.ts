import { expect, test } from 'vitest'
import { matchPart } from '../../../src/core/toolpath/matchPart.ts'
import { toolpathReader } from '../../../src/core/toolpath/readToolpath.ts'
import { box, rotate } from '../../support/meshes.ts'
import { SMALL_BOX, writeBox } from '../../support/writeToolpath.ts'

// Boxes of known sides, one of them laid by the test itself.

const reader = toolpathReader({
  accelMmS2: 1000,
  wallAccelMmS2: 1000,
  travelAccelMmS2: 1000,
  cornerMmS: 8,
  diameterMm: null,
})
const { text } = writeBox(SMALL_BOX)
reader.push(new TextEncoder().encode(text))
const figures = reader.end()
const candidate = (w: number, d: number, h: number, turnDeg = 0) => ({
  mesh: rotate(box(w, d, h), [0, 0, turnDeg]),
  scaleToMm: 1,
  volumeMm3: w * d * h,
})

test('what a print encloses is the part’s volume', () => {
  expect(Math.abs(figures.envelopeMm3 / (40 * 30 * 4) - 1)).toBeLessThan(0.03)
})

test('a part is found whichever way it was drawn, turned on the bed by any multiple of 5°', () => {
  const others = [candidate(41, 30, 4), candidate(40, 30, 5), candidate(30, 30, 4)]
  for (const turn of [0, 35, 90, 180]) {
    expect(matchPart(figures, [...others, candidate(40, 30, 4, turn)])?.part).toBe(3)
  }
  expect(matchPart(figures, [...others, candidate(4, 30, 40)])?.part).toBe(3)
  expect(matchPart(figures, others)).toBeNull()
})

test('two that fit alike are both named', () => {
  expect(matchPart(figures, [candidate(40, 30, 4), candidate(40, 30.05, 4)])).toMatchObject({
    alike: [expect.any(Number)],
  })
})
