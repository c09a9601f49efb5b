import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { HELP_WORDS } from '../../src/ui/help/helpWords.ts'

const WORDS = Object.entries(HELP_WORDS)

/** Every word that a mark on the page names. */
function marked(): ReadonlySet<string> {
  const files = readdirSync('src/ui', { recursive: true, encoding: 'utf8' }).filter((file) =>
    file.endsWith('.tsx'),
  )
  const named = files.flatMap((file) => {
    const text = readFileSync(path.join('src/ui', file), 'utf8')
    const found = [...text.matchAll(/(?:help=|HelpMark of=|help: |: )['"]([a-z ]+)['"]/g)]
    return found.map(([, word]) => word ?? '')
  })
  return new Set(named)
}

describe('the table of words', () => {
  it.each(WORDS)('tells %s in two lines, with where it comes from', (_, { words, source }) => {
    // A card is 320 px wide: some 55 letters a line beside no picture, and a picture takes a third.
    expect(words.length).toBeLessThanOrEqual(130)
    expect(words).toMatch(/\.$/)
    expect(source.length).toBeGreaterThan(8)
  })

  it('holds no word that the page does not mark', () => {
    const used = marked()
    expect(WORDS.map(([word]) => word).filter((word) => !used.has(word))).toEqual([])
  })

  it('says nothing that belongs to one program', () => {
    const all = WORDS.map(([word, { words }]) => `${word} ${words}`).join(' ')
    expect(all).not.toMatch(
      /perimeter|shell|wall loop|extrusion multiplier|interface|ironing|sparse/i,
    )
  })
})
