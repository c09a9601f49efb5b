import { describe, expect, test } from 'vitest'
import { parseFrameOptions } from '../../src/cli/frameOptions.ts'
import { runPrice } from '../../src/cli/runPrice.ts'
import { spoolsFrom } from '../../src/cli/spools.ts'

const none = (): string => {
  throw new Error('no file in this test')
}
const GOOD = '[{"material": "petg", "grossG": 812, "emptyG": 223}]'

describe('--spools', () => {
  test('is a list of spools, from text or from a file', () => {
    const spools = [{ id: '1', materialId: 'petg', grossG: 812, emptyG: 223 }]
    expect(spoolsFrom(GOOD, none)).toEqual(spools)
    expect(spoolsFrom('shelf.json', () => GOOD)).toEqual(spools)
    const options = parseFrameOptions(['--frame', 'demo', '--spools', GOOD], none)
    expect(options?.spools).toEqual(spools)
    expect(parseFrameOptions(['--frame', 'demo'], none)?.spools).toBeNull()
  })

  test.each(['petgg', 'PETG', 'constructor'])(
    'of “%s”, which is no material, ends it',
    async (id) => {
      const shelf = JSON.stringify([{ material: id, grossG: 812, emptyG: 223 }])
      let err = ''
      const code = await runPrice(['--frame', 'tern', '--spools', shelf], {
        base: '.',
        locale: 'en-GB',
        out: none,
        err: (said) => (err += said),
        onProgress: none,
      })
      expect(code).toBe(2)
      expect(err).toMatch(
        new RegExp(`^--spools: there is no plastic “${id}”\\. Choose of .*petg.*\\.\n$`),
      )
    },
  )

  test.each([
    ['{"material": "petg"}', /must be a list/],
    ['[{"material": "petg", "grossG": 812}]', /number 1 .*: .*emptyG/],
    [
      '[{"material": "petg", "grossG": -1, "emptyG": 0}]',
      /number 1 .*: grossG is -1; it must be a number from 0 to 20000\.$/,
    ],
    [
      '[{"material": 7, "grossG": 1, "emptyG": 0}]',
      /number 1 .*: material is 7; it must be the id of a material/,
    ],
    ['[{"material": "petg", "grossG": 1, "emptyG": 0, "colour": "red"}]', /number 1 .*colour/],
  ])('%s is refused with what is wrong', (text, words) => {
    expect(() => spoolsFrom(text, none)).toThrow(words)
  })
})
