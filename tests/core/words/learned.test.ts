import { describe, expect, it } from 'vitest'
import { learnedWords, strayMassWords, strayTimeWords } from '../../../src/core/words/learned.ts'

describe('learnedWords', () => {
  it('says how light or heavy a plastic prints, how sure that is and what told', () => {
    const light = { low: 0.96, mid: 0.969, high: 0.978 }
    expect(learnedWords('PETG', light, 4, 'en')).toBe(
      'Your PETG on this printer prints 3.1 ± 0.9 % light, from 4 weighings.',
    )
    expect(learnedWords('PETG', light, 4, 'de')).toContain('3,1 ± 0,9 %')
    const heavy = { low: 1.01, mid: 1.02, high: 1.03 }
    expect(learnedWords('PLA', heavy, 1, 'en')).toBe(
      'Your PLA on this printer prints 2 ± 1 % heavy, from 1 weighing.',
    )
  })

  it('does not call it light or heavy where it is neither', () => {
    const even = { low: 0.9902, mid: 1.0002, high: 1.0102 }
    expect(learnedWords('PLA', even, 2, 'en')).toBe(
      'Your PLA on this printer prints as calculated, ± 1 %, from 2 weighings.',
    )
  })
})

describe('strays', () => {
  it('name the part, both numbers and what to look for', () => {
    const words = strayMassWords(
      'Arm',
      26,
      { low: 19.5, mid: 20.2, high: 20.9 },
      { low: 19, mid: 20.2, high: 21.4 },
      'en',
    )
    for (const said of [
      '“Arm”',
      '26',
      '19.5',
      '20.9',
      '19\u{A0}g to 21.4\u{A0}g is taken',
      'brim',
      'another spool',
      'another recipe',
    ]) {
      expect(words).toContain(said)
    }
    expect(strayTimeWords('Arm', '2 h', '45 min – 1 h', '40 – 65 min')).toContain(
      '2 h, far outside 45 min – 1 h, and 40 – 65 min is taken',
    )
  })
})
