import { describe, expect, it } from 'vitest'
import { costBlame } from '../../../src/core/frame/costBlame.ts'
import { frameDoubt } from '../../../src/core/frame/frameDoubt.ts'
import type { DoubtedPart } from '../../../src/core/frame/frameDoubt.ts'
import type { FigureDoubt } from '../../../src/core/model/doubt.ts'
import { doubtedPart } from '../../support/doubtedParts.ts'

const SURE: FigureDoubt = { shared: [], own: 0 }
const row = (id: string, pieces: number, mid: number, cost: FigureDoubt): DoubtedPart => {
  const part = doubtedPart(id, 10, pieces)
  const range = { low: mid, mid, high: mid }
  const figures = {
    ...part.figures,
    cost: { ...range, filament: mid, electricity: 0, wear: 0, failures: 0 },
    doubt: { ...part.figures.doubt, cost },
  }
  return { ...part, figures }
}
const price = (effect: number) => ({ id: 'price:pla', name: 'Price of PLA', effect })
const power = (effect: number) => ({ id: 'power:p', name: 'Power of the printer', effect })

describe('who carries the doubt of a cost', () => {
  it('adds up what parts share and puts the rest together, in money (worked by hand)', () => {
    const blame = costBlame(
      frameDoubt(
        [
          row('a', 4, 2, { shared: [price(0.1), power(0.01)], own: 0.03 }),
          row('b', 1, 10, { shared: [price(0.05)], own: 0.04 }),
        ],
        [],
      ),
    )
    // Two deviations: 2·(8·0.1 + 10·0.05), 2·√((8·0.03)² + (10·0.04)²), 2·8·0.01.
    expect(blame.map(({ name }) => name)).toEqual([
      'Price of PLA',
      'Counting, part by part',
      'Power of the printer',
    ])
    expect(blame.map(({ money }) => money)).toEqual([
      expect.closeTo(2.6, 12),
      expect.closeTo(2 * Math.hypot(0.24, 0.4), 12),
      expect.closeTo(0.16, 12),
    ])
  })

  it('names nobody where nothing is unsure', () => {
    expect(costBlame(frameDoubt([row('a', 1, 5, SURE)], []))).toEqual([])
    expect(costBlame(frameDoubt([], []))).toEqual([])
  })
})
