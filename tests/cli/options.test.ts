import { describe, expect, it } from 'vitest'
import { parseFrameOptions } from '../../src/cli/frameOptions.ts'
import { parseOptions } from '../../src/cli/options.ts'
import type { PriceOptions } from '../../src/cli/options.ts'
import { UsageError } from '../../src/cli/usage.ts'
import { PRINTERS } from '../../src/core/data/printers.ts'
import { ROLES } from '../../src/core/data/roles.ts'
import { RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'

const RECIPE_FILE = '{"walls": 3, "infillPct": 15}'

function parse(args: readonly string[], locale = 'de-DE'): PriceOptions {
  const readText = (path: string): string => {
    if (path === 'recipe.json') return RECIPE_FILE
    if (path === 'notes.txt') return 'three walls'
    throw new Error(`ENOENT ${path}`)
  }
  const options = parseOptions(args, readText, locale)
  if (options === null) throw new Error('help was asked for')
  return options
}

describe('the command line', () => {
  it('prices with usual settings when only a mesh is named', () => {
    const options = parse(['a.stl', 'b.3mf'])
    expect(options).toMatchObject({
      files: ['a.stl', 'b.3mf'],
      recipe: RECIPE_DEFAULTS,
      quantity: 1,
      unit: 'millimetre',
      json: false,
    })
    expect(options.material.id).toBe('pla')
    expect(options.printer).toBe(PRINTERS[0])
    expect(options.prices.currency).toBe('EUR')
  })

  it('takes a recipe as JSON, from a file or by role', () => {
    expect(parse(['--recipe', RECIPE_FILE, 'a.stl']).recipe).toEqual({
      ...RECIPE_DEFAULTS,
      walls: 3,
      infillPct: 15,
    })
    expect(parse(['--recipe', 'recipe.json', 'a.stl']).recipe.walls).toBe(3)
    expect(parse(['--recipe', 'arm', 'a.stl']).recipe).toEqual(ROLES.arm.recipe)
  })

  it('takes zones with one mesh, each with its infill, and refuses them with several', () => {
    expect(parse(['a.stl']).zones).toEqual([])
    const given = parse([
      '--zone',
      'root.stl=60',
      '--zone',
      'a=b.stl',
      '--zone',
      'c=d.stl=7.5',
      'a.stl',
    ])
    expect(given.zones).toEqual([
      { file: 'root.stl', path: 'root.stl', infillPct: 60 },
      { file: 'a=b.stl', path: 'a=b.stl', infillPct: 100 },
      { file: 'c=d.stl', path: 'c=d.stl', infillPct: 7.5 },
    ])
    expect(parse(['--zone', 'root.stl', 'a.stl']).zones).toEqual([
      { file: 'root.stl', path: 'root.stl', infillPct: 100 },
    ])
    expect(() => parse(['--zone', 'root.stl', 'a.stl', 'b.stl'])).toThrow(
      /--zone goes with one MESH, and 2 are given/,
    )
    expect(() => parse(['--zone', '', 'a.stl'])).toThrow(UsageError)
    expect(() => parse(['--zone', '=40', 'a.stl'])).toThrow(/needs a mesh file before the =/)
    for (const pct of ['101', '-1', 'x', '', '1,5']) {
      expect(() => parse(['--zone', `root.stl=${pct}`, 'a.stl'])).toThrow(
        `--zone is “root.stl=${pct}”; its infill must be a number from 0 to 100, as in root.stl=40.`,
      )
    }
    const many = Array.from({ length: 21 }, (_, i) => ['--zone', `z${i}.stl`]).flat()
    expect(() => parse([...many, 'a.stl'])).toThrow(/--zone is given 21 times; 20 is the most/)
  })

  it('sends who says the zone’s infill in the recipe to the zone', () => {
    expect(() => parse(['--recipe', '{"zonePct":60}', 'a.stl'])).toThrow(
      /zonePct is said with the zone now, as in --zone root\.stl=60/,
    )
  })

  it('starts with the layer height given, unless the first layer has its own', () => {
    expect(parse(['--recipe', '{"layerMm":0.1}', 'a.stl']).recipe.firstLayerMm).toBe(0.1)
    const both = '{"layerMm":0.1,"firstLayerMm":0.3}'
    expect(parse(['--recipe', both, 'a.stl']).recipe.firstLayerMm).toBe(0.3)
  })

  it('takes every key of the recipe', () => {
    const full = {
      layerMm: 0.16,
      firstLayerMm: 0.24,
      lineMm: 0.45,
      walls: 0,
      topSkins: 3,
      bottomSkins: 2,
      infillPct: 0,
      pattern: 'gyroid',
      supports: true,
      supportAngleDeg: 45,
      brimMm: 4,
    }
    expect(parse(['--recipe', JSON.stringify(full), 'a.stl']).recipe).toEqual({
      ...full,
    })
  })

  it('counts a typed density as the spool’s own, over the base named by id', () => {
    const text = '{"id":"petg","densityGCm3":1.25,"pricePerKg":18,"diameterMm":2.85}'
    const { material } = parse(['--material', text, 'a.stl'])
    expect(material).toMatchObject({ id: 'petg', densityTyped: true, diameterMm: 2.85 })
    expect(material.densityGCm3).toMatchObject({ value: 1.25, mark: 'user' })
    expect(material.pricePerKg.value).toBe(18)
    expect(parse(['--material', 'petg', 'a.stl']).material.densityTyped).toBe(false)
  })

  it('takes a printer by id, as JSON, or as changes to one by id', () => {
    expect(parse(['--printer', 'mid-2010s', 'a.stl']).printer.id).toBe('mid-2010s')
    const { printer } = parse(['--printer', '{"id":"mid-2010s","wallMmS":33}', 'a.stl'])
    expect(printer).toMatchObject({ id: 'mid-2010s', wallMmS: 33, skinMmS: 50 })
    const brisk = parse(['--printer', '{"accelMmS2":4000,"wallAccelMmS2":900}', 'a.stl']).printer
    expect([brisk.accelMmS2, brisk.wallAccelMmS2, brisk.travelAccelMmS2]).toEqual([4000, 900, 4000])
  })

  it('takes speeds that follow others where they are left out', () => {
    const { printer } = parse(['--printer', '{"outerWallMmS":30,"floorMmS":15}', 'a.stl'])
    expect(printer).toMatchObject({ outerWallMmS: 30, floorMmS: 15 })
    expect(printer).not.toHaveProperty('strandMmS')
    expect(parse(['a.stl']).printer).not.toHaveProperty('outerWallMmS')
  })

  it('prices in the currency of the locale or the one asked for', () => {
    expect(parse(['a.stl'], 'en-GB').prices.currency).toBe('GBP')
    expect(parse(['--currency', 'chf', 'a.stl'], 'en-GB').prices.currency).toBe('CHF')
  })

  it('takes any currency, of which what is not known is 0 and never that of another', () => {
    // ISO 4217 (2015): KRW, South Korea. No price is usual in it here.
    const { prices, material } = parse(['--currency', 'krw', 'a.stl'], 'en-GB')
    expect(prices).toMatchObject({ currency: 'KRW', electricityPerKwh: 0, wearPerHour: 0 })
    expect(material.pricePerKg.value).toBe(0)
  })

  it('gives null when help is asked for, mesh or not', () => {
    expect(parseOptions(['--help'], () => '', 'en')).toBeNull()
    expect(parseOptions(['-h', 'a.stl'], () => '', 'en')).toBeNull()
  })
})

describe('bad usage names what was given and what would do', () => {
  it.each([
    [[], /No mesh file/],
    [['a.stl', ''], /“”, without a name/],
    [['--recipie', 'x', 'a.stl'], /--recipie/],
    [['--recipe', '{"wals":2}', 'a.stl'], /--recipe: “wals” is not a key it knows/],
    [['--recipe', '{"walls":-1}', 'a.stl'], /walls is -1; .*from 0 to 50/],
    [['--recipe', '{"walls":1.5}', 'a.stl'], /walls is 1.5; .*whole number/],
    [['--recipe', '{"layerMm":0}', 'a.stl'], /layerMm is 0; .*from 0.02 to 2/],
    [['--recipe', '{"infillPct":101}', 'a.stl'], /infillPct is 101/],
    [['--recipe', '{"infillPct":"30"}', 'a.stl'], /infillPct is "30"/],
    [['--recipe', '{"pattern":"waves"}', 'a.stl'], /pattern is "waves"; .*honeycomb/],
    [['--recipe', '{"supports":1}', 'a.stl'], /supports is 1; .*true or false/],
    [['--recipe', '{"layerMm":', 'a.stl'], /--recipe: this is not JSON/],
    [['--recipe', '[1]', 'a.stl'], /--recipe: /],
    [
      ['--recipe', 'gone.json', 'a.stl'],
      /“gone.json” is neither JSON nor a role \(arm, .*\), nor a file/,
    ],
    [['--recipe', 'notes.txt', 'a.stl'], /“notes.txt” does not hold JSON/],
    [['--material', 'wood', 'a.stl'], /there is no “wood”.*petg/],
    [['--material', '{"densityGCm3":-1.2}', 'a.stl'], /densityGCm3 is -1.2/],
    [['--material', '{"id":"wood"}', 'a.stl'], /id is "wood"/],
    [['--material', '{"density":1}', 'a.stl'], /“density” is not a key/],
    [['--printer', 'best', 'a.stl'], /there is no “best”.*ordinary/],
    [['--printer', '{"wallMmS":0}', 'a.stl'], /wallMmS is 0/],
    [
      ['--printer', '{"strandMmS":0}', 'a.stl'],
      /strandMmS is 0; it must be a number from 1 to 1000/,
    ],
    [['--quantity', '0', 'a.stl'], /--quantity is “0”/],
    [['--quantity=-2', 'a.stl'], /--quantity is “-2”/],
    [['--quantity', '1.5', 'a.stl'], /--quantity is “1.5”/],
    [['--unit', 'cubit', 'a.stl'], /--unit is “cubit”.*inch/],
    [['--currency', 'XYZ', 'a.stl'], /--currency is “XYZ”.*ISO 4217.*EUR/],
    [['--nonsense', 'a.stl'], /^There is no option “--nonsense”; .* See --help\.$/],
    [['--quantity'], /^--quantity needs a value; .* See --help\.$/],
    [['--quantity', '-3', 'a.stl'], /^--quantity needs a value; .*--quantity=-/],
    [['--recipe', 'Arm', 'a.stl'], /“Arm” is neither JSON nor a role \(arm, .*\), nor a file/],
  ] as const)('%j', (args, message) => {
    expect(() => parse(args)).toThrow(UsageError)
    expect(() => parse(args)).toThrow(message)
  })
})

describe('--habits', () => {
  const habits = (...args: readonly string[]) => parse([...args, 'a.stl']).printer.habits

  it('are those of the printer, from JSON or a file of it, beside a printer given', () => {
    expect(habits()).toBeUndefined()
    const given = '{"joinedShare":0.2,"bead":"round","gapLines":false}'
    const read = { joinedShare: 0.2, bead: 'round', gapLines: false }
    expect(habits('--habits', given)).toEqual(read)
    expect(habits('--habits', given, '--printer', 'mid-2010s')).toEqual(read)
    expect(habits('--habits', '{}')).toEqual({})
    const options = parseOptions(['--habits', 'own.json', 'a.stl'], () => '{"holdMm":2}', 'en-GB')
    expect(options?.printer.habits).toEqual({ holdMm: 2 })
  })

  it.each([
    ['{"strandShare":3}', '--habits: “strandShare” must be a number from 0.5 to 2.'],
    ['{"bead":"oval"}', '--habits: “bead” must be square or round.'],
    ['{"strands":1}', '--habits: There is no habit “strands”; there are bead, outerWidthShare'],
    ['[1]', '--habits: it must be a JSON object'],
    ['{"holdMm"', '--habits: this is not JSON'],
    ['nowhere.json', '--habits: “nowhere.json” is neither JSON, nor a file: '],
  ])('%s is refused with its reason', (given, words) => {
    expect(() => habits('--habits', given)).toThrow(UsageError)
    expect(() => habits('--habits', given)).toThrow(words)
  })
})

describe('an option given twice', () => {
  it.each([
    ['--quantity', ['--quantity', '2', '--quantity=3', 'a.stl']],
    ['--material', ['--material', 'pla', 'a.stl', '--material', 'petg']],
    ['--json', ['--json', '--json', 'a.stl']],
    ['--help', ['-h', '--help']],
  ])('%s is refused, not replaced', (name, args) => {
    expect(() => parse(args)).toThrow(UsageError)
    expect(() => parse(args)).toThrow(`${name} is given more than once`)
  })

  it('is refused for a frame as well', () => {
    expect(() => parseFrameOptions(['--frame', 'demo', '--frame', 'tern'], () => '')).toThrow(
      '--frame is given more than once',
    )
  })

  it('behind -- is a file', () => {
    expect(parse(['--json', '--', '--json', 'a.stl']).files).toEqual(['--json', 'a.stl'])
  })
})
