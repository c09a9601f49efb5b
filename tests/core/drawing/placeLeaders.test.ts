import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cross, placeLeaders } from '../../../src/core/drawing/placeLeaders.ts'
import type { LeaderRoom } from '../../../src/core/drawing/placeLeaders.ts'

const ROOM: LeaderRoom = { left: 40, right: 760, top: 60, bottom: 560, gapPx: 48, widePx: 74 }

const place = fc.record({
  x: fc.integer({ min: 120, max: 680 }),
  y: fc.integer({ min: 130, max: 490 }),
  crossed: fc.nat(3),
})

/** One place for all four sides, as of a small item. */
const asks = fc.array(place, { minLength: 1, maxLength: 20 }).map((places) =>
  places.map((at, i) => ({
    item: String(i),
    anchors: { left: at, right: at, top: at, bottom: at },
  })),
)

describe('leader lines', () => {
  test('numbers on one side stand apart and on the sheet, seed 7', () => {
    fc.assert(
      fc.property(asks, (list) => {
        const leaders = placeLeaders(list, ROOM)
        expect(leaders.map(({ item }) => item)).toEqual(list.map(({ item }) => item))
        for (const { number } of leaders) {
          expect(number.x).toBeGreaterThanOrEqual(ROOM.left)
          expect(number.x).toBeLessThanOrEqual(ROOM.right)
          expect(number.y).toBeGreaterThanOrEqual(ROOM.top)
          expect(number.y).toBeLessThanOrEqual(ROOM.bottom)
        }
        for (const side of ['left', 'right'] as const) {
          const ys = leaders
            .filter((leader) => leader.side === side)
            .map(({ number }) => number.y)
            .sort((a, b) => a - b)
          for (let i = 1; i < ys.length; i++) {
            expect(ys[i]! - ys[i - 1]!).toBeGreaterThanOrEqual(ROOM.gapPx - 1e-6)
          }
        }
      }),
      { seed: 7, numRuns: 300 },
    )
  })

  test('no line crosses another of its side, seed 8', () => {
    fc.assert(
      fc.property(asks, (list) => {
        const leaders = placeLeaders(list, ROOM)
        for (const [i, a] of leaders.entries()) {
          for (const b of leaders.slice(i + 1)) {
            if (a.side === b.side) expect(cross(a, b), `${a.item} and ${b.item}`).toBe(false)
          }
        }
      }),
      { seed: 8, numRuns: 300 },
    )
  })

  test('a line takes the side with the shortest way, and rather a longer one than over another item', () => {
    const at = { x: 100, y: 300, crossed: 0 }
    const near = { item: 'a', anchors: { left: at, right: at, top: at, bottom: at } }
    expect(placeLeaders([near], ROOM)[0]?.side).toBe('left')
    const hemmed = { item: 'b', anchors: { ...near.anchors, left: { ...at, crossed: 2 } } }
    expect(placeLeaders([hemmed], ROOM)[0]?.side).not.toBe('left')
  })

  test('no side takes more than 60 % of ten numbers', () => {
    const list = Array.from({ length: 10 }, (_, i) => {
      const at = { x: 90, y: 150 + 30 * i, crossed: 0 }
      return { item: String(i), anchors: { left: at, right: at, top: at, bottom: at } }
    })
    const left = placeLeaders(list, ROOM).filter(({ side }) => side === 'left')
    expect(left.length).toBeLessThanOrEqual(6)
  })
})
