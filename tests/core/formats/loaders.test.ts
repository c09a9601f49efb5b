import { STLLoader } from 'three/addons/loaders/STLLoader.js'
import { expect, test } from 'vitest'
import { readMesh } from '../../../src/core/formats/read.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import {
  box,
  cone,
  cubeWithHole,
  merge,
  rotate,
  soupOf,
  sphere,
  torus,
  translate,
} from '../../support/meshes.ts'
import { parseWithThreeStlLoader } from '../../support/threeStlLoader.ts'
import { writeStlAscii, writeStlBinary } from '../../support/writeMesh.ts'

/*
 * References: three-stl-loader 1.0.6 and three's own STLLoader, on the same bytes. Both give 32-bit corners,
 * three a triangle, in the file's order; so must we, to the last bit.
 */
const SOLIDS: Readonly<Record<string, Mesh>> = {
  box: box(2, 3, 4),
  'drilled cube': cubeWithHole(20, 5, 40),
  'tilted sphere': rotate(sphere(9.7, 24), [17, 31, 53]),
  'torus far away': translate(torus(20, 6, 24, 12), [1e5, -3e4, 0.125]),
  'two bodies': merge([cone(5, 9, 30), translate(box(1, 2, 3), [20, 0, 0])]),
}

for (const [title, solid] of Object.entries(SOLIDS)) {
  test(`binary STL of a ${title}: the same corners as both loaders`, () => {
    const bytes = writeStlBinary(solid)
    const ours = corners(bytes)
    expect(ours.length).toBe(3 * solid.indices.length)
    expect(ours).toEqual(withThree(bytes))
    expect(ours).toEqual(parseWithThreeStlLoader(bytes))
  })

  test(`ASCII STL of a ${title}: the same corners as both loaders`, () => {
    // Its patterns need a digit before the point and know an exponent, so every number is spelled
    // 1.25e+1.
    const bytes = writeStlAscii(solid, { number: (value) => value.toExponential(7) })
    const ours = corners(bytes)
    expect(ours.length).toBe(3 * solid.indices.length)
    expect(ours).toEqual(withThree(bytes))
    expect(ours).toEqual(parseWithThreeStlLoader(bytes))
  })
}

test('a binary STL that begins with "solid": the same corners as both loaders', () => {
  const bytes = writeStlBinary(SOLIDS['box']!, 'solid box written as binary')
  expect(corners(bytes)).toEqual(withThree(bytes))
  expect(corners(bytes)).toEqual(parseWithThreeStlLoader(bytes))
})

function corners(bytes: Uint8Array): Float32Array {
  // −0 and 0 are the same corner to us; adding 0 makes the references say so too.
  return Float32Array.from(soupOf(readMesh(bytes, '').mesh), (value) => Math.fround(value) + 0)
}

function withThree(bytes: Uint8Array): Float32Array {
  const geometry = new STLLoader().parse(bytes.slice().buffer)
  return Float32Array.from(geometry.getAttribute('position').array, (value) => value + 0)
}
