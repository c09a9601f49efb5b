import { describe, expect, it } from 'vitest'
import { parseFrameOptions } from '../../src/cli/frameOptions.ts'
import { UsageError } from '../../src/cli/usage.ts'

const parse = (args: readonly string[]) =>
  parseFrameOptions(args, (path) => {
    throw new Error(`no ${path} here`)
  })

/** What is not asked for. */
const BARE = {
  frame: 'demo',
  json: false,
  full: false,
  lessons: null,
  loads: null,
  find: null,
  spools: null,
  printers: [],
  coupon: null,
  stiffness: false,
}

describe('--frame on the command line', () => {
  it('goes alone or with --json and --full', () => {
    expect(parse(['--frame', 'demo', '--full'])).toMatchObject({ full: true })
    expect(parse(['--frame', 'demo'])).toEqual({ ...BARE })
    expect(parse(['--frame', 'demo', '--lessons', 'a.json'])?.lessons).toBe('a.json')
    expect(parse(['--json', '--frame=a.preweigh'])).toEqual({
      ...BARE,
      frame: 'a.preweigh',
      json: true,
    })
  })

  it('takes habits of its printer', () => {
    expect(parse(['--frame', 'demo', '--habits', '{"holdMm":2}'])).toEqual({
      ...BARE,
      habits: { holdMm: 2 },
    })
    expect(() => parse(['--frame', 'demo', '--habits', '{"holdMm":21}'])).toThrow(
      '--habits: “holdMm” must be a number from 0 to 20.',
    )
  })

  it('takes printers beside its own by their classes, and a file for the coupon', () => {
    const given = parse(['--frame', 'demo', '--printers', 'ordinary, fast-enclosed'])
    expect(given?.printers.map(({ id }) => id)).toEqual(['ordinary', 'fast-enclosed'])
    expect(() => parse(['--frame', 'demo', '--printers', 'ordinary,none'])).toThrow(
      '--printers: there is no “none”. Name some of ordinary, mid-2010s,',
    )
    expect(parse(['--frame', 'demo', '--coupon', 'c.stl'])?.coupon).toBe('c.stl')
    expect(() => parse(['--frame', 'demo', '--coupon='])).toThrow('--coupon needs a file')
  })

  it('is not asked for by meshes, nor beside --help', () => {
    expect(parse(['arm.stl', '--json'])).toBeNull()
    expect(parse(['--frame', 'demo', '--help'])).toBeNull()
  })

  it.each([
    [['--frame', 'demo', 'arm.stl'], /arm\.stl/],
    [['--frame', 'demo', '--recipe', 'arm'], /--recipe/],
    [['--frame', 'demo', '--material', 'pla'], /--material/],
    [['--frame', 'demo', '--printer', 'ordinary'], /--printer/],
    [['--frame', 'demo', '--quantity', '2'], /--quantity/],
    [['--frame', 'demo', '--unit', 'inch'], /--unit/],
    [['--frame', 'demo', '--currency', 'EUR'], /--currency/],
    [['--frame', 'demo', '--lines'], /--lines/],
    [['--frame'], /--frame/],
    [['--frame', ''], /--frame/],
    [['--frame', 'demo', '--lessons', ''], /--lessons/],
    [['--frame', 'demo', '--recipes', 'x'], /--recipes/],
  ])('refuses %j and names what is too much', (args, words) => {
    expect(() => parse(args)).toThrow(UsageError)
    expect(() => parse(args)).toThrow(words)
  })
})
