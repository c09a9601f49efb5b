import { describe, expect, test } from 'vitest'
import { readMesh } from '../../../src/core/formats/read.ts'
import { writeStl } from '../../../src/core/formats/writeStl.ts'
import { single, soupOf, torus } from '../../support/meshes.ts'

describe('writeStl', () => {
  test('what it writes is read back as the same mesh', () => {
    const mesh = single(torus(20, 5, 12, 8))
    const back = readMesh(writeStl(mesh), 'part.stl')
    expect(back.format).toBe('stl-binary')
    expect(back.findings).toEqual([])
    expect(soupOf(back.mesh)).toEqual(soupOf(mesh))
  })
})
