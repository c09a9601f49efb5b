import { describe, expect, test } from 'vitest'
import { PreweighError } from '../../../src/core/model/problem.ts'
import type { ToolpathFigures } from '../../../src/core/model/toolpath.ts'
import { toolpathReader } from '../../../src/core/toolpath/readToolpath.ts'
import { seededRandom } from '../../support/random.ts'
import { PLAIN, writeBox } from '../../support/writeToolpath.ts'
import type { BoxRecipe } from '../../support/writeToolpath.ts'

// Boxes laid by the test itself, line by line: what comes back is what they were laid with.

const MOTION = { accelMmS2: 1000, wallAccelMmS2: 1000, travelAccelMmS2: 1000, cornerMmS: 8 }

function read(text: string | Uint8Array, diameterMm: number | null = null): ToolpathFigures {
  const reader = toolpathReader({ ...MOTION, diameterMm })
  const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text
  for (let from = 0; from < bytes.length; from += 50_000) {
    reader.push(bytes.subarray(from, from + 50_000))
  }
  return reader.end()
}

const BOX: BoxRecipe = {
  sizeMm: [50, 34],
  layers: 24,
  layerMm: 0.2,
  firstMm: 0.3,
  lineMm: 0.45,
  walls: 3,
  bottomSkins: 4,
  topSkins: 5,
  infill: 0.2,
  pattern: 'grid',
  filamentMm: 1.75,
}

function expectBox(figures: ToolpathFigures, box: BoxRecipe): void {
  const { recipe } = figures
  expect(recipe).toMatchObject({
    layerMm: box.layerMm,
    firstLayerMm: box.firstMm,
    walls: box.walls,
    topSkins: box.topSkins,
    bottomSkins: box.bottomSkins,
    pattern: box.pattern,
  })
  expect(figures.diameterMm).toBe(box.filamentMm)
  expect(Math.abs(recipe.lineMm! / box.lineMm - 1)).toBeLessThan(0.02)
  expect(Math.abs(recipe.infillPct! - 100 * box.infill)).toBeLessThan(2)
}

describe('skins over undersides', () => {
  const overAir = (skins: number): ToolpathFigures => {
    const shelf = { layer: 10, sizeMm: [80, 34], skins } as const
    return read(writeBox({ ...BOX, layers: 30, shelf }).text)
  }

  test.each([
    [BOX.bottomSkins, 'bottom'],
    [BOX.topSkins, 'most'],
    [BOX.topSkins + 2, undefined],
  ] as const)('%i of them are read as %s', (skins, undersides) => {
    const { habits, recipe } = overAir(skins)
    expect(habits.undersides).toBe(undersides)
    // Those on the bed are told by themselves.
    expect(recipe.bottomSkins).toBe(BOX.bottomSkins)
    expect(recipe.topSkins).toBe(BOX.topSkins)
  })

  test('are not told by a part without any', () => {
    expect(read(writeBox(BOX).text).habits.undersides).toBeUndefined()
  })
})

describe('the recipe', () => {
  const random = seededRandom(14)
  const pick = <T>(...choices: readonly T[]): T => choices[Math.floor(random() * choices.length)]!
  const boxes = Array.from({ length: 12 }, (): BoxRecipe => ({
    sizeMm: [30 + 40 * random(), 30 + 40 * random()],
    layers: 20 + Math.floor(10 * random()),
    layerMm: pick(0.12, 0.16, 0.2, 0.25, 0.3),
    firstMm: pick(0.2, 0.25, 0.3),
    lineMm: 0.38 + 0.3 * random(),
    walls: pick(1, 2, 3, 4),
    bottomSkins: pick(2, 3, 4, 6),
    topSkins: pick(2, 3, 5, 7),
    infill: pick(0.1, 0.15, 0.2, 0.3, 0.4),
    pattern: pick('lines', 'grid'),
    filamentMm: pick(1.75, 2.85),
  }))
  test.each(boxes.map((box, i) => [i, box] as const))('of box %i comes back', (_, box) => {
    const { text, filamentMm } = writeBox(box)
    const figures = read(text)
    expectBox(figures, box)
    expect(figures.filamentM * 1000).toBeCloseTo(filamentMm, 3)
    const sectionMm2 = (Math.PI * box.filamentMm ** 2) / 4
    expect(figures.depositMm3).toBeCloseTo(filamentMm * sectionMm2, 1)
    expect(figures.layers).toHaveLength(box.layers)
  })

  test('is the same in every tongue', () => {
    const plain = read(writeBox(BOX).text)
    expectBox(plain, BOX)
    for (const one of [
      { relativeExtruder: true },
      { relativeMoves: true, relativeExtruder: true },
      { inches: true },
      { resets: true },
      { crlf: true },
    ]) {
      const figures = read(writeBox(BOX, { ...PLAIN, ...one }).text)
      expectBox(figures, BOX)
      expect(figures.filamentM).toBeCloseTo(plain.filamentM, 4)
      expect(Math.abs(figures.timeS / plain.timeS - 1)).toBeLessThan(1e-3)
    }
  })

  test('leaves out what a solid or a hollow box cannot tell, and says so', () => {
    const solid = read(writeBox({ ...BOX, layers: 8 }).text)
    expect(solid.recipe).toMatchObject({ walls: 3, topSkins: null, bottomSkins: null })
    expect(solid.recipe.infillPct).toBeNull()
    expect(solid.findings.map(({ message }) => message).join(' ')).toMatch(/do not tell .*infill/)
  })
})

test('a diameter that does not fit the lines is said, and held to', () => {
  const figures = read(writeBox(BOX).text, 2.85)
  expect(figures.diameterMm).toBe(2.85)
  expect(figures.findings[0]?.message).toMatch(/as if the filament were 1\.7\d mm thick, not 2\.85/)
})

test('priming before the first layer is plastic, but no layer', () => {
  const { text, filamentMm } = writeBox(BOX)
  const figures = read(`G21\nG90\nM83\nG1 X0 Y0 Z0.1\nG1 X100 E9\nG1 E-1\nG1 E1\nM82\n${text}`)
  expectBox(figures, BOX)
  expect(figures.filamentM * 1000).toBeCloseTo(filamentMm + 9, 3)
  expect(figures.layers).toHaveLength(BOX.layers)
})

describe('what is no toolpath', () => {
  test.each([
    ['nothing', '', /no moves of a print head/],
    ['a letter', 'Dear builder,\nplease find enclosed.\n', /no moves of a print head/],
    ['moves without plastic', 'G1 X1\nG1 X2 Y2\n', /none of them lays plastic/],
    ['zeros', new Uint8Array(100_000), /no moves of a print head/],
  ])('%s is refused with a reason', (_, text, reason) => {
    expect(() => read(text)).toThrow(PreweighError)
    expect(() => read(text)).toThrow(reason)
  })

  test('random bytes and damaged files are read or refused, never worse', () => {
    const random = seededRandom(15)
    const good = new TextEncoder().encode(writeBox({ ...BOX, layers: 6 }).text)
    for (let round = 0; round < 60; round++) {
      const bytes = good.slice(0, Math.ceil(random() * good.length))
      for (let k = 0; k < 40; k++) {
        bytes[Math.floor(random() * bytes.length)] = Math.floor(256 * random())
      }
      try {
        const { filamentM, timeS, depositMm3 } = read(bytes)
        for (const value of [filamentM, timeS, depositMm3]) expect(value).toBeGreaterThanOrEqual(0)
      } catch (error) {
        expect(error).toBeInstanceOf(PreweighError)
      }
    }
  })
})
