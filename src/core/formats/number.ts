import { MAX_COORDINATE } from './limits.ts'
import { grouped } from '../words/counts.ts'
import { refuse } from './refuse.ts'
import { isBlank, wordAt } from './text.ts'
import type { Cursor, Text } from './text.ts'

const ZERO = 0x30
const MINUS = 0x2d
const PLUS = 0x2b
const POINT = 0x2e
const BACKSLASH = 0x5c

/** Powers of ten that a double holds exactly. */
const POWERS = Float64Array.from({ length: 23 }, (_, n) => Number(`1e${n}`))

/**
 * Reads a decimal number in any exponent form and leaves the cursor behind it; −0 reads as 0.
 * Returns NaN, with the cursor unmoved, where there is no number or where letters stick to it.
 *
 * Correctly rounded: with at most 15–16 digits and a power of ten up to 22 both factors are exact,
 * so one multiplication rounds once (W. D. Clinger, "How to read floating point numbers
 * accurately", PLDI 1990); anything longer goes through `Number`.
 */
export function scanNumber(cursor: Cursor): number {
  const { bytes } = cursor
  let at = cursor.at
  let byte = bytes[at]!
  const negative = byte === MINUS
  if (negative || byte === PLUS) byte = bytes[++at]!

  let mantissa = 0
  let power = 0
  let digits = 0
  let exact = true
  for (; byte >= ZERO && byte <= 0x39; byte = bytes[++at]!) {
    if (mantissa < 9e14) mantissa = mantissa * 10 + (byte - ZERO)
    else exact = false
    digits++
  }
  if (byte === POINT) {
    byte = bytes[++at]!
    for (; byte >= ZERO && byte <= 0x39; byte = bytes[++at]!) {
      if (mantissa < 9e14) {
        mantissa = mantissa * 10 + (byte - ZERO)
        power--
      } else exact = false
      digits++
    }
  }
  if (digits === 0) return NaN

  if ((byte | 0x20) === 0x65) {
    byte = bytes[++at]!
    const down = byte === MINUS
    if (down || byte === PLUS) byte = bytes[++at]!
    if (!(byte >= ZERO && byte <= 0x39)) return NaN
    let exponent = 0
    for (; byte >= ZERO && byte <= 0x39; byte = bytes[++at]!) {
      if (exponent < 100_000) exponent = exponent * 10 + (byte - ZERO)
    }
    power += down ? -exponent : exponent
  }
  if (at < bytes.length && !isBlank(byte) && byte !== BACKSLASH) return NaN

  let value: number
  if (!exact || power < -22 || power > 22) value = numberBetween(bytes, cursor.at, at)
  else value = power < 0 ? mantissa / POWERS[-power]! : mantissa * POWERS[power]!
  cursor.at = at
  return negative && value !== 0 ? -value : value
}

function numberBetween(bytes: Uint8Array, start: number, end: number): number {
  let text = ''
  for (let at = start; at < end; at++) text += String.fromCharCode(bytes[at]!)
  return Math.abs(Number(text))
}

/**
 * Refuses the word at `start`, which is no coordinate, saying why. `where` ends the sentence: "in
 * facet 12".
 */
export function refuseNumber(text: Text, start: number, name: string, where: string): never {
  const word = wordAt(text.bytes, start)
  const place = `at byte ${grouped(text.byteAt(start))} ${where}`
  if (/^[-+]?\d*,\d/.test(word)) {
    refuse(
      name,
      'bad-number',
      `There is a decimal comma ${place}: "${word}".`,
      'Export it again with decimal points; set the program or the system to a language that writes 1.5.',
    )
  }
  const spelledOut = /^[-+]?(nan|inf|1\.#)/i.test(word)
  if (spelledOut || Math.abs(Number(word)) > MAX_COORDINATE) {
    refuse(
      name,
      'not-finite',
      spelledOut
        ? `The coordinate "${word}" ${place} is not a number.`
        : `The coordinate "${word}" ${place} is beyond ${MAX_COORDINATE.toExponential(1)}, ` +
            'the most a mesh file can hold.',
      'Repair the model where it was drawn and export it again.',
    )
  }
  refuse(
    name,
    'bad-number',
    word === ''
      ? `A coordinate is missing ${place}.`
      : `A coordinate was expected ${place}, but "${word}" stands there.`,
    'The file is damaged or was edited by hand: export it again.',
  )
}
