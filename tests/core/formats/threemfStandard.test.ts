import { strToU8, zipSync } from 'fflate'
import { describe, expect, test, vi } from 'vitest'
import { readMesh } from '../../../src/core/formats/read.ts'
import { read3mf } from '../../../src/core/formats/threemf.ts'
import type { FindingCode, LengthUnit } from '../../../src/core/model/mesh.ts'
import type { ProblemCode } from '../../../src/core/model/problem.ts'
import { box } from '../../support/meshes.ts'
import { problemOf } from '../../support/problemOf.ts'
import { signedVolume } from '../../support/signedVolume.ts'
import { meshXml, modelXml, pack3mf } from '../../support/writeMesh.ts'

vi.setConfig({ testTimeout: 60_000 })

/*
 * Must-pass and must-fail ideas of the 3MF Core Specification (3MF Consortium, version 1.3) and of
 * the package rules it rests on (ISO/IEC 29500-2). Section names are given from memory. What is
 * forbidden there but has one clear meaning is read with a finding; the rest is refused. Every
 * block is 2 × 3 × 4, 24 by hand arithmetic.
 */

const MESH = meshXml(box(2, 3, 4))
const BLOCK = `<object id="1" type="model">${MESH}</object>`
const ITEM = '<item objectid="1"/>'
const MIRROR = '-1 0 0 0 1 0 0 0 1 0 0 0'
const model = modelXml(BLOCK, ITEM)

/** A package with parts put in, replaced or (null) left out. */
function packageOf(changes: Readonly<Record<string, string | null>>): Uint8Array {
  const parts: Record<string, string> = {
    '[Content_Types].xml':
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    '_rels/.rels':
      '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">' +
      '<Relationship Id="r" Target="/3D/3dmodel.model" ' +
      'Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>',
    '3D/3dmodel.model': model,
  }
  const files: Record<string, Uint8Array> = {}
  for (const [path, text] of Object.entries({ ...parts, ...changes })) {
    if (text !== null) files[path] = strToU8(text)
  }
  return zipSync(files, { level: 0 })
}

type Passes = readonly [
  section: string,
  title: string,
  bytes: Uint8Array,
  volume: number,
  findings: readonly FindingCode[],
  unit?: LengthUnit,
]

const PASSES: readonly Passes[] = [
  ['Package', 'the smallest whole package', packageOf({}), 24, []],
  [
    'Package',
    'a part name in other letters',
    packageOf({ '3D/3dmodel.model': null, '3d/3DModel.MODEL': model }),
    24,
    [],
  ],
  [
    'Package',
    'parts nobody asked for',
    packageOf({ 'Metadata/thumbnail.png': 'x', 'custom/data.xml': '<a/>' }),
    24,
    [],
  ],
  [
    'Package',
    'content types left out',
    packageOf({ '[Content_Types].xml': null }),
    24,
    ['off-standard'],
  ],
  [
    'Package',
    'relationships left out, one model part',
    packageOf({ '_rels/.rels': null }),
    24,
    ['off-standard'],
  ],
  [
    'Model',
    'no unit means millimetres',
    pack3mf(model.replace(' unit="millimeter"', '')),
    24,
    [],
    'millimetre',
  ],
  ['Model', 'unit inch is obeyed', pack3mf(modelXml(BLOCK, ITEM, 'inch')), 24, [], 'inch'],
  [
    'Model',
    'metadata and unknown elements of other namespaces',
    pack3mf(
      model.replace(
        '<resources>',
        '<metadata name="Title">arm</metadata><x:y xmlns:x="urn:x"><mesh/></x:y><resources>',
      ),
    ),
    24,
    [],
  ],
  [
    'Objects',
    'an object that no item builds is not printed',
    pack3mf(modelXml(`${BLOCK}<object id="2">${MESH}</object>`, ITEM)),
    24,
    [],
  ],
  [
    'Objects',
    'one object built twice',
    pack3mf(modelXml(BLOCK, `${ITEM}<item objectid="1" transform="1 0 0 0 1 0 0 0 1 10 0 0"/>`)),
    48,
    [],
  ],
  [
    'Objects',
    'type support beside a model is left out',
    pack3mf(
      modelXml(
        `${BLOCK}<object id="2" type="support">${MESH}</object>`,
        `${ITEM}<item objectid="2"/>`,
      ),
    ),
    24,
    ['skipped-content'],
  ],
  [
    'Objects',
    'type other as a component is left out',
    pack3mf(
      modelXml(
        `${BLOCK}<object id="2" type="other">${MESH}</object><object id="3"><components>` +
          '<component objectid="1"/><component objectid="2"/></components></object>',
        '<item objectid="3"/>',
      ),
    ),
    24,
    ['skipped-content'],
  ],
  [
    'Objects',
    'type solidsupport and surface are left out',
    pack3mf(
      modelXml(
        `${BLOCK}<object id="2" type="solidsupport">${MESH}</object><object id="3" type="surface">${MESH}</object>`,
        `${ITEM}<item objectid="2"/><item objectid="3"/>`,
      ),
    ),
    24,
    ['skipped-content'],
  ],
  [
    'Transforms',
    'a mirrored item keeps its volume',
    pack3mf(modelXml(BLOCK, `<item objectid="1" transform="${MIRROR}"/>`)),
    24,
    ['mirrored-item'],
  ],
  [
    'Transforms',
    'a scaling item',
    pack3mf(modelXml(BLOCK, '<item objectid="1" transform="2 0 0 0 2 0 0 0 2 0 0 0"/>')),
    192,
    [],
  ],
  [
    'Components',
    'components of components',
    pack3mf(
      modelXml(
        `${BLOCK}<object id="2"><components><component objectid="1"/></components></object>` +
          '<object id="3"><components><component objectid="2"/>' +
          '<component objectid="1" transform="1 0 0 0 1 0 0 0 1 9 0 0"/></components></object>',
        '<item objectid="3"/>',
      ),
    ),
    48,
    [],
  ],
  [
    'Components',
    'a component that comes before its object',
    pack3mf(
      modelXml(
        `<object id="2"><components><component objectid="1"/></components></object>${BLOCK}`,
        '<item objectid="2"/>',
      ),
    ),
    24,
    ['off-standard'],
  ],
  [
    'Mesh',
    'properties on triangles without their resources',
    pack3mf(model.replaceAll('<triangle ', '<triangle pid="9" p1="0" ')),
    24,
    [],
  ],
  [
    'Mesh',
    'a triangle with one corner twice',
    pack3mf(model.replace('</triangles>', '<triangle v1="0" v2="0" v3="1"/></triangles>')),
    24,
    [],
  ],
]

type Fails = readonly [
  section: string,
  title: string,
  bytes: Uint8Array,
  code: ProblemCode,
  words: RegExp,
]

const FAILS: readonly Fails[] = [
  [
    'Package',
    'no start part named and two model parts',
    packageOf({ '_rels/.rels': null, '3D/b.model': model }),
    'bad-3mf',
    /2 model parts/,
  ],
  [
    'Package',
    'the start part is not there',
    packageOf({ '3D/3dmodel.model': null, '3D/b.model': model }),
    'bad-3mf',
    /"\/3D\/3dmodel.model" that is not among/,
  ],
  [
    'Package',
    'the start part is no model',
    packageOf({ '3D/3dmodel.model': '<html/>' }),
    'bad-3mf',
    /<html>/,
  ],
  [
    'XML',
    'a document type',
    pack3mf(model.replace('<model', '<!DOCTYPE model><model')),
    'bad-xml',
    /document type/,
  ],
  [
    'XML',
    'an element that is not closed',
    pack3mf(model.replace('</build>', '')),
    'bad-xml',
    /is not sound XML at line \d+, column \d+: [^.]+\.$/,
  ],
  [
    'Model',
    'a unit that is none of the six',
    pack3mf(model.replace('millimeter', 'furlong')),
    'bad-3mf',
    /"furlong"/,
  ],
  [
    'Objects',
    'two objects with one id',
    pack3mf(modelXml(BLOCK + BLOCK, ITEM)),
    'bad-3mf',
    /two objects with the id 1/,
  ],
  [
    'Objects',
    'an object without an id',
    pack3mf(modelXml(`<object>${MESH}</object>`, ITEM)),
    'bad-3mf',
    /no id/,
  ],
  [
    'Build',
    'an item that names no object',
    pack3mf(modelXml(BLOCK, '<item objectid="7"/>')),
    'bad-3mf',
    /object 7/,
  ],
  [
    'Build',
    'an item without an objectid',
    pack3mf(modelXml(BLOCK, '<item/>')),
    'bad-3mf',
    /no objectid/,
  ],
  ['Build', 'nothing to build', pack3mf(modelXml(BLOCK, '')), 'no-triangles', /0 build items/],
  [
    'Build',
    'only supports to build',
    pack3mf(modelXml(`<object id="1" type="support">${MESH}</object>`, ITEM)),
    'no-triangles',
    /left out: support/,
  ],
  [
    'Transforms',
    'eleven numbers',
    pack3mf(modelXml(BLOCK, '<item objectid="1" transform="1 0 0 0 1 0 0 0 1 0 0"/>')),
    'bad-3mf',
    /11 words/,
  ],
  [
    'Transforms',
    'words for numbers',
    pack3mf(modelXml(BLOCK, '<item objectid="1" transform="1 0 0 0 1 0 0 0 1 0 0 up"/>')),
    'bad-3mf',
    /12 numbers/,
  ],
  [
    'Transforms',
    'one that flattens the object',
    pack3mf(modelXml(BLOCK, '<item objectid="1" transform="1 0 0 0 1 0 0 0 0 0 0 0"/>')),
    'bad-3mf',
    /flattens/,
  ],
  [
    'Components',
    'an object made of itself',
    pack3mf(
      modelXml('<object id="1"><components><component objectid="1"/></components></object>', ITEM),
    ),
    'bad-3mf',
    /contains itself.*1 → 1/,
  ],
  [
    'Components',
    'two objects made of each other',
    pack3mf(
      modelXml(
        '<object id="1"><components><component objectid="2"/></components></object><object id="2">' +
          '<components><component objectid="1"/></components></object>',
        ITEM,
      ),
    ),
    'bad-3mf',
    /1 → 2 → 1/,
  ],
  [
    'Mesh',
    'a corner beyond the vertices',
    pack3mf(model.replace('v1="0"', 'v1="8"')),
    'bad-index',
    /vertex 8.*8 vertices/,
  ],
  ['Mesh', 'a corner below zero', pack3mf(model.replace('v1="0"', 'v1="-1"')), 'bad-index', /"-1"/],
  [
    'Mesh',
    'a corner that is no whole number',
    pack3mf(model.replace('v1="0"', 'v1="0.5"')),
    'bad-index',
    /"0.5"/,
  ],
  [
    'Mesh',
    'a coordinate that is not finite',
    pack3mf(model.replace('x="0"', 'x="INF"')),
    'not-finite',
    /INF/,
  ],
  ['Mesh', 'a coordinate left out', pack3mf(model.replace('x="0"', '')), 'bad-3mf', /./],
  [
    'Mesh',
    'a mesh without triangles',
    pack3mf(modelXml('<object id="1"><mesh><vertices/><triangles/></mesh></object>', ITEM)),
    'no-triangles',
    /not one triangle/,
  ],
]

describe('what the 3MF standard lets pass, and what has a clear meaning', () => {
  for (const [section, title, bytes, volume, findings, unit] of PASSES) {
    test(`${section}: ${title}`, () => {
      const read = readMesh(bytes, 'a.3mf')
      expect(read.findings.map(({ code }) => code)).toEqual(findings)
      expect(signedVolume(read.mesh)).toBeCloseTo(volume, 9)
      if (unit !== undefined) expect(read.unit).toBe(unit)
    })
  }
})

/** What the specification's rules are about, by the sections above. */
const SUBJECTS: Readonly<Record<string, RegExp>> = {
  Package: /on parts and relationships:|on the model element:/,
  XML: /on XML:/,
  Model: /on the model element:/,
  Objects: /on objects:/,
  Build: /on build items:/,
  Transforms: /on 3D matrices:/,
  Components: /on components:/,
  Mesh: /on (vertices|triangles):/,
}

describe('what the 3MF standard forbids and nobody could price', () => {
  for (const [section, title, bytes, code, words] of FAILS) {
    test(`${section}: ${title}`, () => {
      const problem = problemOf(() => read3mf(bytes, 'a.3mf'))
      expect(problem.code).toBe(code)
      expect(problem.message).toMatch(words)
      // What breaks a rule says which; that it cannot be priced for another reason has advice of
      // its own.
      if (['bad-3mf', 'bad-index', 'bad-xml'].includes(code)) {
        expect(problem.advice).toMatch(SUBJECTS[section] ?? expect.fail(section))
      } else expect(problem.advice).not.toBe('')
    })
  }
})
