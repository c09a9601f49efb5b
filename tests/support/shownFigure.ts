import { expect } from 'vitest'

/** The first figure of a text, in English; its last digit is worth `stepOf`. */
const FIGURE = /[−-]?\d[\d,]*(\.\d+)?/

/**
 * The first figure of `text` is `value` to the digits it shows: three at least, and never more than
 * half of the last digit off.
 */
export function expectShown(text: string, value: number, of = ''): void {
  const figure = FIGURE.exec(text)
  expect(figure, `a figure in “${text}” ${of}`).not.toBeNull()
  const [word, decimals = '.'] = figure!
  const shown = Number(word.replaceAll(',', '').replace('−', '-'))
  const half = 0.5 * 10 ** (1 - decimals.length)
  // Three digits: half of the last of 100 is 0.5 %.
  const reach = Math.max(half, 0.005 * Math.abs(value)) + 1e-9
  expect.soft(Math.abs(shown - value), `“${text}” for ${value} ${of}`).toBeLessThanOrEqual(reach)
}

/**
 * Grams as lists write them: to the tenth, small ones to the hundredth, and never 0 for something.
 */
export function expectGrams(text: string, massG: number, of = ''): void {
  if (text.includes('<0.01')) {
    expect.soft(Math.abs(massG), `“${text}” ${of}`).toBeLessThan(0.005)
    return
  }
  const [word] = FIGURE.exec(text) ?? ['']
  const shown = Number(word.replaceAll(',', '').replace('−', '-'))
  const size = Math.abs(massG)
  const half = size < 0.995 ? 0.005 : size < 999.95 ? 0.05 : 0.5
  expect
    .soft(Math.abs(shown - massG), `“${text}” for ${massG} g ${of}`)
    .toBeLessThanOrEqual(half + 1e-9)
}

/** “2:53” or “13:25”, to the five minutes from ten hours on. */
export function expectClock(text: string, timeS: number, of = ''): void {
  const [, hours, minutes] = /(\d+):(\d\d)/.exec(text) ?? []
  const shownS = 3600 * Number(hours) + 60 * Number(minutes)
  const half = timeS < 36_000 ? 30 : 150
  expect
    .soft(Math.abs(shownS - timeS), `“${text}” for ${timeS} s ${of}`)
    .toBeLessThanOrEqual(half + 1)
}
