import { beforeAll, describe, expect, it } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { priceMaterialIn, pricesIn } from '../../../src/core/data/prices.ts'
import { PRINTERS } from '../../../src/core/data/printers.ts'
import { ROLES } from '../../../src/core/data/roles.ts'
import type { Role } from '../../../src/core/data/roles.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { weighFrame } from '../../../src/core/frame/weighFrame.ts'
import type { FrameSum } from '../../../src/core/frame/types.ts'
import type { PartFigures } from '../../../src/core/model/figures.ts'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { bareFrame, printedPart } from '../../support/ledgerParts.ts'
import { circle, prism, rectangle } from '../../support/meshes.ts'
import type { Loop } from '../../support/meshes.ts'

/*
 * Common practice, no source: a printed PLA quad frame of the 250 class, four arms and four plates,
 * 0.2 mm layers, 0.8 mm walls, arms at 75 %, plates at 40 %, takes a printer of the mid-2010s
 * (50–60 mm/s) about 11 h and £2.60 of filament, and a spare arm under 45 min and about £0.15; an
 * arm weighs about 8 g and the print about 140 g, which is with hardware about 178 g against 122 g
 * of carbon. Orders of magnitude, so the bands are wide and stated at each. The outlines below were
 * drawn for such masses; hours and money follow from them.
 */

const bolt = (x: number, y: number): Loop => circle(1.6, 24, x, y)

/** 112 × 14 × 5 mm: two bolts at the root, a motor pattern of 16 mm at the tip. */
function arm(): Mesh {
  const holes = [bolt(6, 7), bolt(18, 7), bolt(92, 7), bolt(108, 7), circle(3, 24, 100, 7)]
  return prism(rectangle(112, 14), 5, holes)
}

/**
 * 140 × 64 × 4 mm: bolts at the corners, a 30.5 mm board pattern, a round hole and two slots to
 * save weight.
 */
function plate(): Mesh {
  const corners = [bolt(10, 10), bolt(130, 10), bolt(10, 54), bolt(130, 54)]
  const board = [bolt(54.75, 16.75), bolt(85.25, 16.75), bolt(54.75, 47.25), bolt(85.25, 47.25)]
  const slot = (x: number): Loop => rectangle(20, 8).map(([dx, dy]) => [x + dx, 28 + dy] as const)
  return prism(rectangle(140, 64), 4, [
    ...corners,
    ...board,
    circle(9, 48, 70, 32),
    slot(20),
    slot(100),
  ])
}

const OLD = PRINTERS.find((printer) => printer.id === 'mid-2010s')!
const PLA = priceMaterialIn(MATERIALS[0]!, 'GBP')

function figuresOf(mesh: Mesh, role: Role): PartFigures {
  return partFigures(countAllLayers(mesh, role.recipe), role.recipe, PLA, OLD, pricesIn('GBP'))
}

describe('a printed quad frame of the 250 class on a printer of the mid-2010s', () => {
  let anArm: PartFigures
  let aPlate: PartFigures
  let frame: FrameSum

  beforeAll(() => {
    anArm = figuresOf(arm(), ROLES.arm)
    aPlate = figuresOf(plate(), ROLES.plate)
    const parts = [
      { ...printedPart('arm', 8, 4, { material: PLA }), figures: anArm },
      { ...printedPart('plate', 28, 4, { material: PLA }), figures: aPlate },
    ]
    frame = weighFrame(parts, bareFrame({}, { massG: 122, price: 30 }))
  })

  it('runs at 50–60 mm/s', () => {
    for (const speed of [OLD.wallMmS, OLD.skinMmS, OLD.infillMmS]) {
      expect(speed).toBeGreaterThanOrEqual(50)
      expect(speed).toBeLessThanOrEqual(60)
    }
  })

  it('has arms near 8 g (7–9) and weighs about 140 g (125–155) as printed', () => {
    expect(anArm.massG.mid).toBeGreaterThan(7)
    expect(anArm.massG.mid).toBeLessThan(9)
    expect(frame.printed.massG.mid).toBeGreaterThan(125)
    expect(frame.printed.massG.mid).toBeLessThan(155)
  })

  it('takes about 11 h (9–13)', () => {
    expect(frame.printed.timeS.mid / 3600).toBeGreaterThan(9)
    expect(frame.printed.timeS.mid / 3600).toBeLessThan(13)
  })

  it('takes about £2.60 of filament (±20 %) at £18–19 a kilogram', () => {
    expect(PLA.pricePerKg.value).toBeGreaterThan(18)
    expect(PLA.pricePerKg.value).toBeLessThanOrEqual(19)
    expect(Math.abs((4 * (anArm.cost.filament + aPlate.cost.filament)) / 2.6 - 1)).toBeLessThan(0.2)
  })

  it('has a spare arm in under 45 min for about £0.15 of filament (±20 %)', () => {
    expect(anArm.timeS.mid).toBeLessThan(45 * 60)
    expect(Math.abs(anArm.cost.filament / 0.15 - 1)).toBeLessThan(0.2)
  })

  it('lays its dense arms at 9–16 g an hour, and its parts at 4–17', () => {
    const gramsPerHour = (figures: PartFigures): number =>
      (figures.massG.mid / figures.timeS.mid) * 3600
    expect(gramsPerHour(anArm)).toBeGreaterThan(9)
    expect(gramsPerHour(anArm)).toBeLessThan(16)
    expect(gramsPerHour(aPlate)).toBeGreaterThan(4)
    expect(gramsPerHour(aPlate)).toBeLessThan(17)
  })

  it('is, with 38 g of hardware, 56 g (40–72) and 46 % (33–59) heavier than the carbon one', () => {
    const moreG = frame.carbon!.massG.mid + 38
    expect(moreG).toBeGreaterThan(40)
    expect(moreG).toBeLessThan(72)
    expect(moreG / 122).toBeGreaterThan(0.33)
    expect(moreG / 122).toBeLessThan(0.59)
  })

  it('costs less than the £30 of the carbon one by far', () => {
    expect(frame.carbon!.cost.high).toBeLessThan(-20)
  })
})
