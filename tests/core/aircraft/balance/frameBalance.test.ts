import { describe, expect, it } from 'vitest'
import type { Item } from '../../../../src/core/model/aircraft.ts'
import type {
  BalancePart,
  FrameBalance,
} from '../../../../src/core/aircraft/balance/frameBalance.ts'
import { frameBalance } from '../../../../src/core/aircraft/balance/frameBalance.ts'
import { partMoments } from '../../../../src/core/aircraft/balance/partMoments.ts'
import { armPattern } from '../../../../src/core/aircraft/balance/places.ts'
import { STAY, type RigidMap } from '../../../../src/core/mesh/rigidMaps.ts'
import { box, translate } from '../../../support/meshes.ts'

const item = (changes: Partial<Item>): Item => ({
  id: 'item',
  name: 'Item',
  group: 'other',
  quantity: 1,
  massG: 10,
  costEach: 0,
  status: 'estimated',
  basis: 'typed',
  positionMm: null,
  ...changes,
})
const MOTORS = item({ id: 'motor', name: 'Motor', group: 'drive', quantity: 4, massG: 30 })
const X250 = { motors: 4, motorRadiusMm: 125 }
const NOTHING = { parts: [], places: [], items: [], flight: null }

function balanceOf(input: Partial<Parameters<typeof frameBalance>[0]>): FrameBalance {
  const balance = frameBalance({ ...NOTHING, ...input })
  if (!balance) throw new Error('nothing was placed')
  return balance
}

const ARM: BalancePart = {
  partId: 'arm',
  name: 'Arm',
  quantity: 4,
  massG: 15,
  // From its root along x, middle of its height on the frame's level.
  moments: partMoments(translate(box(100, 12, 8), [0, -6, -4]), 1),
  shellShare: 0,
}

describe('frame balance', () => {
  // 4 m r²: any mechanics text.
  it('of four 30 g motors at 125 mm on an X: yaw 1.875e-3, roll and pitch 0.9375e-3 kg m²', () => {
    const { inertiaKgM2, cgMm, massG, onMotors } = balanceOf({ items: [MOTORS], flight: X250 })
    expect(massG).toBe(120)
    expect(inertiaKgM2[2]).toBeCloseTo(1.875e-3, 15)
    expect(inertiaKgM2[0]).toBeCloseTo(0.9375e-3, 15)
    expect(inertiaKgM2[1]).toBeCloseTo(0.9375e-3, 15)
    for (const value of cgMm) expect(value).toBeCloseTo(0, 12)
    expect(onMotors).toEqual(['Motor'])
  })

  it('is the same for a plus as for an X', () => {
    const at = (x: number, y: number, id: string) =>
      item({ id, group: 'drive', massG: 30, positionMm: [x, y, 0] })
    const plus = [at(125, 0, 'a'), at(0, 125, 'b'), at(-125, 0, 'c'), at(0, -125, 'd')]
    const { inertiaKgM2 } = balanceOf({ items: plus })
    expect(inertiaKgM2[0]).toBeCloseTo(0.9375e-3, 15)
    expect(inertiaKgM2[2]).toBeCloseTo(1.875e-3, 15)
  })

  it('adds arms by parallel axes: m (a² + b²)/12 + m d² each', () => {
    const places = armPattern({
      partId: 'arm',
      count: 4,
      radiusMm: 20,
      firstDeg: 45,
      positionMm: [0, 0, 0],
    })
    const { inertiaKgM2, productsKgM2, massG } = balanceOf({ parts: [ARM], places })
    expect(massG).toBeCloseTo(60, 12)
    const yaw = 4 * 15 * ((100 ** 2 + 12 ** 2) / 12 + 70 ** 2) * 1e-9
    expect(inertiaKgM2[2]).toBeCloseTo(yaw, 12)
    // Round four evenly turned arms roll and pitch are alike: half of yaw and the height.
    const roll = yaw / 2 + (60 * 8 ** 2 * 1e-9) / 12
    expect(inertiaKgM2[0]).toBeCloseTo(roll, 12)
    expect(inertiaKgM2[1]).toBeCloseTo(roll, 12)
    for (const value of productsKgM2) expect(value).toBeCloseTo(0, 15)
  })

  it('puts the centre between masses and tells its offset from the thrust', () => {
    const items = [
      item({ id: 'pack', massG: 185, positionMm: [-40, 0, 10] }),
      item({ id: 'camera', massG: 62, positionMm: [90, 5, -20] }),
    ]
    const balance = balanceOf({ items, thrustCentreMm: [-10, 0] })
    const x = (185 * -40 + 62 * 90) / 247
    expect(balance.cgMm[0]).toBeCloseTo(x, 12)
    expect(balance.cgMm[2]).toBeCloseTo((185 * 10 - 62 * 20) / 247, 12)
    expect(balance.offsetMm[0]).toBeCloseTo(x + 10, 12)
    expect(balance.offsetMm[1]).toBeCloseTo((62 * 5) / 247, 12)
  })

  it('says what has no place and how much it weighs', () => {
    const places = armPattern({
      partId: 'arm',
      count: 3,
      radiusMm: 20,
      firstDeg: 0,
      positionMm: [0, 0, 0],
    })
    const balance = balanceOf({
      parts: [ARM, { ...ARM, partId: 'deck', name: 'Deck', quantity: 1, massG: 28, moments: null }],
      places: [...places, { ...places[0]!, partId: 'deck' }],
      items: [item({ name: 'Tape', massG: 4 }), MOTORS],
    })
    expect(balance.massG).toBeCloseTo(45, 12)
    expect(balance.unplaced).toEqual(['Arm', 'Deck', 'Tape', 'Motor'])
    expect(balance.unplacedG).toBeCloseTo(15 + 28 + 4 + 120, 12)
    expect(balance.placed).toHaveLength(3)
  })

  it('leaves out places beyond the pieces that fly', () => {
    const places = armPattern({
      partId: 'arm',
      count: 6,
      radiusMm: 20,
      firstDeg: 0,
      positionMm: [0, 0, 0],
    })
    expect(balanceOf({ parts: [ARM], places }).massG).toBeCloseTo(60, 12)
  })

  it('does not put on the motors what comes in other numbers', () => {
    const odd = { ...MOTORS, quantity: 3 }
    expect(frameBalance({ ...NOTHING, items: [odd], flight: X250 })).toBeNull()
    const two = balanceOf({ items: [{ ...MOTORS, quantity: 8 }], flight: X250 })
    expect(two.massG).toBe(240)
    expect(two.placed).toHaveLength(4)
  })

  it('is missing when nothing has a place', () => {
    expect(frameBalance(NOTHING)).toBeNull()
  })

  it('spreads a bought thing with a body over its box or cylinder, where a joint puts it', () => {
    // m (b² + c²) / 12 about each axis of a box; m r² / 2 along, m (3 r² + h²) / 12 across a
    // cylinder.
    const [a, b, c, m] = [100, 30, 20, 180]
    const pack = item({
      id: 'pack',
      massG: m,
      body: { kind: 'pack', sizeMm: [a, b, c], holes: null, shaftMm: 0 },
    })
    // Turned a quarter about x: its top looks to the right.
    const motion: RigidMap = { matrix: [1, 0, 0, 0, 0, -1, 0, 1, 0], move: [5, 0, 40] }
    const turned = balanceOf({ items: [pack], motions: new Map([['0 pack', motion]]) })
    expect(turned.cgMm).toEqual([5, -10, 40])
    const kg = 1e-9 * (m / 12)
    expect(turned.inertiaKgM2[0]).toBeCloseTo(kg * (b * b + c * c), 12)
    expect(turned.inertiaKgM2[1]).toBeCloseTo(kg * (a * a + b * b), 12)
    expect(turned.inertiaKgM2[2]).toBeCloseTo(kg * (a * a + c * c), 12)
    const [d, h] = [28, 18]
    const motor = item({
      id: 'motor',
      quantity: 2,
      massG: 30,
      body: { kind: 'motor', sizeMm: [d, d, h], holes: null, shaftMm: 5 },
    })
    const up = (x: number): RigidMap => ({ ...STAY, move: [x, 0, 0] })
    const pair = balanceOf({
      items: [motor],
      motions: new Map([
        ['0 motor', up(125)],
        ['1 motor', up(-125)],
      ]),
    })
    expect(pair.placed.map(({ centreMm }) => centreMm)).toEqual([
      [125, 0, 9],
      [-125, 0, 9],
    ])
    expect(pair.inertiaKgM2[0]).toBeCloseTo((2e-9 * 30 * ((3 * d * d) / 4 + h * h)) / 12, 12)
    expect(pair.inertiaKgM2[2]).toBeCloseTo(2e-9 * 30 * ((d * d) / 8 + 125 ** 2), 12)
    // Of two that fly one has a place.
    const half = balanceOf({ items: [motor], motions: new Map([['0 motor', up(0)]]) })
    expect([half.massG, half.unplacedG]).toEqual([30, 30])
  })
})
