import { describe, expect, test } from 'vitest'
import { showGrams, showMass, showMoney, showTime } from '../../src/ui/show.ts'

const range = (low: number, mid: number, high: number) => ({ low, mid, high })

describe('figures in the ledger’s columns', () => {
  test('grams keep one decimal below 1000, none above, two decimals below one gram', () => {
    expect(showGrams(range(39.84, 43.42, 48.91))).toEqual({ mid: '43.4', range: '39.8–48.9' })
    expect(showGrams(range(134.2, 145.6, 164.4))).toEqual({ mid: '145.6', range: '134.2–164.4' })
    expect(showGrams(range(999.9, 1045.6, 1164.4))).toEqual({ mid: '1,046', range: '999.9–1,164' })
    expect(showGrams(range(0.722, 0.789, 0.889))).toEqual({ mid: '0.79', range: '0.72–0.89' })
  })

  test('a figure too small to show says so and needs no range', () => {
    expect(showGrams(range(0.0003, 0.0004, 0.0005))).toEqual({ mid: '<0.01', range: '' })
  })

  test('a difference carries a true minus', () => {
    expect(showGrams(range(-12, -1.9, 3)).mid).toBe('−1.9')
    expect(showMass(-1.9)).toBe('−1.9\u00a0g')
  })

  test('money keeps its small coins below 100', () => {
    expect(showMoney(range(5.42, 6.1, 7.02), 'EUR')).toEqual({ mid: '6.10', range: '5.42–7.02' })
  })

  test('money has the small coins that its currency has, and never a thousandth', () => {
    // ISO 4217 (2015), minor units: JPY 0, KWD 3.
    expect(showMoney(range(57.54, 73.05, 101.2), 'JPY')).toEqual({ mid: '73', range: '58–101' })
    expect(showMoney(range(0.8, 0.9, 1), 'KWD')).toEqual({ mid: '0.90', range: '0.80–1.00' })
  })

  test('hours read as on a clock, and to five minutes from ten hours on', () => {
    expect(showTime(range(59 * 60, 3600, 3725)).mid).toBe('1:00')
    expect(showTime(range(36_000, 47_820, 50_000)).mid).toBe('13:15')
    expect(showTime(range(20, 40, 59)).mid).toBe('0:01')
  })
})
