import { expect, test } from 'vitest'
import { looksLikeToolpath } from '../../../src/core/toolpath/looksLikeToolpath.ts'

const bytes = (text: string) => new TextEncoder().encode(text)

test.each([
  ['a move', 'G1 X10 Y2.5 E.3\n'],
  ['a numbered move', '; head\nN12 G01 X10 Y-2\n'],
  ['one with a checksum', 'N12 G1 X10 Y-2*71\n'],
  ['without spaces', 'G28\nG1X10Y20E1.5;wall\n'],
  ['lower case, carriage returns', 'g28\r\ng0 f3000 z5\r\n'],
  ['after a picture in comments', `${'; iVBORw0KGgo\n'.repeat(9000)}G1 Z0.2\n`],
])('knows %s', (_, text) => {
  expect(looksLikeToolpath(bytes(text))).toBe(true)
})

test.each([
  ['a text mesh', 'solid G1\nfacet normal 0 0 1\n outer loop\n vertex 0 0 0\n'],
  ['groups of an OBJ', 'o thing\ng 1 x10\nv 0 0 0\nf 1 2 3\n'],
  ['a sentence', 'G1 is a word of a machine.\n'],
  ['bytes with zeros', 'G1 X1\n\0\0'],
  ['nothing', ''],
])('does not take %s for one', (_, text) => {
  expect(looksLikeToolpath(bytes(text))).toBe(false)
})
