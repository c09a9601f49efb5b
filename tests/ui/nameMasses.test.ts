import { expect, test } from 'vitest'
import { nameMasses, type DrawnMass } from '../../src/ui/aircraft/balance/nameMasses.ts'

const SHEET = { widthPx: 560, heightPx: 560, mark: { x: 280, y: 280 } }
const mass = (name: string, massG: number, x: number, y: number): DrawnMass => ({
  name,
  massG,
  x,
  y,
  radius: 10,
})

test('a name stands right of its circle, or left where the mark lies there', () => {
  const [pack] = nameMasses([mass('Pack', 200, 250, 280)], SHEET)
  // Right of it lies the mark.
  expect(pack!.x).toBeLessThan(250)
  const [first] = nameMasses([mass('Pack', 200, 100, 100)], SHEET)
  expect(first).toMatchObject({ name: 'Pack', y: 100 })
  expect(first!.x).toBeGreaterThan(110)
})

test('no name lies on another, on the mark or beyond the sheet; none is told twice', () => {
  const crowd = Array.from({ length: 40 }, (_, i) =>
    mass(`Item ${i % 20}`, 100 - i, 20 + ((i * 97) % 520), 20 + ((i * 61) % 520)),
  )
  const names = nameMasses(crowd, SHEET)
  expect(names.length).toBeGreaterThan(3)
  expect(new Set(names.map(({ name }) => name)).size).toBe(names.length)
  const half = ({ name }: { readonly name: string }) => name.length * 2.7
  for (const [i, one] of names.entries()) {
    expect(one.x - half(one)).toBeGreaterThanOrEqual(0)
    expect(one.x + half(one)).toBeLessThanOrEqual(560)
    expect(Math.abs(one.x - 280) < half(one) && Math.abs(one.y - 280) < 6).toBe(false)
    for (const other of names.slice(i + 1)) {
      const isUpon = Math.abs(one.x - other.x) < half(one) + half(other)
      expect(isUpon && Math.abs(one.y - other.y) < 13).toBe(false)
    }
  }
})

test('the middle of a crowd is not named, and a long name is cut', () => {
  const heap = Array.from({ length: 9 }, (_, i) =>
    mass(
      `A mass in a heap ${i}`,
      i === 4 ? 20 : 10,
      80 + 15 * (i % 3),
      80 + 15 * Math.floor(i / 3),
    ),
  )
  for (const { name } of nameMasses(heap, SHEET)) expect(name).not.toBe('A mass in a heap 4')
  const [long] = nameMasses([mass('x'.repeat(80), 1, 100, 400)], SHEET)
  expect(long!.name).toHaveLength(36)
})
