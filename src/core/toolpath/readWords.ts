/** One line's command and the numbers after its letters; NaN where a letter is missing. */
export interface Words {
  /** `G` or `M` and its number, such as G1; '' where the line holds none. */
  command: string
  /** By letter code − 65. */
  readonly values: Float64Array
}

export const wordsBuffer = (): Words => ({ command: '', values: new Float64Array(26) })

const A = 65
const CODES = new Map<number, string>()

/**
 * Reads one line of letters with numbers (ISO 6983-1 words) into `words`. Comments (`;` to the end,
 * or within parentheses), a line number and a checksum are passed over; so is a word whose number
 * cannot be read.
 */
export function readWords(bytes: Uint8Array, from: number, to: number, words: Words): void {
  const { values } = words
  values.fill(NaN)
  words.command = ''
  let at = from
  while (at < to) {
    let letter = bytes[at]!
    if (letter >= 97 && letter <= 122) letter -= 32
    if (letter === 59 || letter === 42) return
    if (letter === 40) {
      while (at < to && bytes[at] !== 41) at++
      at++
      continue
    }
    at++
    if (letter < A || letter > 90) continue
    while (at < to && bytes[at] === 32) at++
    const start = at
    let sign = 1
    if (bytes[at] === 45) {
      sign = -1
      at++
    } else if (bytes[at] === 43) at++
    let digits = 0
    let scale = 1
    let seen = 0
    for (let past = false; at < to; at++) {
      const byte = bytes[at]!
      if (byte >= 48 && byte <= 57) {
        digits = digits * 10 + (byte - 48)
        if (past) scale *= 10
        seen++
      } else if (byte === 46 && !past) past = true
      else break
    }
    if (seen === 0) {
      if (at === start && at < to && bytes[at]! > 32) at = skipText(bytes, at, to)
      continue
    }
    const value = (sign * digits) / scale
    if ((letter === 71 || letter === 77) && words.command === '') {
      words.command = commandOf(letter, value)
    } else if (letter !== 78 && Number.isNaN(values[letter - A]!)) values[letter - A] = value
  }
}

function commandOf(letter: number, value: number): string {
  const key = letter * 100_000 + value
  const known = CODES.get(key)
  if (known !== undefined) return known
  const command = `${String.fromCharCode(letter)}${value}`
  if (CODES.size < 1000) CODES.set(key, command)
  return command
}

/** Past a word of letters, such as a name after a command that is not ours. */
function skipText(bytes: Uint8Array, from: number, to: number): number {
  let at = from
  while (at < to && bytes[at]! > 32 && bytes[at] !== 59) at++
  return at
}
