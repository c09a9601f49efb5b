/*
 * What someone typed, as a number. Both `.` and `,` are the decimal mark, whatever the language of the browser: a
 * builder's keypad, habits and browser seldom agree. A mark that stands once is therefore always the decimal mark, and
 * groups of three are known only where nothing else can be meant: by spaces or apostrophes, or by the other mark.
 */

const DIGITS = String.raw`\d+`
const GROUPED = (mark: string) => String.raw`[1-9]\d{0,2}(?:${mark}\d{3})+`
const SHAPES: readonly RegExp[] = [
  // 12  12.5  12,5  .5  12.
  new RegExp(`^(?:${DIGITS}[.,]?\\d*|[.,]\\d+)$`),
  // 12 345,6  12'345.6
  new RegExp(`^${GROUPED(' ')}(?:[.,]\\d*)?$`),
  new RegExp(`^${GROUPED("'")}(?:[.,]\\d*)?$`),
  // 12.345,6  12,345.6
  new RegExp(String.raw`^${GROUPED(String.raw`\.`)},\d*$`),
  new RegExp(String.raw`^${GROUPED(',')}\.\d*$`),
  // 1.234.567  1,234,567
  /^[1-9]\d{0,2}(?:\.\d{3}){2,}$/,
  /^[1-9]\d{0,2}(?:,\d{3}){2,}$/,
]

/**
 * The number a text stands for; null where any part of it does not belong to one. Never NaN; may be
 * infinite.
 */
export function parseNumber(text: string): number | null {
  const plain = text
    .trim()
    // Marks that turn the writing round come along with what is copied.
    .replaceAll(/[\u{200E}\u{200F}\u{061C}]/gu, '')
    .replaceAll(/[\u{A0}\u{202F}\u{2009}\u{2007}]/gu, ' ')
    .replaceAll('’', "'")
    .replace(/^\u{2212}/u, '-')
  const sign = plain.startsWith('-') ? -1 : 1
  const bare = plain.replace(/^[-+]/, '')
  if (!SHAPES.some((shape) => shape.test(bare))) return null
  const digits = bare.replaceAll(/[ ']/g, '')
  const marks = digits.match(/[.,]/g) ?? []
  const isWhole = marks.length > 1 && new Set(marks).size === 1
  const at = isWhole ? -1 : Math.max(digits.lastIndexOf('.'), digits.lastIndexOf(','))
  const before = (at === -1 ? digits : digits.slice(0, at)).replaceAll(/[.,]/g, '')
  const behind = at === -1 ? '' : digits.slice(at + 1)
  const value = Number(`${before === '' ? '0' : before}.${behind === '' ? '0' : behind}`)
  return value === 0 ? 0 : sign * value
}
