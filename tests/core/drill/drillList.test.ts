import { describe, expect, test } from 'vitest'
import { drillList } from '../../../src/core/drill/drillList.ts'
import { guessUse } from '../../../src/core/drill/guessUse.ts'
import { holeLoss } from '../../../src/core/drill/holeLoss.ts'
import type { DrillPart, WalledHole } from '../../../src/core/drill/types.ts'
import { drillFor, wantedSize } from '../../../src/core/drill/wantedSize.ts'
import type { HoleReading } from '../../../src/core/model/drill.ts'
import type { BoreMark, Joint, JointFastener } from '../../../src/core/model/joints.ts'
import { drillPart, holeAt } from '../../support/drillParts.ts'
import { materialOf } from '../../support/ledgerParts.ts'
import { plainJoint } from '../../support/plainJoints.ts'

const PLA = materialOf('pla')

const markOf = ({
  centreMm,
  axis,
  diameterMm,
  depthMm,
  openLow,
  openHigh,
}: WalledHole): BoreMark => {
  return { kind: 'bore', centreMm, axis, diameterMm, depthMm, openLow, openHigh }
}

function joined(
  a: DrillPart,
  b: DrillPart,
  fastener: JointFastener | null,
  more: Partial<Joint> = {},
): Joint {
  const end = ({ part, found }: DrillPart) => {
    return { partId: part.id, piece: 0, bores: found.holes.map(markOf), face: null }
  }
  return plainJoint('j', end(a), end(b), { fastener, ...more })
}

describe('what a hole is for', () => {
  // Diameters: ISO 273; tapping drills of ISO 2306; Accu hole chart (check-values/hardware 1.8,
  // 2.1, 2.2).
  test.each([
    [3.4, true, 'screw M3'],
    [3.2, true, 'screw M3'],
    [2.4, true, 'screw M2'],
    [4.5, true, 'screw M4'],
    [2.5, false, 'tapped M3'],
    [1.6, false, 'tapped M2'],
    [4, false, 'insert M3'],
    [4.2, false, 'insert M3'],
    [5.6, false, 'insert M4'],
    [8, true, 'none'],
    [12, true, 'none'],
  ])('Ø %f, through: %s, is guessed as %s', (diameterMm, openLow, words) => {
    const use = guessUse(holeAt({ diameterMm, openLow }))
    expect('thread' in use ? `${use.kind} ${use.thread}` : use.kind).toBe(words)
  })

  test('a guess is marked as one; a joint goes before it, a choice before both', () => {
    const plate = drillPart('plate', [holeAt()])
    const [guessed] = drillList([plate], [], 'p', [])
    expect(guessed).toMatchObject({ known: 'guess', use: { kind: 'screw', thread: 'M3' } })
    const arm = drillPart('arm', [holeAt({ diameterMm: 4, openLow: false, depthMm: 7 })])
    const joint = joined(plate, arm, { thread: 'M3', end: 'insert' })
    const rows = drillList([plate, arm], [joint], 'p', [])
    expect(rows.map(({ known, use }) => [known, use.kind])).toEqual([
      ['joint', 'screw'],
      ['joint', 'insert'],
    ])
    const { centreMm, diameterMm } = plate.found.holes[0]!
    const holeUses = [{ centreMm, diameterMm, use: { kind: 'none' } }]
    const chosen = { ...plate, part: { ...plate.part, holeUses } } as DrillPart
    expect(drillList([chosen, arm], [joint], 'p', [])[0]).toMatchObject({
      known: 'chosen',
      drillMm: null,
    })
  })

  test('the neck of a damper and a peg are known by what stands in the bore', () => {
    const tray = drillPart('tray', [holeAt({ diameterMm: 8 })])
    const screwed = holeAt({ diameterMm: 2.4, centreMm: [3, 3, 5] })
    const cup = drillPart('cup', [screwed])
    const necks = [{ axis: [0, 0, 1], centreMm: [3, 3, 4], diameterMm: 8.2, widthMm: 2.5 }] as const
    const withNeck: DrillPart = { ...cup, found: { ...cup.found, necks } }
    const rows = drillList([tray, withNeck], [joined(tray, cup, null)], 'p', [])
    expect(rows[0]).toMatchObject({
      known: 'joint',
      use: { kind: 'damper', neckMm: 8.2, grooveMm: 2.5 },
    })
    // 2.5 % less than the neck: 7.995, so 8.0.
    expect(rows[0]).toMatchObject({ wantedMm: 8, drillMm: 8 })
    const peg = joined(tray, cup, null)
    const pegged = {
      ...peg,
      b: { ...peg.b, bores: [{ ...markOf(screwed), kind: 'peg', diameterMm: 7.9 }] },
    } as Joint
    expect(drillList([tray, cup], [pegged], 'p', [])[0]).toMatchObject({
      use: { kind: 'shaft', shaftMm: 7.9 },
    })
  })

  test('an insert is set into the mouth over the bore', () => {
    const mouth = {
      kind: 'counterbore',
      diameterMm: 4.2,
      clearMm: 4.19,
      depthMm: 5,
      end: 'high',
    } as const
    const arm = drillPart('arm', [holeAt({ seats: [mouth], depthMm: 9 })])
    const plate = drillPart('plate', [holeAt()])
    const rows = drillList(
      [arm, plate],
      [joined(plate, arm, { thread: 'M3', end: 'insert' })],
      'p',
      [],
    )
    expect(rows[0]).toMatchObject({
      use: { kind: 'insert' },
      diameterMm: 4.2,
      depthMm: 5,
      wantedMm: 4,
    })
  })
})

// M3 inserts are 5.7 and 4 mm long (Accu's chart); a blind hole wants 1 mm more (secam-fixing.com).
test.each([
  [7, false],
  [5, false],
  [4.5, true],
])('of a blind hole %f mm deep an insert asks for more: %s', (depthMm, isTold) => {
  const arm = drillPart('arm', [holeAt({ diameterMm: 4, openLow: false, depthMm })])
  const plate = drillPart('plate', [holeAt()])
  const joint = joined(plate, arm, { thread: 'M3', end: 'insert' })
  const notes = drillList([plate, arm], [joint], 'p', [])[1]!.notes.join(' ')
  expect(notes.includes('an insert of 4 mm wants 5 mm')).toBe(isTold)
})

describe('what is fetched for it', () => {
  test.each([
    // ISO 273 fine, medium, coarse of M3: 3.2, 3.4, 3.6. What is drawn between is drilled to the
    // lower fit.
    [3.2, 3.2, 'fine'],
    [3.3, 3.2, 'fine'],
    [3.4, 3.4, 'medium'],
    [3.5, 3.4, 'medium'],
    [3.6, 3.6, 'coarse'],
    [3, 3.2, 'fine'],
  ])('a hole of %f for M3 wants %f, %s', (drawn, wanted, fit) => {
    expect(wantedSize({ kind: 'screw', thread: 'M3' }, drawn)).toEqual({ mm: wanted, fit })
  })

  test('drills go by tenths, with the two odd ones for tapping', () => {
    expect([2.05, 3.15, 3.2, 4.2, 1.25, 0.3].map(drillFor)).toEqual([2.05, 3.2, 3.2, 4.2, 1.25, 1])
    expect(drillFor(14.2)).toBeNull()
  })

  test('facets, shrinkage and bead are taken off, and a wide hole needs no drill', () => {
    const clearMm = 3.2 * Math.cos(Math.PI / 12)
    const rows = drillList([drillPart('plate', [holeAt({ clearMm })])], [], 'p', [])
    // By hand: facets 3.0910; PLA shrinks by the table’s share; bead 0.2 on the diameter.
    const shrunk = clearMm * (1 - PLA.shrinkagePct.value / 100)
    expect(rows[0]!.comesOutMm.mid).toBeCloseTo(shrunk - 0.2, 6)
    expect(rows[0]).toMatchObject({ drillMm: 3.2, depthMm: 4 })
    const wide = drillList([drillPart('plate', [holeAt({ diameterMm: 3.65 })])], [], 'p', [])
    expect(wide[0]!.comesOutMm.low).toBeGreaterThan(3.2)
    // Coarse is 3.6, and a print of 3.65 may come out below it.
    expect(wide[0]!.drillMm).toBe(3.6)
    const cut = drillList([drillPart('plate', [holeAt({ diameterMm: 9 })])], [], 'p', [])
    expect(cut[0]).toMatchObject({ use: { kind: 'none' }, drillMm: null, wantedMm: null })
  })

  test('a hole of 5 mm comes out near 4.8 (kapycad.com, needs 4)', () => {
    const rows = drillList(
      [drillPart('plate', [holeAt({ diameterMm: 5, clearMm: 5 * Math.cos(Math.PI / 48) })])],
      [],
      'p',
      [],
    )
    expect(rows[0]!.comesOutMm.low).toBeLessThan(4.8)
    expect(rows[0]!.comesOutMm.high).toBeGreaterThan(4.8)
  })

  test('the wall that is left is told in lines, and too little of it', () => {
    const thin = drillList([drillPart('plate', [holeAt({ wallMm: 0.7 })])], [], 'p', [])[0]!
    const { lineMm } = drillPart('plate', []).part.recipe
    // Drawn 3.2 and drilled to 3.2: all 0.7 mm stand.
    expect(thin.leftMm).toBeCloseTo(0.7, 6)
    expect(thin.leftLines).toBeCloseTo(0.7 / lineMm, 6)
    expect(thin.stands).toBe(false)
    expect(thin.notes.join(' ')).toContain('Too little stands round it')
    expect(drillList([drillPart('plate', [holeAt()])], [], 'p', [])[0]!.stands).toBe(true)
  })
})

describe('what a coupon teaches', () => {
  const reading = (measuredMm: number, more: Partial<HoleReading> = {}): HoleReading => ({
    id: `r${measuredMm}`,
    printerId: 'p',
    materialId: 'pla',
    lies: 'upright',
    drawnMm: 3.2,
    measuredMm,
    by: 'calliper',
    date: null,
    ...more,
  })

  test('nothing read, the loss is what the table says', () => {
    const { low, mid, high } = holeLoss(PLA, 'p', []).of('upright')
    expect(mid).toBeCloseTo(0.2, 9)
    expect(low).toBeCloseTo(0.1, 6)
    expect(high).toBeCloseTo(0.3, 6)
  })

  test('readings pull the loss to what they say and narrow it, of other directions less', () => {
    const shrunk = 3.2 * (1 - PLA.shrinkagePct.value / 100)
    const readings = [0.3, 0.31, 0.29].map((loss) => reading(shrunk - loss))
    const before = holeLoss(PLA, 'p', [])
    const after = holeLoss(PLA, 'p', readings)
    expect(after.from).toBe(3)
    expect(after.of('upright').mid).toBeGreaterThan(0.27)
    expect(after.of('upright').mid).toBeLessThan(0.3)
    const width = ({ low, high }: { low: number; high: number }) => high - low
    expect(width(after.of('upright'))).toBeLessThan(0.75 * width(before.of('upright')))
    expect(after.of('level').mid).toBeGreaterThan(0.3)
    expect(width(after.of('level'))).toBeLessThan(width(before.of('level')))
  })

  test('by hand: one reading against a normal prior', () => {
    // Prior variance 0.05² less the hole’s own 0.025²; noise 0.03² and 0.025².
    const prior = 0.05 ** 2 - 0.025 ** 2
    const noise = 0.03 ** 2 + 0.025 ** 2
    const shrunk = 3.2 * (1 - PLA.shrinkagePct.value / 100)
    const { mid } = holeLoss(PLA, 'p', [reading(shrunk - 0.35)]).of('upright')
    expect(mid).toBeCloseTo(0.2 + (0.15 * prior) / (prior + noise), 6)
  })

  test('another plastic or printer learns nothing, and a pin stands half a step below its hole', () => {
    const other = reading(2.9, { materialId: 'petg' })
    expect(holeLoss(PLA, 'p', [other]).of('upright').mid).toBeCloseTo(0.2, 9)
    expect(holeLoss(PLA, 'q', [reading(2.9)]).of('upright').mid).toBeCloseTo(0.2, 9)
    const pin = holeLoss(PLA, 'p', [reading(2.9, { by: 'pin' })]).of('upright').mid
    const jaws = holeLoss(PLA, 'p', [reading(2.95)]).of('upright').mid
    expect(pin).toBeCloseTo(jaws, 9)
  })
})
