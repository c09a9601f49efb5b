import { OBJLoader } from 'three/examples/jsm/loaders/OBJLoader.js'
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js'
import { strFromU8, unzipSync } from 'fflate'
import { expect, it } from 'vitest'
import { readMesh } from '../../src/core/formats/read.ts'
import type { Mesh as MeshData } from '../../src/core/model/mesh.ts'
import { rescale, write3mf, writeObj, writeStl, writeTextStl } from '../../src/demo/write.ts'

/**
 * Corner tetrahedron with edges of 3, 5 and 7: numbers that single precision holds, and one it must
 * round.
 */
const TETRAHEDRON: MeshData = {
  positions: Float32Array.of(0, 0, 0, 3, 0, 0, 0, 5, 0, 0, 0, 7.1),
  indices: Uint32Array.of(0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3),
}

/** Every triangle's corners in file order, three numbers each. */
const soup = ({ positions, indices }: MeshData) =>
  [...indices].flatMap((v) => [...positions.subarray(3 * v, 3 * v + 3)])

const buffer = (bytes: Uint8Array) => bytes.slice().buffer

// three.js's own loaders are the readers from outside.
it('writes binary STL that another reader takes as the same triangles', () => {
  const bytes = writeStl(TETRAHEDRON, 'a header')
  expect(bytes.length).toBe(84 + 4 * 50)
  const read = new STLLoader().parse(buffer(bytes))
  expect([...(read.getAttribute('position').array as Float32Array)]).toEqual(soup(TETRAHEDRON))
})

it('writes ASCII STL without losing a bit of single precision', () => {
  const read = new STLLoader().parse(buffer(writeTextStl(TETRAHEDRON, 'sample')))
  expect([...(read.getAttribute('position').array as Float32Array)]).toEqual(soup(TETRAHEDRON))
})

it('writes OBJ that another reader takes as the same triangles', () => {
  const group = new OBJLoader().parse(strFromU8(writeObj(TETRAHEDRON, 'sample')))
  const [body] = group.children as unknown as [
    { geometry: { getAttribute(name: string): { array: Float32Array } } },
  ]
  expect([...body.geometry.getAttribute('position').array]).toEqual(soup(TETRAHEDRON))
})

it('writes 3MF with the three parts of a package, its unit and placed items', () => {
  const bytes = write3mf([{ name: 'One', mesh: TETRAHEDRON, at: [10, 20, 0] }], 'centimetre')
  const files = unzipSync(bytes)
  expect(Object.keys(files).toSorted()).toEqual([
    '3D/3dmodel.model',
    '[Content_Types].xml',
    '_rels/.rels',
  ])
  const { unit, mesh, format } = readMesh(bytes, 'sample.3mf')
  expect([format, unit]).toEqual(['3mf', 'centimetre'])
  const shifted = soup(TETRAHEDRON).map((value, i) => value + ([10, 20, 0][i % 3] ?? 0))
  for (const [i, value] of soup(mesh).entries()) expect(value).toBeCloseTo(shifted[i] ?? 0, 5)
})

it('rescales every coordinate and keeps the triangles', () => {
  expect([...rescale(TETRAHEDRON, 2).positions.subarray(3, 6)]).toEqual([6, 0, 0])
  expect(rescale(TETRAHEDRON, 2).indices).toBe(TETRAHEDRON.indices)
})
