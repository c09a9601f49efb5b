import fc from 'fast-check'
import { expect, test, vi } from 'vitest'
import { readMesh } from '../../../src/core/formats/read.ts'
import type { LengthUnit } from '../../../src/core/model/mesh.ts'
import { box, scale } from '../../support/meshes.ts'
import { problemOf } from '../../support/problemOf.ts'
import { signedVolume } from '../../support/signedVolume.ts'
import { meshXml, modelXml, pack3mf, write3mf } from '../../support/writeMesh.ts'

// On a busy machine the same work may take the wall clock ten times as long.
vi.setConfig({ testTimeout: 60_000 })

const SEED = 20_253

const BOX = `<object id="1" name="block" type="model">${meshXml(box(2, 3, 4))}</object>`
const ITEM = '<item objectid="1"/>'

const read = (resources: string, build: string, others: Record<string, string> = {}) =>
  readMesh(pack3mf(modelXml(resources, build), others), 'arm.3mf')
const problem = (resources: string, build: string, others: Record<string, string> = {}) =>
  problemOf(() => read(resources, build, others))

/** Smallest and largest x, y, z. */
function bounds(positions: ArrayLike<number>) {
  const min = [Infinity, Infinity, Infinity]
  const max = [-Infinity, -Infinity, -Infinity]
  Array.from(positions).forEach((value, i) => {
    min[i % 3] = Math.min(min[i % 3]!, value)
    max[i % 3] = Math.max(max[i % 3]!, value)
  })
  return { min, max }
}

test('a box reads as 8 vertices, 12 triangles, its volume and its unit', () => {
  const { format, unit, mesh, pieces, findings } = read(BOX, ITEM)
  expect(format).toBe('3mf')
  expect(unit).toBe('millimetre')
  expect(mesh.positions).toHaveLength(3 * 8)
  expect(signedVolume(mesh)).toBe(24)
  expect(pieces).toEqual([{ name: 'block', firstTriangle: 0, triangleCount: 12 }])
  expect(findings).toEqual([])
})

test('every unit is reported and no coordinate converted', () => {
  for (const unit of [
    'micron',
    'millimetre',
    'centimetre',
    'inch',
    'foot',
    'metre',
  ] as LengthUnit[]) {
    const again = readMesh(write3mf(box(2, 3, 4), unit), 'arm.3mf')
    expect(again.unit).toBe(unit)
    expect(signedVolume(again.mesh)).toBe(24)
  }
  const unstated = modelXml(BOX, ITEM).replace(' unit="millimeter"', '')
  expect(readMesh(pack3mf(unstated), '').unit).toBe('millimetre')
})

test('each build item is a piece and goes where its transform says', () => {
  const { mesh, pieces } = read(
    BOX,
    `${ITEM}<item objectid="1" partnumber="left" transform="1 0 0 0 1 0 0 0 1 10 20 30"/>`,
  )
  expect(signedVolume(mesh)).toBeCloseTo(48, 9)
  expect(pieces).toEqual([
    { name: 'block', firstTriangle: 0, triangleCount: 12 },
    { name: 'left', firstTriangle: 12, triangleCount: 12 },
  ])
  expect(bounds(mesh.positions)).toEqual({ min: [0, 0, 0], max: [12, 23, 34] })
})

test('a quarter turn about z takes x to y, as the row-vector rule of the standard has it', () => {
  // 3MF Core Specification, "3D Matrices": (x y z 1) · M. The first row is where x goes: (0 1 0).
  const { mesh } = read(BOX, '<item objectid="1" transform="0 1 0 -1 0 0 0 0 1 0 0 0"/>')
  expect(signedVolume(mesh)).toBeCloseTo(24, 12)
  expect(bounds(mesh.positions)).toEqual({ min: [-3, 0, 0], max: [0, 2, 4] })
})

test('a mirrored item keeps its outside outside and is noted', () => {
  const { mesh, findings } = read(
    BOX,
    `<item objectid="1" transform="-1 0 0 0 1 0 0 0 1 0 0 0"/>${ITEM}`,
  )
  expect(signedVolume(mesh)).toBeCloseTo(48, 12)
  expect(findings).toEqual([
    {
      code: 'mirrored-item',
      grade: 'note',
      short: 'mirrored items',
      message:
        '1 build item of 2 is a mirror image of the mesh in the file; the faces were turned so that ' +
        'outside stays outside.',
      count: 1,
    },
  ])
})

test('a mirror within a mirror is no mirror', () => {
  const resources =
    `${BOX}<object id="2"><components><component objectid="1" transform="-1 0 0 0 1 0 0 0 1 0 0 0"/>` +
    '</components></object>'
  const { mesh, findings } = read(
    resources,
    '<item objectid="2" transform="1 0 0 0 -1 0 0 0 1 0 0 0"/>',
  )
  expect(signedVolume(mesh)).toBeCloseTo(24, 12)
  expect(findings).toEqual([])
})

test('components in components are placed inside first', () => {
  const resources = `${BOX}
    <object id="2"><components>
      <component objectid="1"/>
      <component objectid="1" transform="1 0 0 0 1 0 0 0 1 5 0 0"/>
    </components></object>
    <object id="3" name="pair of pairs"><components>
      <component objectid="2" transform="2 0 0 0 2 0 0 0 2 0 0 0"/>
      <component objectid="2" transform="1 0 0 0 1 0 0 0 1 0 50 0"/>
    </components></object>`
  const { mesh, pieces } = read(resources, '<item objectid="3"/>')
  expect(pieces).toEqual([{ name: 'pair of pairs', firstTriangle: 0, triangleCount: 48 }])
  expect(signedVolume(mesh)).toBeCloseTo(2 * 24 * 8 + 2 * 24, 9)
  // Moved by 5 and then doubled: 2 · (5 + 2) = 14. Doubled and then moved would end at 9.
  expect(bounds(mesh.positions)).toEqual({ min: [0, 0, 0], max: [14, 53, 8] })
})

test(`the volume goes with the determinant, whatever the transform (seed ${SEED})`, () => {
  const matrix = fc.array(fc.integer({ min: -4, max: 4 }), { minLength: 12, maxLength: 12 })
  fc.assert(
    fc.property(matrix, (m) => {
      const [a, b, c, d, e, f, g, h, i] = m as [
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
      ]
      const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
      const item = `<item objectid="1" transform="${m.join(' ')}"/>`
      if (determinant === 0) expect(problem(BOX, item).code).toBe('bad-3mf')
      else {
        const again = read(BOX, item)
        expect(signedVolume(again.mesh)).toBeCloseTo(24 * Math.abs(determinant), 6)
        expect(again.findings).toHaveLength(determinant < 0 ? 1 : 0)
      }
    }),
    { seed: SEED, numRuns: 200 },
  )
})

test('objects that are not of the type "model" are left out and named', () => {
  const others = ['support', 'other', 'solidsupport', 'surface'].map(
    (type, i) => `<object id="${i + 2}" type="${type}">${meshXml(box(1, 1, 1))}</object>`,
  )
  const items = [2, 3, 4, 5].map((id) => `<item objectid="${id}"/>`).join('')
  const { mesh, findings } = read(BOX + others.join(''), ITEM + items)
  expect(signedVolume(mesh)).toBe(24)
  expect(findings).toEqual([
    {
      code: 'skipped-content',
      grade: 'worth knowing',
      short: '"support", "other", "solidsupport", "surface" left out',
      message:
        '4 objects of the object type "support", "other", "solidsupport", "surface" were left out: ' +
        'only "model" is part of the solid.',
      count: 4,
    },
  ])
})

test('meshes in other model parts are found by their path', () => {
  // 3MF Production Extension: "path" on components and items.
  const other = modelXml(BOX, '')
  const resources =
    '<object id="9"><components><component objectid="1" p:path="/3D/Parts/arm%20one.model"/></components></object>'
  const root = modelXml(
    resources,
    '<item objectid="9"/><item objectid="1" p:path="/3d/parts/ARM one.model"/>',
    'millimetre',
    true,
  )
  const { mesh, findings } = readMesh(pack3mf(root, { '3D/Parts/arm one.model': other }), '')
  expect(signedVolume(mesh)).toBe(48)
  expect(findings).toEqual([])
})

test('a part in another unit keeps its size', () => {
  const resources =
    '<object id="9"><components><component objectid="1" p:path="/3D/b.model"/></components></object>'
  const root = modelXml(resources, '<item objectid="9"/>', 'millimetre', true)
  const other = modelXml(BOX, '', 'centimetre')
  const { mesh, unit, findings } = readMesh(pack3mf(root, { '3D/b.model': other }), '')
  expect(unit).toBe('millimetre')
  expect(signedVolume(mesh)).toBeCloseTo(24_000, 6)
  expect(findings).toMatchObject([{ code: 'not-millimetres' }])
})

test('the start part is the one that the relationships name', () => {
  const { mesh } = readMesh(
    pack3mf(modelXml(BOX, ITEM), { '3D/3dmodel.model': 'not it' }, 'other/start.model'),
    '',
  )
  expect(signedVolume(mesh)).toBe(24)
})

test('a prefix for the core namespace, UTF-16 and foreign elements change nothing', () => {
  const plain = modelXml(BOX, ITEM)
  const prefixed = plain.replaceAll(/<(\/?)(\w)/g, '<$1c:$2').replace(' xmlns="', ' xmlns:c="')
  expect(signedVolume(readMesh(pack3mf(prefixed), '').mesh)).toBe(24)

  const wide = Uint8Array.from(
    Array.from(`\ufeff${plain.replace('UTF-8', 'UTF-16')}`).flatMap((letter) => {
      const code = letter.charCodeAt(0)
      return [code & 0xff, code >> 8]
    }),
  )
  expect(signedVolume(readMesh(pack3mf('', { '3D/3dmodel.model': wide }), '').mesh)).toBe(24)

  const foreign = BOX.replace(
    '</mesh>',
    '<s:slices><vertices><vertex x="1" y="1"/></vertices></s:slices></mesh>',
  )
  expect(foreign).not.toBe(BOX)
  expect(signedVolume(read(foreign, ITEM).mesh)).toBe(24)
})

test('an extension that the file requires and that is not read is named', () => {
  const xml = modelXml(BOX, ITEM).replace(
    '<model ',
    '<model xmlns:b="http://schemas.example.org/lattice" requiredextensions="b" ',
  )
  expect(readMesh(pack3mf(xml), '').findings).toMatchObject([
    {
      code: 'skipped-content',
      grade: 'changes the grams',
      message: expect.stringContaining('http://schemas.example.org/lattice'),
    },
  ])
})

test('a corner that names no vertex is refused with both numbers', () => {
  expect(problem(BOX.replace(/v2="\d"/, 'v2="8"'), ITEM)).toMatchObject({
    code: 'bad-index',
    message:
      'arm.3mf: Triangle 0 of object 1 in "/3D/3dmodel.model" names vertex 8, and its 8 vertices count from 0.',
  })
  for (const bad of ['-1', '1.5', '', 'one', '99999999999']) {
    expect(problem(BOX.replace(/v2="\d"/, `v2="${bad}"`), ITEM).code, bad).toBe('bad-index')
  }
})

test('a coordinate that is missing, no number or has a comma is refused', () => {
  const bad = (x: string) => problem(BOX.replace('x="0"', x), ITEM)
  expect(bad('').code).toBe('bad-3mf')
  expect(bad('x=""').code).toBe('bad-number')
  expect(bad('x="two"').code).toBe('bad-number')
  expect(bad('x="0x10"').code).toBe('bad-number')
  expect(bad('x="NaN"').code).toBe('not-finite')
  expect(bad('x="1e999"').code).toBe('not-finite')
  expect(bad('x="1,5"')).toMatchObject({
    code: 'bad-number',
    message: expect.stringMatching(
      /^arm\.3mf: There is a decimal comma in x of vertex 0 at character \d+ of "\/3D\/3dmodel\.model": "1,5"\.$/,
    ),
  })
})

test('components that go round in a circle are refused with the way round', () => {
  const circle = [2, 3, 4].map((id) => {
    const next = id === 4 ? 2 : id + 1
    return `<object id="${id}"><components><component objectid="${next}"/></components></object>`
  })
  expect(problem(circle.join(''), '<item objectid="2"/>')).toMatchObject({
    code: 'bad-3mf',
    message: 'arm.3mf: Object 2 contains itself through its components: 2 → 3 → 4 → 2.',
  })
})

test('components that double forty times are refused before they are placed', () => {
  const doubling = Array.from({ length: 30 }, (_, i) => {
    const component = `<component objectid="${i + 1}"/>`
    return `<object id="${i + 2}"><components>${component}${component}</components></object>`
  })
  expect(problem(BOX + doubling.join(''), '<item objectid="31"/>').code).toBe('too-large')
  const empty = doubling.join('').replace('<component objectid="1"/>', '')
  expect(problem(`<object id="1"></object>${empty}`, '<item objectid="31"/>').code).toBe(
    'no-triangles',
  )
})

test('components a thousand levels deep are refused, however they are reached', () => {
  const chain = Array.from(
    { length: 1000 },
    (_, i) =>
      `<object id="${i + 2}"><components><component objectid="${i + 1}"/></components></object>`,
  )
  const upward = chain.map((_, i) => `<item objectid="${i + 2}"/>`).join('')
  for (const build of ['<item objectid="1001"/>', upward]) {
    expect(problem(BOX + chain.join(''), build)).toMatchObject({
      code: 'bad-3mf',
      message: 'arm.3mf: Its components are nested deeper than 32 levels.',
    })
  }
})

test('document types, entities and endless nesting are refused', () => {
  const xml = modelXml(BOX, ITEM)
  const bomb = '<!DOCTYPE model [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]>'
  for (const broken of [
    xml.replace('<model', `${bomb}<model`),
    xml.replace('name="block"', 'name="&b;"'),
    xml.replace('<build>', `<build>${'<a>'.repeat(1000)}`),
    xml.slice(0, 400),
    `${xml}<more/>`,
    'no xml',
    '',
  ]) {
    expect(problemOf(() => readMesh(pack3mf(broken), 'arm.3mf')).code, broken.slice(0, 90)).toBe(
      'bad-xml',
    )
  }
})

test('what the standard asks for and the file lacks is named', () => {
  expect(problem(BOX, '<item objectid="7"/>').message).toBe(
    'arm.3mf: A component or build item names object 7, and its model part has 1 object, none with that id.',
  )
  expect(problem(BOX, '')).toMatchObject({
    code: 'no-triangles',
    message: 'arm.3mf: It has 1 object and 0 build items, and not one triangle to print.',
  })
  expect(problem(BOX + BOX, ITEM).message).toBe(
    'arm.3mf: There are two objects with the id 1 in "/3D/3dmodel.model".',
  )
  expect(problem(BOX, '<item objectid="1" transform="1 0 0"/>').message).toContain('12 numbers')
  expect(problem(BOX, '<item/>').code).toBe('bad-3mf')
  const missing = modelXml('', '<item objectid="1" p:path="/3D/gone.model"/>', 'millimetre', true)
  expect(problemOf(() => readMesh(pack3mf(missing), 'arm.3mf')).message).toBe(
    'arm.3mf: It refers to a part "/3D/gone.model" that is not among the 3 parts of the package.',
  )
  const unit = modelXml(BOX, ITEM).replace('"millimeter"', '"cubit"')
  expect(problemOf(() => readMesh(pack3mf(unit), 'arm.3mf')).message).toBe(
    `arm.3mf: The unit "cubit" in "/3D/3dmodel.model" is none of 3MF's six.`,
  )
})

test('a transform that leaves every number behind is refused', () => {
  const far = '<item objectid="1" transform="1e38 0 0 0 1 0 0 0 1 3e38 0 0"/>'
  expect(problem(BOX, far).code).toBe('not-finite')
  expect(signedVolume(readMesh(write3mf(scale(box(2, 3, 4), 10)), '').mesh)).toBe(24_000)
})

test.each([
  ['Beam Lattice Extension', 'http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02'],
  ['Slice Extension', 'http://schemas.microsoft.com/3dmanufacturing/slice/2015/07'],
  ['Volumetric Extension', 'http://schemas.3mf.io/3dmanufacturing/volumetric/2022/01'],
  ['Displacement Extension', 'http://schemas.3mf.io/3dmanufacturing/displacement/2023/10'],
  ['"http://example.org/knots"', 'http://example.org/knots'],
])('a file without triangles names what holds its shape: %s', (title, namespace) => {
  const empty = '<object id="1"><mesh><vertices/><triangles/></mesh></object>'
  const xml = modelXml(empty, ITEM).replace(
    '<model ',
    `<model xmlns:q="${namespace}" requiredextensions="q" `,
  )
  const { code, message, advice } = problemOf(() => readMesh(pack3mf(xml), 'rib.3mf'))
  expect(code).toBe('no-triangles')
  expect(message).toContain(`its shape is in the 3MF ${title}, which is not read here`)
  expect(advice).toContain('plain mesh')
})

test('an extension that is used and not called required is named as well', () => {
  const lattice = 'http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02'
  const empty = `<object id="1"><mesh><vertices/><triangles/><b:beamlattice xmlns:b="${lattice}"/></mesh></object>`
  expect(problem(empty, ITEM).message).toContain('Beam Lattice Extension')
  expect(
    problem('<object id="1"><mesh><vertices/><triangles/></mesh></object>', ITEM).message,
  ).not.toContain('xtension')
})
