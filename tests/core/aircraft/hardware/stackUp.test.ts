import { describe, expect, it } from 'vitest'
import type { Stack, StackWarningCode } from '../../../../src/core/aircraft/hardware/stack.ts'
import { stackUp } from '../../../../src/core/aircraft/hardware/stackUp.ts'

const plate = (thicknessMm: number) => ({ name: 'bottom plate', thicknessMm })
const arm = (thicknessMm: number) => ({ name: 'arm', thicknessMm })

const BASE: Stack = {
  standard: 'ISO 4762',
  size: 'M3',
  layers: [plate(2), arm(4)],
  washers: 0,
  end: { kind: 'nut', standard: 'ISO 7040' },
  lengthMm: null,
}

const codes = (stack: Stack): StackWarningCode[] => stackUp(stack).warnings.map(({ code }) => code)

describe('stackUp through plates into a nut', () => {
  it('adds plate, arm, locknut over its ring and two threads, then takes the next stocked length', () => {
    // 2 + 4 + 4.0 (DIN 985 h) + 2 × 0.5 = 11 mm.
    expect(stackUp(BASE)).toEqual({
      gripMm: 6,
      leastMm: 11,
      mostMm: null,
      lengthMm: 12,
      engagementMm: 6,
      warnings: [],
    })
  })

  it('counts washers', () => {
    const answer = stackUp({ ...BASE, washers: 2 })
    expect(answer.leastMm).toBe(12)
    expect(answer.lengthMm).toBe(12)
  })

  it('needs less for a plain nut', () => {
    const answer = stackUp({ ...BASE, end: { kind: 'nut', standard: 'ISO 4032' } })
    expect(answer.leastMm).toBe(9.4)
    expect(answer.lengthMm).toBe(10)
  })

  it('warns of a screw too short of thread, with both numbers and the length to take', () => {
    const [warning] = stackUp({ ...BASE, lengthMm: 8 }).warnings
    expect(warning).toEqual({
      code: 'short-of-thread',
      text: 'Too short of thread: 2 mm of the screw is left for the nut, it wants 5 mm. Take 11 mm or more.',
    })
  })

  it('warns when the nut would run onto the plain shank', () => {
    // ISO 4762 M3: b = 18, so an M3 × 30 has 12 mm of shank; 6 mm are clamped.
    expect(codes({ ...BASE, lengthMm: 30 })).toEqual(['shank-too-long'])
    expect(codes({ ...BASE, layers: [plate(12)], lengthMm: 30 })).toEqual([])
  })

  it('says when nothing stocked is long enough', () => {
    const answer = stackUp({ ...BASE, layers: [plate(40)] })
    expect(answer.lengthMm).toBeNull()
    expect(answer.warnings.map(({ code }) => code)).toEqual(['nothing-stocked'])
  })

  it('refuses a negative thickness by name', () => {
    expect(() => stackUp({ ...BASE, layers: [plate(-1)] })).toThrow('bottom plate')
  })
})

describe('stackUp with a countersunk head', () => {
  const sunk: Stack = { ...BASE, standard: 'ISO 10642' }

  // EN ISO 10642: an M3 head is 1.86 mm deep.
  it('warns of a head deeper than the plate below 1.86 mm for M3', () => {
    expect(codes({ ...sunk, layers: [plate(1.85), arm(4)] })).toEqual(['head-deeper-than-plate'])
    expect(codes({ ...sunk, layers: [plate(1.86), arm(4)] })).toEqual([])
    expect(stackUp({ ...sunk, layers: [plate(1.5)] }).warnings[0]?.text).toMatch(
      /^Head deeper than plate: .*1\.86 mm deep.*1\.5 mm thick/,
    )
  })

  it('has nothing to say of a socket head on the same plate', () => {
    expect(codes({ ...BASE, layers: [plate(1), arm(4)] })).toEqual([])
  })
})

describe('stackUp into plastic', () => {
  const into = (engagementMm: number, bossMm: number | null = 7, holeDepthMm: number | null = 10) =>
    codes({
      ...BASE,
      layers: [plate(2)],
      end: { kind: 'plastic', bossMm, holeDepthMm },
      lengthMm: 2 + engagementMm,
    })

  // Engagement 2–3 d: doi 10.1201/9780203747889-6. Boss ≥ 2 d, hole ≥ 2.7 d:
  // celofasteners.com/en/content/220.
  it('wants 6 to 9 mm of M3', () => {
    expect(into(5)).toEqual(['short-of-thread'])
    for (const engagementMm of [6, 7, 8, 9]) expect(into(engagementMm)).toEqual([])
  })

  it('wants a boss of 6.0 mm for M3', () => {
    expect(into(6, 5.9)).toEqual(['boss-too-thin'])
    expect(into(6, 6)).toEqual([])
    expect(into(6, null)).toEqual([])
  })

  it('wants a hole of 8.1 mm, and a screw that does not meet its bottom', () => {
    expect(into(6, 7, 8)).toEqual(['hole-too-shallow'])
    expect(into(6, 7, 8.1)).toEqual([])
    expect(into(11)).toEqual(['too-long'])
  })
})

describe('stackUp into an insert', () => {
  const insert = (bossMm: number, holeDepthMm: number): Stack => ({
    ...BASE,
    layers: [plate(2)],
    end: { kind: 'insert', insertMm: 5.7, bossMm, holeDepthMm },
  })

  // Boss 4.4 + 2 × 2.4 = 9.2 mm: TU Dresden, J. Manuf. Mater. Process. 2023, 7(1), 42. Depth 5.7 +
  // 1 mm: secam-fixing.com.
  it('wants a 9.2 mm boss and a 6.7 mm hole for M3 × 5.7', () => {
    expect(codes(insert(6.6, 7))).toEqual(['boss-too-thin'])
    expect(codes(insert(9.1, 7))).toEqual(['boss-too-thin'])
    expect(codes(insert(9.2, 7))).toEqual([])
    expect(codes(insert(9.2, 6.6))).toEqual(['hole-too-shallow'])
    expect(codes(insert(9.2, 6.7))).toEqual([])
  })

  it('says that a boss below 6.6 mm may split', () => {
    const text = (bossMm: number) => stackUp(insert(bossMm, 7)).warnings[0]?.text
    expect(text(6.5)).toContain('split')
    expect(text(6.6)).not.toContain('split')
    expect(text(6.6)).toContain('9.2 mm')
  })

  /* The same study: at least 70 % infill near the hole, where there is less than 2.4 mm of solid plastic round it. */
  it.each([
    [4, 0.4, 30, ['insert-in-open-infill']],
    [6, 0.4, 30, []],
    [2, 0.4, 70, []],
    [2, 0.4, 69, ['insert-in-open-infill']],
    [4, 0.6, 10, []],
  ])('in %i walls of %f mm with %i %% infill: %j', (walls, lineMm, infillPct, found) => {
    const { end, ...rest } = insert(9.2, 7)
    const printed = { ...end, print: { walls, lineMm, infillPct } } as Stack['end']
    expect(codes({ ...rest, end: printed })).toEqual(found)
  })

  it('takes a screw that grips and does not bottom out', () => {
    const answer = stackUp(insert(9.2, 7))
    expect(answer.lengthMm).toBe(5)
    expect(answer.engagementMm).toBe(3)
    expect(answer.mostMm).toBe(9)
  })
})

describe('stackUp into a motor', () => {
  const motor = (armMm: number, lengthMm: number | null, depthMm = 3.5): Stack => ({
    ...BASE,
    layers: [arm(armMm)],
    end: { kind: 'motor', depthMm },
    lengthMm,
  })

  it('warns of a screw that reaches the windings', () => {
    const [warning] = stackUp(motor(4, 8)).warnings
    expect(warning?.code).toBe('too-long')
    expect(warning?.text).toContain('0.5 mm past the 3.5 mm')
    expect(codes(motor(4.5, 8))).toEqual([])
  })

  it('never picks one that does, and says how many washers would help', () => {
    expect(stackUp(motor(5, null)).lengthMm).toBe(8)
    const answer = stackUp(motor(3.8, null))
    expect(answer.lengthMm).toBeNull()
    expect(answer.warnings[0]?.text).toContain(
      'Put 0.7 mm of washers under the head and take an M3 × 8',
    )
  })
})
