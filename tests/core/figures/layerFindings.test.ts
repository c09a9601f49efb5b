import { describe, expect, it } from 'vitest'
import { countLayers } from '../../../src/core/census/countLayers.ts'
import { layerFindings } from '../../../src/core/figures/layerFindings.ts'
import { readMesh } from '../../../src/core/formats/read.ts'
import { inspectMesh } from '../../../src/core/mesh/inspect.ts'
import { orientMesh } from '../../../src/core/mesh/orient.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { weldSoup } from '../../../src/core/model/weld.ts'
import { box, pickTriangles, soupOf } from '../../support/meshes.ts'
import { writeStlBinary } from '../../support/writeMesh.ts'

const BOX = box(40, 20, 12)

/**
 * The box with one corner of one triangle at the front `gapMm` off: two of its edges meet nothing.
 */
function cracked(gapMm: number): Mesh {
  const soup = Float64Array.from(soupOf(BOX))
  const front = [...Array(12).keys()].find((t) => [1, 4, 7].every((k) => soup[9 * t + k] === 0))!
  soup[9 * front + 1]! -= gapMm
  return weldSoup(soup)
}

function graded(mesh: Mesh, header?: string) {
  const read = readMesh(writeStlBinary(mesh, header), 'part.stl')
  const outward = orientMesh(read.mesh)
  const { measure } = inspectMesh(read, outward, 'millimetre')
  const census = countLayers({ part: outward, zones: [] }, 1, POSE_AS_DRAWN, RECIPE_DEFAULTS)
  return { findings: layerFindings(measure.findings, census), census }
}

describe('findings are graded by what they do to the grams', () => {
  it('a header that says solid is a note', () => {
    const { findings } = graded(BOX, 'solid part')
    expect(findings).toMatchObject([{ code: 'solid-header', grade: 'note' }])
  })

  it.each([1e-4, 1e-3, 1e-2])(
    'a hairline gap of %d mm is a note, and the grams are those of the whole',
    (gap) => {
      const { findings, census } = graded(cracked(gap))
      expect(findings.map(({ grade }) => grade)).toEqual(findings.map(() => 'note'))
      // Width × depth × height; the sliver in front adds at most gap × width × height.
      expect(Math.abs(census.modelMm3 - 40 * 20 * 12)).toBeLessThan(gap * 40 * 12 + 1e-3 * 9600)
    },
  )

  it('a missing piece of a wall changes the grams, stands first and says where', () => {
    const open = pickTriangles(BOX, (triangle, t) => {
      const ys = triangle.map((v) => BOX.positions[3 * v + 1]!)
      return ys.every((y) => y === ys[0]) && t % 2 === 0 ? [] : [triangle]
    })
    const [first] = graded(open).findings
    expect(first).toMatchObject({ code: 'doubtful-layers', grade: 'changes the grams' })
    expect(first!.short).toMatch(/% of its outlines open/)
    expect(first!.place).toBeDefined()
  })

  it('before the count a gap is a note, since nobody knows yet', () => {
    const read = readMesh(writeStlBinary(cracked(0.01)), 'part.stl')
    const { measure } = inspectMesh(read, orientMesh(read.mesh), 'millimetre')
    expect(layerFindings(measure.findings, null)).toMatchObject([{ grade: 'note' }])
  })
})
