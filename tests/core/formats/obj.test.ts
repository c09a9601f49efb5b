import { expect, test } from 'vitest'
import { readMesh } from '../../../src/core/formats/read.ts'
import { problemOf } from '../../support/problemOf.ts'
import { signedVolume } from '../../support/signedVolume.ts'

const CORNERS = `v 0 0 0
v 2 0 0
v 2 3 0
v 0 3 0
v 0 0 4
v 2 0 4
v 2 3 4
v 0 3 4
`
/** The six sides of a 2 × 3 × 4 box, outward. */
const SIDES = `f 4 3 2 1
f 5 6 7 8
f 1 2 6 5
f 2 3 7 6
f 3 4 8 7
f 4 1 5 8
`

const read = (text: string) => readMesh(new TextEncoder().encode(text), 'arm.obj')
const problem = (text: string) => problemOf(() => read(text))

test('a box of six quads reads as 12 triangles and its volume', () => {
  const { format, unit, mesh, pieces, findings } = read(CORNERS + SIDES)
  expect(format).toBe('obj')
  expect(unit).toBeNull()
  expect(mesh.positions).toHaveLength(3 * 8)
  expect(signedVolume(mesh)).toBe(24)
  expect(pieces).toEqual([{ name: '', firstTriangle: 0, triangleCount: 12 }])
  expect(findings).toEqual([])
})

test('every way to name corners gives the same mesh', () => {
  const expected = read(CORNERS + SIDES)
  const each = (change: (corner: number) => string) =>
    SIDES.replaceAll(/\d+/g, (corner) => change(Number(corner)))
  const variants = {
    texture: each((k) => `${k}/1`),
    normal: each((k) => `${k}//1`),
    both: each((k) => `${k}/1/1`),
    'counted back': each((k) => String(k - 9)),
    'counted back, both': each((k) => `${k - 9}/-1/-1`),
  }
  for (const [title, sides] of Object.entries(variants)) {
    expect(read(`${CORNERS}vt 0 0\nvn 0 0 1\n${sides}`), title).toEqual(expected)
  }
})

test('comments, blank lines, line ends and lines carried on change nothing', () => {
  const expected = read(CORNERS + SIDES).mesh
  const plain = CORNERS + SIDES
  const variants = {
    windows: plain.replaceAll('\n', '\r\n'),
    'old Macintosh': plain.replaceAll('\n', '\r'),
    comments: `# a path C:\\parts\\\n${plain.replaceAll('\n', ' # remark\n# f 1 2 99\n\n')}`,
    'carried on': plain.replaceAll(' ', ' \\\n '),
    'carried on, windows': plain.replaceAll(' ', '\\\r\n'),
    tabs: plain.replaceAll(' ', '\t'),
    'no line end at the end': plain.trimEnd(),
    'faces first': SIDES + CORNERS,
    'byte order mark': `\ufeff${plain}`,
    colours: CORNERS.replaceAll(/(v .*)/g, '$1 0.5 0.5 0.5') + SIDES,
    'other statements': `mtllib a.mtl\n${CORNERS}usemtl red\ns off\nvp 1\nl 1 2\np 1\n${SIDES}`,
  }
  for (const [title, text] of Object.entries(variants)) {
    const again = read(text)
    expect(again.mesh, title).toEqual(expected)
    expect(again.findings, title).toEqual([])
  }
})

test('a side with corners that point inward is filled only inside', () => {
  // An L of 5 mm² pulled up by 2 mm, its ends single six-cornered faces.
  const outline = [
    [0, 0],
    [3, 0],
    [3, 1],
    [1, 1],
    [1, 3],
    [0, 3],
  ]
  const lines = [0, 2].flatMap((z) => outline.map(([x, y]) => `v ${x} ${y} ${z}`))
  lines.push('f 6 5 4 3 2 1', 'f 7 8 9 10 11 12')
  for (let i = 0; i < 6; i++) {
    const next = (i + 1) % 6
    lines.push(`f ${i + 1} ${next + 1} ${next + 7} ${i + 7}`)
  }
  const { mesh } = read(lines.join('\n'))
  expect(signedVolume(mesh)).toBeCloseTo(10, 12)
  expect(areaLookingUp(mesh)).toBeCloseTo(5, 12)
})

test('objects and groups that hold faces are pieces', () => {
  const second = SIDES.replaceAll(/\d+/g, (corner) => String(Number(corner) - 9))
  const text = `${CORNERS}o lower deck\n${SIDES}o empty\ng feet left\n${CORNERS}${second}`
  expect(read(text).pieces).toEqual([
    { name: 'lower deck', firstTriangle: 0, triangleCount: 12 },
    { name: 'feet left', firstTriangle: 12, triangleCount: 12 },
  ])
})

test('faces without area of their own, curves and unknown lines are left out with a finding each', () => {
  const text = `${CORNERS}${SIDES}f 1 2\nf 3\nfoo 1\ncstype bezier\nsurf 0 1 0 1 1 2\n`
  expect(read(text).findings).toEqual([
    {
      code: 'skipped-content',
      grade: 'note',
      short: 'faces of two corners left out',
      message: '2 faces with fewer than 3 corners were left out: they enclose nothing.',
      count: 2,
    },
    {
      code: 'skipped-content',
      grade: 'changes the grams',
      short: 'curved surfaces left out',
      message:
        '2 lines of curved surfaces were left out: only flat faces are read. Export the part again as a mesh.',
      count: 2,
    },
    {
      code: 'skipped-content',
      grade: 'worth knowing',
      short: 'unknown lines left out',
      message: `1 line with words unknown to OBJ was left out: "foo" at byte ${text.indexOf('foo')}.`,
      count: 1,
    },
  ])
})

test('a corner that names no vertex is refused with both numbers', () => {
  const at = CORNERS.length
  expect(problem(`${CORNERS}f 1 2 99\n`)).toEqual({
    code: 'bad-index',
    message: `arm.obj: The face at byte ${at} names vertex 99, and there are 8.`,
    advice: 'The file is damaged or cut off: copy or export it again.',
  })
  expect(problem(`${CORNERS}f 1 2 -9\n`).message).toBe(
    `arm.obj: The face at byte ${at} names vertex -9, and there are 8 before it.`,
  )
  expect(problem(`${CORNERS}f 1 2 0\n`).message).toBe(
    `arm.obj: The face at byte ${at} names vertex 0, and OBJ counts from 1.`,
  )
  expect(problem(`${CORNERS}f 1 2 1e3\n`).message).toBe(
    `arm.obj: A vertex number was expected at byte ${at + 6}, but "1e3" stands there.`,
  )
  expect(problem(`${CORNERS}f 1 2 99999999999999999999999\n`).code).toBe('bad-index')
})

test('a coordinate that is missing, no number or has a comma is refused', () => {
  expect(problem(`v 1 2\n${CORNERS}${SIDES}`)).toMatchObject({
    code: 'bad-number',
    message: 'arm.obj: Vertex 1 has fewer than 3 coordinates at byte 5.',
  })
  expect(problem(`v 1,5 2 3\n${CORNERS}${SIDES}`).message).toBe(
    'arm.obj: There is a decimal comma at byte 2 in vertex 1: "1,5".',
  )
  expect(problem(`v 1 nan 3\n${CORNERS}${SIDES}`).code).toBe('not-finite')
})

test('a cloud of points is refused with its count', () => {
  expect(problem(CORNERS)).toEqual({
    code: 'no-triangles',
    message: 'arm.obj: It holds 8 vertices and no face.',
    advice: 'A cloud of points encloses nothing: export the part again as a mesh.',
  })
})

/** Sum of the triangles that look up, seen from above. */
function areaLookingUp({
  positions,
  indices,
}: {
  positions: ArrayLike<number>
  indices: Uint32Array
}) {
  let area = 0
  for (let i = 0; i < indices.length; i += 3) {
    const [ax, ay, bx, by, cx, cy] = [0, 1, 2].flatMap((k) => {
      const v = 3 * indices[i + k]!
      return [positions[v]!, positions[v + 1]!]
    }) as [number, number, number, number, number, number]
    area += Math.max(0, (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) / 2
  }
  return area
}
