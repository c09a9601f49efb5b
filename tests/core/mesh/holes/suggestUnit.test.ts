import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readMesh } from '../../../../src/core/formats/read.ts'
import { findHoles } from '../../../../src/core/mesh/holes/findHoles.ts'
import { suggestUnit } from '../../../../src/core/mesh/holes/suggestUnit.ts'
import { measureMesh } from '../../../../src/core/mesh/measure.ts'
import type { LengthUnit, Mesh } from '../../../../src/core/model/mesh.ts'
import { unitToMm } from '../../../../src/core/model/units.ts'
import { box, circle, prism, rectangle, scale, sphere } from '../../../support/meshes.ts'

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
    for (const size of [4, 4.6, 10, 12, 50, 180, 400, 900])
      expect(suggest(box(size, 3, 2))).toBeNull()
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

  test('asks about a part without holes that may be 120 to 250 mm in inches, and says that it only asks', () => {
    for (const longest of [121, 168, 249]) {
      const found = suggest(scale(box(longest, 30, 6), 1 / 25.4))
      expect(found).toMatchObject({ unit: 'inch', sure: false })
      expect(found?.reason).toContain('no holes to tell by')
    }
    expect(suggest(scale(box(260, 30, 6), 1 / 25.4))).toBeNull()
    expect(suggest(scale(box(168, 30, 6), 1 / 25.4), 'inch')?.unit).not.toBe('inch')
  })
})

describe('a plain piece of a few millimetres', () => {
  test.each([
    ['a plate of 4 × 2 × 0.5 in', box(4, 2, 0.5)],
    ['one that stands on its edge', box(0.4, 4.5, 3)],
    ['a disc of 55 × 5 mm in centimetres', prism(circle(2.75, 48, 0, 0), 0.5)],
  ])('that is as thin as a layer or two is asked about: %s', (_, mesh) => {
    const found = suggest(mesh)
    expect(found).toMatchObject({ unit: 'inch', also: 'centimetre', sure: false })
    expect(found?.reason).toContain('no holes to tell by')
    for (const unit of ['inch', 'centimetre'] as const) expect(suggest(mesh, unit)).toBeNull()
  })

  test('tells its size in all three units', () => {
    const reason = suggest(box(4, 2, 0.5))?.reason
    expect(reason).toContain('In millimetres this part measures 4 × 2 × 0.5 mm')
    expect(reason).toContain('in inches 102 × 50.8 × 12.7 mm')
    expect(reason).toContain('in centimetres 40 × 20 × 5 mm')
  })

  const ring = (outer: number, inner: number, high: number) =>
    prism(circle(outer / 2, 48, 0, 0), high, [circle(inner / 2, 48, 0, 0)])
  test.each([
    ['a spacer round an M3 screw, 5.5 mm wide', ring(5.5, 3.2, 3)],
    ['a thin one', ring(5.5, 3.2, 0.5)],
    // ISO 7089, size M3: 7 mm wide, 0.5 mm thick, hole 3.2 mm.
    ['a washer', ring(7, 3.2, 0.5)],
    ['a washer for M2.5 of ISO 7089: 6 mm, 0.5 mm, 2.7 mm', ring(6, 2.7, 0.5)],
    ['a plain cap on a standoff', prism(circle(2.2, 48, 0, 0), 2)],
    ['a damper ball', sphere(2.25, 24)],
    ['a block as short', box(4, 3, 0.8)],
    ['a shim as thin', box(12, 6, 0.4)],
  ])('is left alone where it is common: %s', (_, mesh) => {
    expect(suggest(mesh)).toBeNull()
  })
})

/** A plate with four equal holes that stand in no known pattern. Inches. */
const inchPlate = (hole: number) =>
  prism(
    rectangle(6, 2),
    0.125,
    [
      [0.5, 0.5],
      [5.5, 0.5],
      [5.3, 1.4],
      [0.9, 1.5],
    ].map(([x, y]) => circle(hole / 2, 48, x, y)),
  )

describe('holes for inch screws', () => {
  // Close and free clearance drills from memory, usual charts; the tests of a unit rest on the size
  // as well.
  test.each([
    ['#4', 0.116],
    ['#4', 0.1285],
    ['#6', 0.1495],
    ['#8', 0.177],
    ['#10', 0.196],
    ['#10', 0.201],
    ['¼ in', 0.257],
  ])('%s, %d wide, speak for inches', (name, hole) => {
    const found = suggest(inchPlate(hole))
    expect(found).toMatchObject({ unit: 'inch', sure: true })
    expect(found?.reason).toContain(`${name} screw (usual drill charts)`)
    expect(found?.also).toBeUndefined()
    expect(suggest(inchPlate(hole), 'inch')).toBeNull()
  })

  test('0.266 wide fit ¼ in and, in centimetres, M2.5: both are offered, inches first', () => {
    const found = suggest(inchPlate(0.266))
    expect(found).toMatchObject({ unit: 'inch', also: 'centimetre' })
    expect(found?.reason).toContain('6.76 mm, which passes a ¼ in screw')
    expect(found?.reason).toContain('2.66 mm and pass an M2.5 screw')
  })

  test('holes that fit no screw in any unit say nothing', () => {
    expect(suggest(inchPlate(0.31))).toBeNull()
  })

  test('a plate in millimetres with metric or inch holes is left alone', () => {
    for (const hole of [2.4, 3.2, 3.4, 4.5, 3.26, 5.11, 6.76]) {
      expect(suggest(scale(inchPlate(hole / 25.4), 25.4))).toBeNull()
    }
  })
})
