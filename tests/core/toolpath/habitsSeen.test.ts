import { describe, expect, test } from 'vitest'
import { ROUND_LACK, type Bead } from '../../../src/core/model/habits.ts'
import type { SeenHabits, ToolpathFigures } from '../../../src/core/model/toolpath.ts'
import { toolpathReader } from '../../../src/core/toolpath/readToolpath.ts'
import type { BoxRecipe } from '../../support/writeToolpath.ts'
import { writeBox } from '../../support/writeToolpath.ts'

// Toolpaths laid by the test itself: the habits that come back are those they were laid with.

function read(text: string, bead?: Bead): ToolpathFigures {
  const motion = { accelMmS2: 1000, wallAccelMmS2: 1000, travelAccelMmS2: 1000, cornerMmS: 8 }
  const reader = toolpathReader({ ...motion, diameterMm: 1.75, bead })
  reader.push(new TextEncoder().encode(text))
  return reader.end()
}
const habitsOf = (text: string): SeenHabits => read(text).habits

const BOX: BoxRecipe = {
  // Room for whole skin lines both ways: 120 and 80 of them inside two walls.
  sizeMm: [49.6, 33.6],
  layers: 25,
  layerMm: 0.2,
  firstMm: 0.2,
  lineMm: 0.4,
  walls: 2,
  bottomSkins: 5,
  topSkins: 4,
  infill: 0.2,
  pattern: 'lines',
  filamentMm: 1.75,
}

describe('skins that reach over the walls', () => {
  test.each([0.04, 0.1, 0.18])('by %d mm are read as that much plastic over the edge', (lapMm) => {
    const [w, d] = [48, 32]
    // Lines end on two sides of four, by turns on the longer and on the shorter ones.
    const lapped = 2 * lapMm * w + 2 * lapMm * d
    const expected = lapped / 2 / (2 * (w + d)) / BOX.lineMm
    const seen = habitsOf(writeBox({ ...BOX, lapMm }).text).overlapShare!
    expect(Math.abs(seen / expected - 1)).toBeLessThan(0.03)
  })

  test('are not told where skins stop short of them, or no layer is solid', () => {
    expect(habitsOf(writeBox(BOX).text).overlapShare).toBeUndefined()
    const hollow = { ...BOX, lapMm: 0.1, topSkins: 1, bottomSkins: 1 }
    expect(habitsOf(writeBox(hollow).text).overlapShare).toBeUndefined()
  })
})

describe('strands', () => {
  test.each([1.25, 1.4])('of %d times the plastic are read', (strand) => {
    const seen = habitsOf(writeBox({ ...BOX, lapMm: 0.1, strand }).text)
    expect(Math.abs(seen.strandShare! / strand - 1)).toBeLessThan(0.02)
  })

  test('are not told where every skin is alike', () => {
    expect(habitsOf(writeBox({ ...BOX, lapMm: 0.1 }).text).strandShare).toBeUndefined()
  })
})

describe('the smallest room with infill', () => {
  const boxes = (sizeMm: readonly [number, number]): SeenHabits =>
    habitsOf(writeBox({ ...BOX, sizeMm, layers: 60, infill: 0.4 }).text)

  test('is told where most printers would lay it solid', () => {
    // 4 by 4 mm inside the walls.
    const { smallRoomMm2 } = boxes([5.6, 5.6])
    expect(smallRoomMm2).toBeGreaterThan(8)
    expect(smallRoomMm2).toBeLessThan(18)
  })

  test('says nothing of larger ones', () => {
    expect(boxes([14, 14]).smallRoomMm2).toBeUndefined()
  })
})

describe('line ends', () => {
  const [heightMm, lineMm, openMm] = [0.2, 0.44, 0.4]
  const lackMm = ROUND_LACK * heightMm

  /** A thin box: one line round it, one line in what is left between. */
  function thinBox(gapMm: number): string {
    const lines = ['G21', 'G90', 'M83']
    const lay = (x: number, y: number, fromX: number, fromY: number, widthMm: number): void => {
      const pushed =
        (Math.hypot(x - fromX, y - fromY) * widthMm * heightMm) / (Math.PI * 0.875 ** 2)
      lines.push(`G1 X${x} Y${y} E${pushed.toFixed(6)} F2400`)
    }
    const across = lineMm + openMm
    for (let layer = 1; layer <= 20; layer++) {
      lines.push(`G1 X0 Y0 Z${(layer * heightMm).toFixed(3)} F6000`)
      lay(40, 0, 0, 0, lineMm)
      lay(40, across, 40, 0, lineMm)
      lay(0, across, 40, across, lineMm)
      lay(0, 0, 0, across, lineMm)
      lines.push(`G1 X1 Y${across / 2} F6000`)
      lay(39, across / 2, 1, across / 2, gapMm)
    }
    return `${lines.join('\n')}\n`
  }

  test('are square where a gap line fills what is left', () => {
    const seen = habitsOf(thinBox(openMm))
    expect(seen).toMatchObject({ bead: 'square', gapLines: true, outerWidthShare: 1 })
  })

  test('are round where it leaves twice what a round line lacks', () => {
    const seen = habitsOf(thinBox(openMm - 2 * lackMm))
    expect(seen).toMatchObject({ bead: 'round', gapLines: true })
  })

  test('are not told by boxes without gap lines', () => {
    expect(habitsOf(writeBox(BOX).text).bead).toBeUndefined()
  })

  test('that are known to be round make lines wider than their plastic, by what it lacks', () => {
    const { text } = writeBox(BOX)
    const [plain, known] = [read(text), read(text, 'round')]
    expect(known.habits.bead).toBeUndefined()
    expect(known.recipe.lineMm! - plain.recipe.lineMm!).toBeCloseTo(ROUND_LACK * BOX.layerMm, 3)
  })

  test('that the moves tell are not read otherwise, whatever is known', () => {
    const text = thinBox(openMm)
    expect(read(text, 'round')).toEqual(read(text))
  })
})

describe('bands of skin beside a step', () => {
  const [lineMm, heightMm, top] = [0.4, 0.2, 4]
  const turn = 0.3

  /** A box of 60 × 40 mm with a lower end: from x = 40 on it is five mm high, elsewhere nine. */
  function steppedBox(bandMm: number, step = true): string {
    const lines = ['G21', 'G90', 'M83']
    // Askew, so that no edge runs in step with the cells that are looked at.
    const at = (x: number, y: number): string => {
      const [u, v] = [
        x * Math.cos(turn) - y * Math.sin(turn),
        x * Math.sin(turn) + y * Math.cos(turn),
      ]
      return `X${u.toFixed(3)} Y${v.toFixed(3)}`
    }
    const go = (x: number, y: number): void => void lines.push(`G1 ${at(x, y)} F6000`)
    const lay = (x: number, y: number, mm: number): void => {
      const pushed = (mm * lineMm * heightMm) / (Math.PI * 0.875 ** 2)
      lines.push(`G1 ${at(x, y)} E${pushed.toFixed(6)} F2400`)
    }
    const across = (fromX: number, toX: number, spacingMm: number): void => {
      const count = Math.floor((toX - fromX) / spacingMm)
      for (let k = 0; k < count; k++) {
        const x = fromX + (k + 0.5) * spacingMm
        go(x, k % 2 === 0 ? 0.8 : 39.2)
        lay(x, k % 2 === 0 ? 39.2 : 0.8, 38.4)
      }
    }
    for (let layer = 0; layer < 45; layer++) {
      const low = !step || layer < 25
      const endX = low ? 60 : 40
      lines.push(`G1 Z${((layer + 1) * heightMm).toFixed(3)} F6000`)
      for (const deepMm of [0.2, 0.6]) {
        go(deepMm, deepMm)
        lay(endX - deepMm, deepMm, endX - 2 * deepMm)
        lay(endX - deepMm, 40 - deepMm, 40 - 2 * deepMm)
        lay(deepMm, 40 - deepMm, endX - 2 * deepMm)
        lay(deepMm, deepMm, 40 - 2 * deepMm)
      }
      const roofed = step && layer >= 25 - top && layer < 25
      const solidFromX = layer < 4 || layer >= 45 - top ? 0.8 : roofed ? 40 - bandMm : endX - 0.8
      if (solidFromX > 0.8) across(0.8, solidFromX, 4)
      across(solidFromX, endX - 0.8, lineMm)
    }
    return `${lines.join('\n')}\n`
  }

  test.each([1, 2.5, 4, 6])('%d mm wide are read to half a millimetre', (bandMm) => {
    const { slopeBandMm, holdMm } = habitsOf(steppedBox(bandMm))
    expect(Math.abs(slopeBandMm! - bandMm)).toBeLessThan(0.5)
    expect(holdMm).toBe(slopeBandMm)
  })

  test('are not told by a box without a step', () => {
    const seen = habitsOf(steppedBox(3, false))
    expect(seen.slopeBandMm).toBeUndefined()
    expect(seen.holdMm).toBeUndefined()
  })
})
