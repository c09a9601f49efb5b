import { describe, expect, it } from 'vitest'
import { PLATES } from '../../../../src/core/data/plates.ts'
import { armShake, hoverTurnHz, tipMassG } from '../../../../src/core/aircraft/twin/armShake.ts'
import { plateBendingNm } from '../../../../src/core/aircraft/twin/bending.ts'
import { firstBendingHz } from '../../../../src/core/aircraft/twin/firstBending.ts'
import { flatTwin } from '../../../../src/core/aircraft/twin/flatTwin.ts'
import { toneDoubt } from '../../../../src/core/doubt/stiffness.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../../../src/core/model/settings.ts'
import { LOAD_PICK_AUTO } from '../../../../src/core/stiffness/part/chooseLoad.ts'
import { laidOf } from '../../../../src/core/stiffness/part/laidOf.ts'
import { partSections, stiffPart } from '../../../../src/core/stiffness/part/stiffPart.ts'
import { box } from '../../../support/meshes.ts'
import { relative } from '../../../support/censusCase.ts'
import { materialOf, typedItem } from '../../../support/ledgerParts.ts'

describe('first bending of a beam with a mass at its tip', () => {
  /*
   * x² = 2π f √(m L³ / EI), x the first root of 1 + cos x cosh x − μ x (sin x cosh x − cos x sinh
   * x) = 0, μ tip over beam mass. μ = 1 as printed in Mathematical Problems in Engineering 2017,
   * 1568019, table 1 (1.557298); μ = 0 is 1.8751² of any textbook.
   */
  it.each([
    [0, 3.516_02, 0.015],
    [0.1, 2.967_84, 0.015],
    [0.5, 2.0163, 0.003],
    [1, 1.557_298, 0.003],
    [2, 1.1582, 0.003],
    [5, 0.756_94, 0.003],
    [10, 0.541_38, 0.003],
  ])('with a tip of %f beam masses meets the exact root', (tipKg, root, within) => {
    const hz = firstBendingHz({ eiNm2: 1, lengthM: 1, beamKg: 1, tipKg })
    expect(relative(2 * Math.PI * hz, root)).toBeLessThan(within)
  })

  it('solves the exercise of 69.4 Hz (Junglas, Schwingungslehre 2, exercise 21; its exact root worked out)', () => {
    const hz = firstBendingHz({
      eiNm2: 2e11 * 4.7e-6,
      lengthM: 1,
      beamKg: 7800 * 2.6e-3,
      tipKg: 10,
    })
    expect(Math.abs(hz - 69.4)).toBeLessThan(0.2)
  })

  // 150 mm free, 34.5 g at the tip, worked by hand; E 1.9 GPa of PETG and 50 GPa of carbon plate
  // are common practice.
  it.each([
    ['a PETG box 20 × 14, walls 1.8 mm', 5.8, (20 * 14 - 16.4 * 10.4) * 0.15 * 1.27e-3, 57],
    ['carbon 16 × 5', plateBendingNm(50, 5) * 0.016, 16 * 5 * 0.15 * 1.55e-3, 70],
    ['carbon 16 × 4', plateBendingNm(50, 4) * 0.016, 16 * 4 * 0.15 * 1.55e-3, 51],
  ])('of %s', (_, eiNm2, beamKg, hz) => {
    const found = firstBendingHz({ eiNm2, lengthM: 0.15, beamKg, tipKg: 0.0345 })
    expect(relative(found, hz)).toBeLessThan(0.02)
  })
})

describe('the turn rate of a hovering propeller', () => {
  it('of 6 inch under 204 g lies at 9,000 to 11,000 rpm with a coefficient near 0.12 (worked by hand: 160 Hz)', () => {
    const { low, mid, high } = hoverTurnHz(204, 152.4)
    expect(mid).toBeCloseTo(158.9, 0)
    expect(low).toBeLessThan(mid)
    expect(high).toBeGreaterThan(mid)
    expect(60 * mid).toBeGreaterThan(9000)
    expect(60 * mid).toBeLessThan(11_000)
  })

  /* One 5 inch propeller of three blades at light load: 10,346 rpm under 139 g (public test note). */
  it('of three blades, 127 mm under 139 g, is 172.4 Hz within 5 %, two turn faster', () => {
    const { low, mid, high } = hoverTurnHz(139, 127, 3)
    expect(relative(mid, 172.4)).toBeLessThan(0.05)
    expect(low).toBeLessThan(172.4)
    expect(high).toBeGreaterThan(172.4)
    expect(hoverTurnHz(139, 127, 2).mid).toBeCloseTo(188.8, 1)
    expect(hoverTurnHz(139, 127, 4).mid).toBeLessThan(mid)
  })

  /* The same note: 416 g at 17,438 rpm and 783 g at 24,082 rpm. */
  it.each([
    [416, 17_438],
    [783, 24_082],
  ])('of three blades under %i g is %i rpm within 5 %%', (grams, rpm) => {
    expect(relative(60 * hoverTurnHz(grams, 127, 3).mid, rpm)).toBeLessThan(0.05)
  })

  it('brackets a measured row: 365.1 g at 4,590 rpm on 10 inch (Brandt and Selig, AIAA 2011-1255)', () => {
    const { low, mid, high } = hoverTurnHz(365.1, 254)
    expect(relative(mid, 4590 / 60)).toBeLessThan(0.005)
    expect(low).toBeLessThan(4590 / 60)
    expect(high).toBeGreaterThan(4590 / 60)
  })
})

describe('an arm that shakes', () => {
  const outline = { areaMm2: 168 * 20, cutLengthMm: 380, sheetMm: [168, 20] } as const
  const bendingNm = 5.8 / 0.02
  const setup = { thicknessMm: { arm: 5 }, platePricePerDm2: 4, cutPricePerM: 3 }
  const twin = flatTwin({ partId: 'arm', outline, bendingNm }, PLATES.carbon, setup)
  const flight = { motors: 3, propDiameterMm: 152.4 }
  const shakeOf = (freeMm: number | undefined, auwG = 612) =>
    armShake(
      { partId: 'arm', name: 'Arm', outline, twin, massG: 23, freeMm, beam: null, solidHz: null },
      flight,
      34.5,
      auwG,
    )!

  it('rings at 57 Hz printed, ±20 %, well below 160 turns a second', () => {
    const shake = shakeOf(150)
    expect(relative(shake.printedHz.mid, 57)).toBeLessThan(0.02)
    expect(shake.printedHz.low).toBeCloseTo(0.8 * shake.printedHz.mid, 9)
    expect(shake.printedHz.high).toBeCloseTo(1.2 * shake.printedHz.mid, 9)
    // 20 mm wide instead of 16 of the hand check: stiffer by 20/16, its own mass along.
    expect(shake.plateHz.mid).toBeGreaterThan(70)
    expect(shake.turnHz.mid).toBeCloseTo(159, 0)
    expect(shake).toMatchObject({ blades: 2, typed: true })
    expect(shake.printedRings).toEqual({ turn: false, pass: false })
    expect(shake.cutRings).toEqual({ turn: false, pass: false })
  })

  it('short and stiff comes up to the turn rate, and that is said', () => {
    const shake = shakeOf(80)
    expect(shake.printedHz.mid).toBeGreaterThan(120)
    expect(shake.printedRings).toEqual({ turn: true, pass: false })
    // Stiffer still, it is past it, and comes up to the blades.
    expect(shakeOf(50).printedRings).toEqual({ turn: false, pass: true })
  })

  it('is asked at one and at blade passes a turn', () => {
    const shake = shakeOf(150)
    expect(shake.passHz.mid).toBeCloseTo(2 * shake.turnHz.mid, 9)
  })

  it('takes 85 % of its length where nobody typed one', () => {
    expect(shakeOf(undefined)).toMatchObject({ typed: false })
    expect(shakeOf(undefined).freeMm).toBeCloseTo(0.85 * 168, 9)
  })

  it('as a beam of its own sections swings from what holds it on, as its sheet and the solid model tell', () => {
    const geometry = { ...RECIPE_DEFAULTS, infillPct: 20 }
    const bar = { part: box(168, 20, 14), zones: [] }
    const held = { pose: POSE_AS_DRAWN, jointBores: [], pick: LOAD_PICK_AUTO }
    const sections = partSections(bar, 1, { ...held, geometry })
    if (sections.kind === 'no') throw new Error(sections.why)
    const material = materialOf('petg')
    const laid = laidOf(geometry, material, 1)
    const beam = { sections, laid, doubt: toneDoubt(material) }
    const arm = {
      partId: 'arm',
      name: 'Arm',
      outline,
      twin,
      massG: 23,
      freeMm: undefined,
      beam,
      solidHz: null,
    }
    const shake = armShake(arm, flight, 34.5, 612)!
    // 5 % of its length is held at one end and pushed, by its middle, at the other; to whole cells.
    expect(shake).toMatchObject({ by: 'sections', typed: false })
    expect(relative(shake.freeMm, 168 * (1 - 0.05 - 0.025))).toBeLessThan(0.03)
    const { figures } = stiffPart(bar, 1, {
      ...held,
      recipe: geometry,
      material,
      massG: 23,
      loadN: 1,
      tipG: 34.5,
      cellMm: 4,
      wantTones: true,
    })
    const [first] = figures.hz
    expect(relative(shake.printedHz.mid, first!.mid)).toBeLessThan(0.05)
    expect(shake.printedHz.high / shake.printedHz.low).toBeCloseTo(first!.high / first!.low, 6)
    // Cut, it swings by the plate's stiffness and mass for the printed arm's.
    const by = Math.sqrt(twin.chosen.bendingNm.mid / twin.equal.bendingNm.mid)
    expect(relative(shake.plateHz.mid / shake.printedHz.mid, by)).toBeLessThan(0.12)
    // Solved, it is what the solid model says.
    const solved = armShake({ ...arm, solidHz: first! }, flight, 34.5, 612)!
    expect(solved).toMatchObject({ by: 'solid', printedHz: first })
    // A typed length is meant: shorter by half, higher.
    const short = armShake(
      { ...arm, solidHz: first!, freeMm: shake.freeMm / 2 },
      flight,
      34.5,
      612,
    )!
    expect(short.printedHz.mid / shake.printedHz.mid).toBeGreaterThan(2.4)
  })

  it('is missing without anything at its tip', () => {
    const arm = {
      partId: 'arm',
      name: 'Arm',
      outline,
      twin,
      massG: 23,
      freeMm: 150,
      beam: null,
      solidHz: null,
    }
    expect(armShake(arm, flight, 0, 612)).toBeNull()
    expect(armShake(arm, flight, 34.5, 0)).toBeNull()
  })

  it('carries what sits on each motor: whole sets without a place of their own', () => {
    const items = [
      typedItem('motor', 30, { group: 'drive', quantity: 3 }),
      typedItem('prop', 4.5, { group: 'drive', quantity: 3 }),
      typedItem('servo', 12, { group: 'drive', quantity: 1 }),
      typedItem('controller', 8, { group: 'drive', quantity: 3, positionMm: [0, 0, 0] }),
      typedItem('pack', 185, { group: 'power', quantity: 3 }),
    ]
    expect(tipMassG(items, 3)).toBeCloseTo(34.5, 9)
  })
})
