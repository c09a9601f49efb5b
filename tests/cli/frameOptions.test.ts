import { describe, expect, it } from 'vitest'
import { parseFrameOptions } from '../../src/cli/frameOptions.ts'
import { UsageError } from '../../src/cli/usage.ts'

describe('--frame on the command line', () => {
  it('goes alone or with --json', () => {
    expect(parseFrameOptions(['--frame', 'demo'])).toEqual({ frame: 'demo', json: false })
    expect(parseFrameOptions(['--json', '--frame=a.preweigh'])).toEqual({
      frame: 'a.preweigh',
      json: true,
    })
  })

  it('is not asked for by meshes, nor beside --help', () => {
    expect(parseFrameOptions(['arm.stl', '--json'])).toBeNull()
    expect(parseFrameOptions(['--frame', 'demo', '--help'])).toBeNull()
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
    [['--frame', 'demo', '--recipes', 'x'], /--recipes/],
  ])('refuses %j and names what is too much', (args, words) => {
    expect(() => parseFrameOptions(args)).toThrow(UsageError)
    expect(() => parseFrameOptions(args)).toThrow(words)
  })
})
