import { describe, expect, test } from 'vitest'
import { MATERIALS } from '../../../../src/core/data/materials.ts'
import type { PartSolved } from '../../../../src/core/stiffness/part/solvePart.ts'
import { plasticOf, tellPart } from '../../../../src/core/stiffness/part/tellPart.ts'

const petg = MATERIALS.find(({ id }) => id === 'petg')!
const peak = (mpa: number, z: number) => ({ mpa, atMm: [0, 0, z] as const })
const solved = (across: number, along: number): PartSolved => ({
  deflectionMm: 2,
  slopeDeg: -1,
  stresses: { across: peak(across, 3), along: peak(along, 5), acrossByHeight: [] },
  hz: [100],
  line: [],
  beam: { kind: 'no', why: '' },
  sections: { kind: 'no', why: '' },
  cells: 1,
  steps: 1,
  gapShare: 0,
  looseShare: 0,
})

describe('figures of a solved part', () => {
  test('safety is strength over stress: 42.8 over 21.4 is 2, between layers', () => {
    // Maker's printed bars, prints.md T4.1: PETG 50.8 MPa in plane, 42.8 across.
    const { safety } = tellPart(solved(21.4, 10), 10, petg)
    expect(safety?.factor.mid).toBeCloseTo(2, 9)
    expect(safety?.breaks).toBe('between layers')
    expect(safety?.heightMm).toBe(3)
    expect(safety!.factor.low).toBeLessThan(1.5)
    expect(tellPart(solved(1, 25.4), 10, petg).safety).toMatchObject({ breaks: 'along layers' })
    expect(tellPart(solved(0, 0), 10, petg).safety).toBeNull()
  })

  test('stiffness is known to a quarter, frequency to an eighth', () => {
    const { deflectionMm, stiffness, hz } = tellPart(solved(1, 1), 10, petg)
    expect(stiffness.mid).toBe(5)
    expect(stiffness.low).toBeCloseTo(5 * 0.75, 9)
    expect(deflectionMm.high).toBeCloseTo(2 / 0.75, 9)
    expect(deflectionMm.low).toBeCloseTo(2 / 1.25, 9)
    expect(hz[0]!.low).toBeCloseTo(87.5, 9)
  })

  test('across the layers its bars are softer: 1899 of 2117 MPa', () => {
    expect(plasticOf(petg).acrossShare).toBeCloseTo(1899 / 2117, 9)
    expect(plasticOf(MATERIALS.find(({ id }) => id === 'pa6-cf')!).acrossShare).toBeCloseTo(0.67, 2)
  })
})
