import { expect, it } from 'vitest'
import { curvesLayout } from '../../src/ui/choose/curvesLayout.ts'

it('holds every mass between the ends of its one axis', () => {
  const { low, high } = curvesLayout([142.3, 170.5, 150.3], 7, 1300)
  expect(low).toBeLessThan(142.3)
  expect(high).toBeGreaterThan(170.5)
})

it('keeps one axis where all is the same, and starts at nothing at the least', () => {
  const { low, high } = curvesLayout([0.01, 0.01], 2, 1300)
  expect(low).toBe(0)
  expect(high).toBeGreaterThan(0.01)
})

it('stands beside one another as far as there is room, else below', () => {
  expect(curvesLayout([1, 2], 7, 1300).columns).toBe(7)
  const narrow = curvesLayout([1, 2], 7, 330)
  expect(narrow.columns).toBe(2)
  expect(narrow.heightPx).toBe(4 * narrow.rowPx)
})

it('shares panels out evenly over the rows it needs', () => {
  // Five would fit beside one another; three and three leave none alone.
  const six = curvesLayout([1, 2], 6, 680)
  expect([six.columns, six.heightPx / six.rowPx]).toEqual([3, 2])
  for (let panels = 1; panels <= 8; panels++) {
    for (let widthPx = 100; widthPx <= 1400; widthPx += 50) {
      const { columns, rowPx, heightPx } = curvesLayout([1, 2], panels, widthPx)
      const rows = heightPx / rowPx
      expect(columns * rows).toBeGreaterThanOrEqual(panels)
      // The last row lacks fewer panels than there are rows.
      expect(columns * rows - panels).toBeLessThan(rows)
    }
  }
})
