import { strToU8 } from 'fflate'
import { expect, test } from 'vitest'
import { readMesh } from '../../../src/core/formats/read.ts'
import { orientMesh } from '../../../src/core/mesh/orient.ts'
import { censusOf, relative } from '../../support/censusCase.ts'

test('one skin that crosses itself encloses whatever it winds round: a five-pointed star is whole', () => {
  // Corners of a regular pentagon, every second one next: the middle is wound round twice.
  const radius = 20
  const height = 5
  const corner = (i: number, z: number) => {
    const angle = (4 * Math.PI * i) / 5
    return `v ${radius * Math.cos(angle)} ${radius * Math.sin(angle)} ${z}`
  }
  const five = [0, 1, 2, 3, 4]
  const text = [
    ...five.map((i) => corner(i, 0)),
    ...five.map((i) => corner(i, height)),
    'f 5 4 3 2 1',
    'f 6 7 8 9 10',
    ...five.map((i) => {
      const next = (i + 1) % 5
      return `f ${i + 1} ${next + 1} ${next + 6} ${i + 6}`
    }),
  ].join('\n')
  const mesh = orientMesh(readMesh(strToU8(text), 'star.obj').mesh)
  // Ten triangles from the middle, between a tip (R) and a notch (R·sin 18°/sin 126°), 36° apart.
  const notch = (radius * Math.sin(Math.PI / 10)) / Math.sin(0.7 * Math.PI)
  const areaMm2 = 5 * radius * notch * Math.sin(Math.PI / 5)
  expect(relative(censusOf(mesh).modelMm3, areaMm2 * height)).toBeLessThan(0.003)
})
