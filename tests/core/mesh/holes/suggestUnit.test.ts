import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readMesh } from '../../../../src/core/formats/read.ts'
import { findHoles } from '../../../../src/core/mesh/holes/findHoles.ts'
import { suggestUnit } from '../../../../src/core/mesh/holes/suggestUnit.ts'
import { measureMesh } from '../../../../src/core/mesh/measure.ts'
import type { LengthUnit, Mesh } from '../../../../src/core/model/mesh.ts'
import { unitToMm } from '../../../../src/core/model/units.ts'
import { box, circle, prism, rectangle, scale } from '../../../support/meshes.ts'

const suggest = (mesh: Mesh, now: LengthUnit = 'millimetre') =>
  suggestUnit(measureMesh(mesh, unitToMm(now)).boundsMm, findHoles(mesh), now)

/** A motor plate with four M3 holes in a 16 mm square and a shaft hole. */
const motorPlate = prism(rectangle(30, 30), 4, [
  circle(1.6, 24, 7, 7),
  circle(1.6, 24, 23, 7),
  circle(1.6, 24, 23, 23),
  circle(1.6, 24, 7, 23),
  circle(3, 24, 15, 15),
])

describe('suggestUnit', () => {
  test('leaves parts of a likely size alone, with holes and without', () => {
    expect(suggest(motorPlate)).toBeNull()
    for (const size of [4, 5, 12, 50, 180, 400, 900]) expect(suggest(box(size, 3, 2))).toBeNull()
  })

  test('names the hole pattern of a part drawn in inches', () => {
    const found = suggest(scale(motorPlate, 1 / 25.4))
    expect(found?.unit).toBe('inch')
    expect(found?.reason).toContain('stand 0.63 apart')
    expect(found?.reason).toContain('16 × 16 mm pattern of a motor')
    expect(found?.reason).toContain('1.18 × 1.18 × 0.16 mm')
    expect(found?.reason).toContain('30 × 30 × 4 mm')
  })

  test('tells centimetres and metres by the same holes', () => {
    expect(suggest(scale(motorPlate, 1 / 10))?.unit).toBe('centimetre')
    expect(suggest(scale(motorPlate, 1 / 1000))?.unit).toBe('metre')
  })

  test('goes by size alone where there are no holes', () => {
    expect(suggest(scale(box(30, 20, 10), 1 / 25.4))?.unit).toBe('inch')
    expect(suggest(scale(box(200, 20, 10), 1 / 1000))?.unit).toBe('metre')
    expect(suggest(scale(box(30, 20, 10), 1000))?.unit).toBe('micron')
  })

  test('asks about a plain part so small that few are printed, and not about a small one that holds a screw', () => {
    // 60 × 40 × 3 mm drawn in inches is 2.36 long: just possible in millimetres.
    for (const mm of [box(60, 40, 3), box(80, 12, 6), box(100, 20, 2)]) {
      expect(suggest(scale(mm, 1 / 25.4))?.unit).toBe('inch')
    }
    // A spacer round an M2 screw, hole 2.2 mm (ISO 273, fine).
    const spacer = prism(circle(1.8, 32, 0, 0), 3, [circle(1.1, 32, 0, 0)])
    expect(suggest(spacer)).toBeNull()
  })

  test('doubts a possible size only when the holes speak for another unit', () => {
    // 168 mm long, 6.6 in: possible in mm, but its holes would be 0.13 mm wide.
    const arm = prism(rectangle(168, 30), 6, [circle(1.6, 24, 10, 10), circle(1.6, 24, 150, 10)])
    const found = suggest(scale(arm, 1 / 25.4))
    expect(found?.unit).toBe('inch')
    expect(found?.reason).toContain('2 of its 2 holes are 0.126 wide')
    expect(found?.reason).toContain('M3')
    expect(suggest(scale(box(168, 30, 6), 1 / 25.4))).toBeNull()
  })

  test('is content once the unit was chosen, and offers the way back from a wrong choice', () => {
    expect(suggest(scale(motorPlate, 1 / 25.4), 'inch')).toBeNull()
    expect(suggest(motorPlate, 'inch')?.unit).toBe('millimetre')
    expect(suggest(box(60, 20, 10), 'inch')?.unit).toBe('millimetre')
  })

  test('takes the sample pivot collar for one drawn in inches, and no other sample part', () => {
    const read = (name: string) =>
      readMesh(new Uint8Array(readFileSync(`public/demo/${name}`)), name).mesh
    const collar = suggest(read('pivot-collar.stl'))
    expect(collar?.unit).toBe('inch')
    expect(collar?.reason).toContain('7 of its 10 holes')
    const others = [
      'front-arm.stl',
      'lower-deck.stl',
      'camera-tray.obj',
      'damper-cup.stl',
      'feet.stl',
    ]
    for (const name of others) expect(suggest(read(name)), name).toBeNull()
  })
})
