import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { placeLabels, type PlacedLabel, type RulerLabel } from '../../src/ui/head/placeLabels.ts'

const SEED = 20_271_126
/** Of a letter of 12 px on the page, on average, and how far from its mark a name begins, px. */
const LETTER_PX = 6.3
const AWAY_PX = 6

/** Where the ruler draws a name. */
function extent({ words, xPx, side }: PlacedLabel): readonly [from: number, to: number] {
  const widePx = LETTER_PX * words.length
  return side === 'left'
    ? [xPx - AWAY_PX - widePx, xPx - AWAY_PX]
    : [xPx + AWAY_PX, xPx + AWAY_PX + widePx]
}

const RULER = fc.integer({ min: 200, max: 1900 }).chain((widthPx) =>
  fc.record({
    widthPx: fc.constant(widthPx),
    labels: fc
      .array(
        fc.record({
          words: fc.string({ minLength: 3, maxLength: 24 }),
          xPx: fc.double({ min: 0, max: widthPx, noNaN: true }),
          side: fc.constantFrom('left' as const, 'right' as const),
        }),
        { maxLength: 5 },
      )
      .map((all) => all.map((label, i): RulerLabel => ({ ...label, id: `${i}` }))),
  }),
)

describe('names beside the marks of the ruler', () => {
  test('never leave the ruler, and never lie on one another', () => {
    fc.assert(
      fc.property(RULER, ({ widthPx, labels }) => {
        const placed = placeLabels(labels, widthPx)
        for (const label of placed) {
          const [from, to] = extent(label)
          expect(from).toBeGreaterThanOrEqual(0)
          expect(to).toBeLessThanOrEqual(widthPx)
          for (const other of placed) {
            if (other.id === label.id || other.line !== label.line) continue
            const [otherFrom, otherTo] = extent(other)
            expect(
              to <= otherFrom || from >= otherTo,
              `${from}–${to}, ${otherFrom}–${otherTo}`,
            ).toBe(true)
          }
        }
      }),
      { seed: SEED, numRuns: 2000 },
    )
  })

  test('next to the scale never lie on the mark of another', () => {
    fc.assert(
      fc.property(RULER, ({ widthPx, labels }) => {
        for (const label of placeLabels(labels, widthPx).filter(({ line }) => line === 0)) {
          const [from, to] = extent(label)
          for (const { id, xPx } of labels) {
            if (id !== label.id)
              expect(xPx <= from || xPx >= to, `${xPx} in ${from}–${to}`).toBe(true)
          }
        }
      }),
      { seed: SEED, numRuns: 2000 },
    )
  })

  test('stay those of their marks, each once and in their order', () => {
    fc.assert(
      fc.property(RULER, ({ widthPx, labels }) => {
        const ids = placeLabels(labels, widthPx).map(({ id, words, xPx }) => {
          expect(labels.find((label) => label.id === id)).toMatchObject({ words, xPx })
          return Number(id)
        })
        expect(ids).toEqual([...new Set(ids)].toSorted((a, b) => a - b))
      }),
      { seed: SEED, numRuns: 500 },
    )
  })

  test('stand on the side they ask for where there is room, on the other where not, above where neither', () => {
    const at = (id: string, xPx: number, side: 'left' | 'right'): RulerLabel => ({
      id,
      words: 'limit 145.0',
      xPx,
      side,
    })
    const sides = (labels: readonly RulerLabel[], widthPx: number) =>
      placeLabels(labels, widthPx).map(({ id, side, line }) => `${id} ${side} ${line}`)
    expect(sides([at('a', 500, 'right')], 1000)).toEqual(['a right 0'])
    expect(sides([at('a', 990, 'right')], 1000)).toEqual(['a left 0'])
    // Both names to the right of both marks: the second has room only one line up.
    expect(sides([at('a', 20, 'right'), at('b', 10, 'right')], 400)).toEqual([
      'a right 0',
      'b right 1',
    ])
    // Never over the needle, which has no name.
    expect(
      placeLabels([at('a', 500, 'right')], 1000, [520]).map(({ side, line }) => [side, line]),
    ).toEqual([['left', 0]])
    // Narrower than a name: only the mark is left.
    expect(sides([at('a', 20, 'right')], 40)).toEqual([])
  })

  test('are left out before any that came earlier', () => {
    fc.assert(
      fc.property(RULER, ({ widthPx, labels }) => {
        // What is placed of the first few hangs on the marks of all, but not on the names of the
        // rest.
        const unnamed = labels.map((label, i) => (i < 2 ? label : { ...label, words: '' }))
        const first = (all: readonly RulerLabel[]) =>
          placeLabels(all, widthPx).filter(({ id }) => Number(id) < 2)
        expect(first(labels)).toEqual(first(unnamed))
      }),
      { seed: SEED, numRuns: 500 },
    )
  })
})
