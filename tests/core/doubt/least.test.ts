import { describe, expect, it } from 'vitest'
import { rangeOf } from '../../../src/core/doubt/bell.ts'
import { rangeOfFigure } from '../../../src/core/doubt/figureDoubt.ts'
import { EXACT_ZERO, formOf, sumForms } from '../../../src/core/doubt/form.ts'
import { understand } from '../../../src/core/doubt/understand.ts'

/** A post of 1.5 g that is off by a third, whose walls weigh half of it. */
const post = {
  id: 'post',
  name: 'Post',
  quantity: 2,
  each: 1.5,
  doubt: { shared: [{ id: 'rooms', name: 'Small rooms', effect: 0.33 }], own: 0, least: 0.5 },
  scatter: 0,
}

describe('what a figure is sure to reach', () => {
  it('ends its range below and leaves it above', () => {
    const { low, high } = rangeOfFigure(1.5, post.doubt)
    expect(low).toBeCloseTo(0.75, 10)
    expect(high).toBeCloseTo(1.5 * 1.66, 10)
    expect(rangeOfFigure(1.5, { ...post.doubt, least: 0 }).low).toBeCloseTo(1.5 * 0.34, 10)
  })

  it('adds up over pieces and lines, and is none where one is taken away', () => {
    const known = understand([post], [])
    expect(rangeOf(known.bell(known.line('post'))).low).toBeCloseTo(1.5, 10)
    const line = known.line('post')
    expect(
      sumForms([
        [line, 1],
        [EXACT_ZERO, 1],
      ]).least,
    ).toBeCloseTo(1.5, 10)
    expect(
      sumForms([
        [line, 1],
        [formOf(4, []), 1],
      ]).least,
    ).toBeCloseTo(1.5, 10)
    expect(
      sumForms([
        [formOf(4, []), 1],
        [line, -1],
      ]).least,
    ).toBe(0)
  })

  it('gives way to a scale that shows less', () => {
    const of = { kind: 'pieces', lineId: 'post', pieces: 2 } as const
    const known = understand([post], [{ id: 'r', value: 1.4, noise: 0.01, of, trusted: true }])
    const { low, high } = rangeOf(known.bell(known.line('post')))
    expect(low).toBeLessThan(1.4)
    expect(high).toBeGreaterThan(1.4)
    expect(high).toBeLessThan(1.5)
  })
})
