import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readMesh } from '../../../src/core/formats/read.ts'
import { inspectMesh } from '../../../src/core/mesh/inspect.ts'
import { orientMesh } from '../../../src/core/mesh/orient.ts'
import { crowdWords } from '../../../src/core/mesh/plateWords.ts'
import type { LengthUnit } from '../../../src/core/model/mesh.ts'
import { box, merge, scale, translate } from '../../support/meshes.ts'
import { write3mf, writeStlBinary } from '../../support/writeMesh.ts'

function inspect(bytes: Uint8Array, name: string, unit: LengthUnit = 'millimetre') {
  const read = readMesh(bytes, name)
  return inspectMesh(read, orientMesh(read.mesh), unit)
}
const demo = (name: string) => inspect(new Uint8Array(readFileSync(`public/demo/${name}`)), name)

describe('inspectMesh', () => {
  test('doubts the unit of the sample collar with reasons, in place of its size', () => {
    const { measure, unitHint } = demo('pivot-collar.stl')
    expect(unitHint?.unit).toBe('inch')
    expect(measure.findings.map(({ code }) => code)).toEqual(['not-millimetres'])
    expect(measure.findings[0]!.message).toContain('M2')
    expect(measure.boundsMm.max[0] - measure.boundsMm.min[0]).toBeLessThan(2)
  })

  test('takes a file that states its unit at its word', () => {
    const tiny = scale(box(30, 20, 10), 1 / 25.4)
    expect(inspect(write3mf(tiny), 'a.3mf').unitHint).toBeUndefined()
    expect(inspect(writeStlBinary(tiny), 'a.stl').unitHint?.unit).toBe('inch')
  })

  test('sees three equal feet and one stray triangle', () => {
    const { measure, plate } = demo('feet.stl')
    expect(plate?.groups.map(({ count }) => count)).toEqual([3])
    expect(plate?.leftOut).toBe(1)
    expect(plate!.groups[0]!.volumeMm3 * 3).toBeCloseTo(measure.volumeMm3, 3)
    expect(measure.findings.map(({ code }) => code)).toContain('stray-speck')
  })

  test('measures the parts of a plate in mm', () => {
    const plate = merge([box(1, 1, 1), translate(box(1, 1, 1), [3, 0, 0])])
    const { plate: found } = inspect(writeStlBinary(plate), 'a.stl', 'inch')
    expect(found?.groups[0]?.volumeMm3).toBeCloseTo(25.4 ** 3, 2)
  })

  test('more bodies than are taken apart are told, with what to do', () => {
    const dice = (count: number) =>
      merge(Array.from({ length: count }, (_, i) => translate(box(1, 1, 1), [2 * i, 0, 0])))
    const most = inspect(writeStlBinary(dice(400)), 'a.stl')
    expect(most.plate?.groups).toMatchObject([{ count: 400 }])
    expect(crowdWords(most.measure.bodies)).toBeNull()
    const more = inspect(writeStlBinary(dice(401)), 'a.stl')
    expect(more.plate).toBeUndefined()
    expect(crowdWords(more.measure.bodies)).toMatch(/401 loose bodies.*Up to 400/)
  })

  test('a single part is no plate', () => {
    expect(inspect(writeStlBinary(box(9, 9, 9)), 'a.stl').plate).toBeUndefined()
  })
})
