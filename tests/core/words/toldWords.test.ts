import { afterEach, describe, expect, it } from 'vitest'
import { METRIC, showUnits } from '../../../src/core/words/shownUnits.ts'
import { toldWords } from '../../../src/core/words/toldWords.ts'

afterEach(() => {
  showUnits(METRIC)
})

const SENTENCES = [
  'The longest side measures 3.2 mm; airframe parts run from 5 mm to 1,500 mm.',
  '1,234 triangles lie up to 12.7 mm away from the rest, 2.54 cm³ in all.',
  'An M3 × 16 through 2.5-inch holes, “plate 12.7 mm v1.5”.',
  'Nothing odd found.',
]

describe('a sentence of the core', () => {
  it.each(SENTENCES)('stays as it is in metric and English: %s', (sentence) => {
    expect(toldWords(sentence, 'en-GB')).toBe(sentence)
  })

  it('takes the numbers of the browser, counts too, but no names', () => {
    expect(toldWords(SENTENCES[0] ?? '', 'de-DE')).toBe(
      'The longest side measures 3,2 mm; airframe parts run from 5 mm to 1.500 mm.',
    )
    expect(toldWords('1,234 edges; 0.36 of “part 1.5 mm”', 'de-DE')).toBe(
      '1.234 edges; 0,36 of “part 1.5 mm”',
    )
  })

  // 1 in = 25.4 mm, 1 oz = 28.349523125 g: NIST SP 811 (2008), B.8.
  it('is put into inches and ounces, each number of a row', () => {
    showUnits({ length: 'in', mass: 'oz' })
    expect(toldWords('10 × 25.4 × 3 mm on a bed of 254 × 254 mm', 'en')).toBe(
      '0.39 × 1 × 0.12 in on a bed of 10 × 10 in',
    )
    expect(toldWords('16 to 18 mm, x 1, y 2.5, z 3 mm, at 56.7 g', 'en')).toBe(
      '0.63 to 0.71 in, x 0.04, y 0.098, z 0.12 in, at 2 oz',
    )
    expect(toldWords('12.7 mm and 1,234.5 edges', 'fr-FR').replaceAll(/\s/g, ' ')).toBe(
      '0,5 in and 1 234,5 edges',
    )
    expect(toldWords('M3 × 16, 20 g/cm³, 50 mm/s, “bar 10 mm”', 'en')).toBe(
      'M3 × 16, 20 g/cm³, 50 mm/s, “bar 10 mm”',
    )
  })
})
