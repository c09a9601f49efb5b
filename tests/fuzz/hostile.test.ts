import { strToU8, zipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import type { CountWatch } from '../../src/core/census/countLayers.ts'
import { crowd } from '../support/crowd.ts'
import { startCounter, type RunCounter } from '../support/countedRuns.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { box, merge, sphere, tube } from '../support/meshes.ts'
import type { Ending } from '../support/endsWell.ts'
import { seededRandom } from '../support/random.ts'
import {
  meshXml,
  modelXml,
  pack3mf,
  write3mf,
  writeObj,
  writeStlAscii,
  writeStlBinary,
} from '../support/writeMesh.ts'

/** How much more memory the process may hold afterwards and meanwhile than before, at most. */
const LIMIT_MB = 900
const LONG = process.env['PREWEIGH_LONG'] === '1'
/**
 * Runs of our script's pieces any one file may take: three times what the hungriest does, 20 MB of
 * blank space.
 */
const LIMIT_RUNS = LONG ? 3e9 : 250e6
/**
 * The same where layers are crowded: of the three here the hungriest takes 3.4e9, and one that is a
 * little less crowded, all of whose layers are counted, 9e9.
 */
const LIMIT_CROWDED = LONG ? 20e9 : 4e9

vi.setConfig({ testTimeout: LONG ? 1_200_000 : 180_000, hookTimeout: 180_000 })

let counter: RunCounter
let endingsOf: (bytes: Uint8Array, name: string, watch?: CountWatch) => readonly Ending[]

beforeAll(async () => {
  vi.resetModules()
  counter = startCounter()
  ;({ endingsOf } = await import('../support/endsWell.ts'))
})

afterAll(() => {
  counter.stop()
})

function within(run: () => readonly Ending[], limitRuns = LIMIT_RUNS): readonly Ending[] {
  const before = process.memoryUsage().rss
  let endings: readonly Ending[] = []
  const { all } = counter.runsOf(() => {
    endings = run()
  })
  expect(all).toBeGreaterThan(0)
  expect(all).toBeLessThan(limitRuns)
  expect((process.memoryUsage().rss - before) / 1e6).toBeLessThan(LIMIT_MB)
  expect(endings.length).toBeGreaterThan(0)
  return endings
}

const PART = tube(6, 3, 3, 24)
const SAMPLES: readonly (readonly [name: string, bytes: Uint8Array])[] = [
  ['part.stl', writeStlBinary(PART)],
  ['text.stl', writeStlAscii(PART)],
  ['part.obj', writeObj(PART)],
  ['part.3mf', write3mf(PART)],
  ['parts.zip', zipSync({ 'a.stl': writeStlBinary(PART), 'b.obj': writeObj(PART) })],
]

describe('a file cut off', () => {
  for (const [name, bytes] of SAMPLES) {
    test(`${name}, at its start, its end and fifty places between`, () => {
      const places = [0, 1, 5, 83, 84, 85, 133, 134, bytes.length - 1, bytes.length - 22]
      for (let i = 1; i <= 50; i++) places.push(Math.floor((i * bytes.length) / 51))
      let refused = 0
      for (const place of places) {
        const endings = within(() => endingsOf(bytes.slice(0, Math.max(0, place)), name))
        if (endings.some(({ kind }) => kind === 'refused')) refused++
      }
      expect(refused).toBeGreaterThan(0)
    })
  }
})

describe('numbers that cannot be', () => {
  const BAD = [NaN, Infinity, -Infinity, 1e30, -1e30, 3e38, 1e-40]

  for (const bad of BAD) {
    test(`a coordinate of ${bad} in each format`, () => {
      const stl = writeStlBinary(PART)
      new DataView(stl.buffer).setFloat32(84 + 12, bad, true)
      const texts = [
        ['a.stl', replaceFirst(writeStlAscii(PART), /vertex \S+/, `vertex ${bad}`)],
        ['a.obj', replaceFirst(writeObj(PART), /v \S+/, `v ${bad}`)],
        [
          'a.3mf',
          pack3mf(
            modelXml(
              `<object id="1">${meshXml(PART).replace(/x="[^"]*"/, `x="${bad}"`)}</object>`,
              '<item objectid="1"/>',
            ),
          ),
        ],
      ] as const
      for (const [name, bytes] of [['b.stl', stl] as const, ...texts]) {
        const [ending] = within(() => endingsOf(bytes, name))
        if (Math.abs(bad) < 1) expect(ending!.kind, name).toBe('figures')
        else expect(ending!.kind, name).toBe('refused')
      }
    })
  }

  test('a header that promises four billion triangles takes no memory for them', () => {
    const bytes = writeStlBinary(PART)
    new DataView(bytes.buffer).setUint32(80, 0xffff_ffff, true)
    expect(within(() => endingsOf(bytes, 'a.stl'))).toMatchObject([{ kind: 'figures' }])
  })

  test('all coordinates 1e30, 1e-30 or the same', () => {
    for (const factor of [1e30, 1e-30, 0]) {
      const mesh = { ...PART, positions: PART.positions.map((value) => value * factor) }
      const [ending] = within(() => endingsOf(writeStlBinary(mesh), 'a.stl'))
      expect(ending!.kind).toBe('refused')
    }
  })

  test('a part a hundred kilometres long and one a thousand kilometres away', () => {
    const long = {
      ...PART,
      positions: PART.positions.map((value, i) => (i % 3 === 0 ? value * 1e7 : value)),
    }
    expect(within(() => endingsOf(writeObj(long), 'a.obj'))).toMatchObject([
      { kind: 'refused', code: 'too-large' },
    ])
    const far = { ...PART, positions: PART.positions.map((value) => value + 1e9) }
    expect(within(() => endingsOf(writeObj(far), 'a.obj'))[0]!.kind).toBe('figures')
  })

  test('decimal commas and UTF-16 are read or named', () => {
    const text = new TextDecoder().decode(
      writeStlAscii(PART, { number: (value) => value.toFixed(4) }),
    )
    const commas = strToU8(text.replaceAll(/(\d)\.(\d)/g, '$1,$2'))
    expect(within(() => endingsOf(commas, 'a.stl'))).toMatchObject([
      { kind: 'refused', code: 'bad-number', message: expect.stringContaining('decimal comma') },
    ])
    const wide = new Uint8Array(2 * text.length + 2)
    wide.set([0xff, 0xfe])
    for (let i = 0; i < text.length; i++) wide[2 + 2 * i] = text.charCodeAt(i)
    expect(within(() => endingsOf(wide, 'a.stl'))[0]!.kind).toBe('figures')
  })
})

describe('too much of the same', () => {
  const times = LONG ? 4_000_000 : 200_000

  test(`one facet ${times.toLocaleString('en')} times`, () => {
    const bytes = new Uint8Array(84 + 50 * times)
    const facet = writeStlBinary(box(5, 5, 5)).slice(84, 134)
    for (let i = 0; i < times; i++) bytes.set(facet, 84 + 50 * i)
    new DataView(bytes.buffer).setUint32(80, times, true)
    expect(within(() => endingsOf(bytes, 'a.stl'))).toMatchObject([{ kind: 'refused' }])
  })

  test('a block each of whose facets is there many times', () => {
    const copies = LONG ? 20_000 : 1000
    const mesh = merge(Array.from({ length: copies }, () => box(5, 5, 5)))
    const [ending] = within(() => endingsOf(writeStlBinary(mesh), 'a.stl'))
    expect(ending).toMatchObject({
      kind: 'figures',
      findings: expect.arrayContaining(['duplicate-triangles']),
    })
  })

  test('a soup of triangles that share nothing', () => {
    const random = seededRandom(77)
    const triangles = LONG ? 400_000 : 20_000
    const positions = Float64Array.from({ length: 9 * triangles }, () => 50 * random())
    const indices = Uint32Array.from({ length: 3 * triangles }, (_, i) => i)
    const endings = within(() => endingsOf(writeStlBinary({ positions, indices }), 'a.stl'))
    // Nearly every outline is open.
    expect(endings).toMatchObject([{ kind: 'refused' }])
  })

  test('thousands of balls', () => {
    const balls = LONG ? 5000 : 500
    const random = seededRandom(78)
    const mesh = merge(
      Array.from({ length: balls }, () => {
        const ball = sphere(0.5, 8)
        const by = [random() * 60, random() * 60, random() * 10]
        return { ...ball, positions: ball.positions.map((value, i) => value + by[i % 3]!) }
      }),
    )
    expect(within(() => endingsOf(writeStlBinary(mesh), 'a.stl'))[0]!.kind).toBe('figures')
  })

  // Of a clock that stands still only looks are counted. Their layers would take minutes each.
  const STILL: CountWatch = { budget: { spentS: () => 0 } }
  const bodies = LONG ? 200_000 : 10_000
  for (const [what, edgeMm, cubeMm, slender] of [
    ['bodies that cut one another everywhere', 40, 60, 1],
    ['needles through one another', 0.6, 60, 120],
  ] as const) {
    // Needles show all their outline: counting their runs takes a minute and more.
    test.skipIf(slender > 1 && !LONG)(`${bodies.toLocaleString('en')} ${what}`, () => {
      const bytes = writeStlBinary(crowd(bodies, edgeMm, cubeMm, slender))
      expect(within(() => endingsOf(bytes, 'a.stl', STILL), LIMIT_CROWDED)).toMatchObject([
        { kind: 'figures', findings: expect.arrayContaining(['counted-coarsely']) },
      ])
    })
  }

  test.skipIf(!LONG)('one ring that crosses itself everywhere', () => {
    const bytes = writeStlBinary(tangledRing(33_333))
    expect(within(() => endingsOf(bytes, 'a.stl', STILL), LIMIT_CROWDED)).toMatchObject([
      { kind: 'figures', findings: expect.arrayContaining(['counted-coarsely']) },
    ])
  })

  test('an ASCII facet whose blank space goes on for megabytes', () => {
    const size = LONG ? 200_000_000 : 20_000_000
    const text = strToU8('solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0')
    const bytes = new Uint8Array(size).fill(0x20)
    bytes.set(text)
    expect(within(() => endingsOf(bytes, 'a.stl'))).toMatchObject([{ kind: 'refused' }])
  })

  test('an OBJ face with more corners than can be filled', () => {
    const n = 200_000
    const rim = Array.from({ length: n }, (_, i) => {
      const angle = (2 * Math.PI * i) / n
      return `v ${Math.cos(angle)} ${Math.sin(angle)} 0`
    })
    const text = `${rim.join('\n')}\nf ${Array.from({ length: n }, (_, i) => i + 1).join(' ')}\n`
    expect(within(() => endingsOf(strToU8(text), 'a.obj'))).toMatchObject([{ kind: 'refused' }])
  })
})

describe('packages with tricks', () => {
  const PROMISE = new Uint8Array(1000)

  test('a ZIP bomb, by what it claims and by what it gives', () => {
    const zeros = zipSync(
      { 'a.stl': new Uint8Array(LONG ? 600_000_000 : 15_000_000) },
      { level: 9 },
    )
    expect(within(() => endingsOf(zeros, 'a.zip'))).toMatchObject([{ kind: 'refused' }])
    // Half a gigabyte and more are promised by each of many; what is given decides nothing any
    // more.
    const lies = zipSync(Object.fromEntries(['a', 'b', 'c'].map((n) => [`${n}.stl`, PROMISE])))
    const view = new DataView(lies.buffer)
    for (let at = 0; at < lies.length - 46; at++) {
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 600_000_000, true)
    }
    const endings = within(() => endingsOf(lies, 'a.zip'))
    expect(endings).toMatchObject(
      Array.from({ length: 3 }, () => ({
        kind: 'refused',
        message: expect.stringMatching(/\d MB|bytes/),
      })),
    )
  })

  test('ZIPs in ZIPs in ZIPs are not opened', () => {
    let bytes: Uint8Array = zipSync({ 'a.stl': writeStlBinary(PART) })
    for (let depth = 0; depth < 20; depth++) bytes = zipSync({ 'a.zip': bytes })
    expect(within(() => endingsOf(bytes, 'a.zip'))).toMatchObject([
      { kind: 'refused', code: 'bad-archive' },
    ])
  })

  test('one broken file among sound ones stops none of them', () => {
    const bytes = zipSync({
      'good.stl': writeStlBinary(PART),
      'cut.stl': writeStlBinary(PART).slice(0, 100),
      'words.obj': strToU8('v one two three\nf 1 2 3\n'),
      'good.3mf': write3mf(PART),
    })
    const kinds = within(() => endingsOf(bytes, 'a.zip')).map(({ kind }) => kind)
    expect(kinds).toEqual(['figures', 'refused', 'refused', 'figures'])
  })

  test('paths that climb, drive letters, long and empty names do no harm', () => {
    const bytes = zipSync({
      '../../../climb.stl': writeStlBinary(PART),
      '/etc/absolute.stl': writeStlBinary(PART),
      'C:\\windows\\drive.stl': writeStlBinary(PART),
      [`${'long/'.repeat(2000)}name.stl`]: writeStlBinary(PART),
      '__proto__/constructor.stl': writeStlBinary(PART),
    })
    const endings = within(() => endingsOf(bytes, 'a.zip'))
    expect(endings.map(({ kind }) => kind)).toEqual(Array.from({ length: 5 }, () => 'figures'))
  })

  test('entities, external ones and a billion laughs are refused', () => {
    const names = 'abcdefghijklmnopqrstu'
    const tenfold = Array.from(
      { length: 20 },
      (_, i) => `<!ENTITY ${names[i + 1]!} "${`&${names[i]!};`.repeat(10)}">`,
    )
    const laughs = `<!DOCTYPE m [<!ENTITY a "ha">${tenfold.join('')}]>`
    const outside = '<!DOCTYPE m [<!ENTITY x SYSTEM "file:///etc/passwd">]>'
    for (const trick of [laughs, outside]) {
      const model = modelXml(`<object id="1">${meshXml(PART)}</object>`, '<item objectid="1"/>')
      const bytes = pack3mf(model.replace('<model', `${trick}<model`))
      expect(within(() => endingsOf(bytes, 'a.3mf'))).toMatchObject([
        { kind: 'refused', code: 'bad-xml' },
      ])
    }
  })

  test('elements nested a hundred thousand deep and attributes without end', () => {
    const deep = modelXml(`${'<a>'.repeat(100_000)}${'</a>'.repeat(100_000)}`, '')
    expect(within(() => endingsOf(pack3mf(deep), 'a.3mf'))).toMatchObject([{ kind: 'refused' }])
    const wide = modelXml(
      `<object id="1" ${Array.from({ length: 50_000 }, (_, i) => `a${i}="b"`).join(' ')}>${meshXml(PART)}</object>`,
      '<item objectid="1"/>',
    )
    within(() => endingsOf(pack3mf(wide), 'a.3mf'))
  })
})

/** A closed triangular tube whose stations jump back and forth along it. */
function tangledRing(stations: number): Mesh {
  const random = seededRandom(80)
  const positions = new Float64Array(9 * stations)
  for (let i = 0; i < 3 * stations; i++) {
    const turn = 6 * random()
    const around = (2 * Math.PI * Math.floor(i / 3)) / stations + 1.5 * (random() - 0.5)
    const radius = 40 + 10 * Math.cos(turn) * (0.3 + random())
    positions[3 * i] = radius * Math.cos(around)
    positions[3 * i + 1] = radius * Math.sin(around)
    positions[3 * i + 2] = 10 + 10 * Math.sin(turn) * (0.3 + random())
  }
  const indices = new Uint32Array(18 * stations)
  for (let i = 0, at = 0; i < stations; i++) {
    const next = (i + 1) % stations
    for (let j = 0; j < 3; j++) {
      const [a, b] = [3 * i + j, 3 * i + ((j + 1) % 3)]
      const [c, d] = [3 * next + j, 3 * next + ((j + 1) % 3)]
      indices.set([a, b, c, c, b, d], at)
      at += 6
    }
  }
  return { positions, indices }
}

function replaceFirst(bytes: Uint8Array, pattern: RegExp, by: string): Uint8Array {
  return strToU8(new TextDecoder().decode(bytes).replace(pattern, by))
}
