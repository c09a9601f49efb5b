import { expect, test } from 'vitest'
import { pace } from '../../../src/core/toolpath/pace.ts'

// Uniform acceleration: a way L driven at v with acceleration a from rest to rest takes L/v + v/a
// where L ≥ v²/a, else 2√(L/a).

const drive = (moves: readonly (readonly [number, number])[], cornerMmS = 0): number => {
  const clock = pace(cornerMmS)
  for (const [dx, dy] of moves) clock.move(dx, dy, 0, 50, 1000)
  return clock.end()
}

test('a long move speeds up, cruises and slows down; a short one turns round half-way', () => {
  expect(drive([[100, 0]])).toBeCloseTo(100 / 50 + 50 / 1000, 12)
  expect(drive([[1, 0]])).toBeCloseTo(2 * Math.sqrt(1 / 1000), 12)
})

test('a straight cut in many is driven as one, also beyond what is looked ahead', () => {
  const pieces = Array.from({ length: 3000 }, () => [0.1, 0] as const)
  expect(drive(pieces)).toBeCloseTo(300 / 50 + 50 / 1000, 9)
})

test('a right angle stops the head, or lets it pass at the speed it may be taken at', () => {
  const angle = [
    [100, 0],
    [0, 100],
  ] as const
  expect(drive(angle)).toBeCloseTo(2 * (100 / 50 + 50 / 1000), 12)
  // From rest to 8 mm/s at the corner: the ramp from 50 to 8 takes (50 − 8)/a over (50² − 8²)/2a.
  const rampMm = (50 ** 2 - 8 ** 2) / 2000
  const half = 50 / 1000 + (50 - 8) / 1000 + (100 - 50 ** 2 / 2000 - rampMm) / 50
  expect(drive(angle, 8)).toBeCloseTo(2 * half, 9)
})

test('a turn back is taken at the speed whose jump is that of a right angle', () => {
  // The velocity jumps by 2v: v = 8·√2/2.
  const v = 8 * Math.SQRT1_2
  const rampMm = (50 ** 2 - v ** 2) / 2000
  const half = 50 / 1000 + (50 - v) / 1000 + (100 - 50 ** 2 / 2000 - rampMm) / 50
  expect(
    drive(
      [
        [100, 0],
        [-100, 0],
      ],
      8,
    ),
  ).toBeCloseTo(2 * half, 9)
})

test('a pause stops the head and takes its time', () => {
  const clock = pace(8)
  clock.move(100, 0, 0, 50, 1000)
  clock.pause(3)
  clock.move(100, 0, 0, 50, 1000)
  expect(clock.end()).toBeCloseTo(2 * (100 / 50 + 50 / 1000) + 3, 12)
})
