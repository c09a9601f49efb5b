import { afterAll, expect, it } from 'vitest'
import { wingPanel } from '../../src/demo/wing.ts'
import { openWorkshop } from '../../src/demo/workshop.ts'

const shop = await openWorkshop()
afterAll(() => shop.close())

it.each([0, 1] as const)('ends panel %i as deep and as thick as the next one begins', (panel) => {
  const end = wingPanel(shop, panel).slice(182.999).bounds()
  const start = wingPanel(shop, (panel + 1) as 1 | 2)
    .slice(0.001)
    .bounds()
  for (const side of ['min', 'max'] as const) {
    for (const axis of [0, 1] as const) expect(end[side][axis]).toBeCloseTo(start[side][axis], 2)
  }
})

it('covers the wing area the story tells of, 15.4 dm²', () => {
  const panels = ([0, 1, 2] as const).map((panel) => {
    const solid = wingPanel(shop, panel)
    const chord = (z: number) => {
      const { min, max } = solid.slice(z).bounds()
      return max[0] - min[0]
    }
    return (183 * (chord(0.001) + chord(182.999))) / 2
  })
  const areaDm2 = (2 * panels.reduce((a, b) => a + b, 0)) / 10_000
  expect(Math.abs(areaDm2 - 15.4)).toBeLessThan(0.1)
})

it('leaves more than two walls of 0.45 mm between the spar and the skin everywhere', () => {
  for (const panel of [0, 1, 2] as const) {
    // Thickest section less the tube, both halves.
    const { min, max } = wingPanel(shop, panel).slice(182.999).bounds()
    expect(max[1] - min[1] - 8.3).toBeGreaterThan(4 * 0.45)
  }
})
