import { expect, it } from 'vitest'
import { VIEWS } from '../../../src/core/drawing/viewAxes.ts'
import { placeSigns } from '../../../src/ui/drawing/placeSigns.ts'

const sheet = { view: VIEWS.top, scale: 1, originPx: [200, 200], widthPx: 400 } as const
const sign = (message: string, ...atMm: [number, number, number][]) => ({
  isFault: true,
  atMm,
  label: '30 mm³',
  message,
})

it('marks every place, with words once, at the topmost, away from the middle', () => {
  const low = [30, -20, 0] as [number, number, number]
  const placed = placeSigns([sign('four', low, [30, 40, 0])], sheet)
  expect(placed).toHaveLength(1)
  const [{ spots, words }] = placed as [(typeof placed)[number]]
  expect(spots).toHaveLength(2)
  expect(spots[0]![1]).toBeLessThan(spots[1]![1])
  const [[x, y]] = spots as [(typeof spots)[number]]
  expect(words.y).toBe(y)
  expect(words.anchor).toBe(x < 200 ? 'end' : 'start')
  expect(Math.sign(words.x - x)).toBe(x < 200 ? -1 : 1)
})

it('writes no two words over each other where places are the same', () => {
  const names = ['one', 'two', 'three']
  const placed = placeSigns(
    names.map((name) => sign(name, [0, 0, 0])),
    sheet,
  )
  const ys = placed.map(({ words }) => words.y).toSorted((a, b) => a - b)
  expect(ys[1]! - ys[0]!).toBeGreaterThanOrEqual(14)
  expect(ys[2]! - ys[1]!).toBeGreaterThanOrEqual(14)
})

it('leaves out what is nowhere', () => {
  expect(placeSigns([sign('none')], sheet)).toEqual([])
})
