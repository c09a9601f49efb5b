import { describe, expect, it } from 'vitest'
import type { BoxedPart } from '../../../../src/core/aircraft/assembly/assemblySteps.ts'
import { assemblyWords } from '../../../../src/core/aircraft/assembly/assemblyWords.ts'
import { AIRCRAFT_DEFAULTS } from '../../../../src/core/data/aircraft.ts'
import type { Joint, JointFastener } from '../../../../src/core/model/joints.ts'
import { box } from '../../../support/meshes.ts'
import { plainBores, plainJoint, plateEnd } from '../../../support/plainJoints.ts'
import { reportPart } from '../../../support/reportFrame.ts'

/** A plate 4 mm thick from x0 to x1, 20 wide. */
const plate = (id: string, x0: number, x1: number, quantity = 1): BoxedPart => ({
  part: reportPart(id, box(5, 5, 4), { quantity }).part,
  boxMm: { min: [x0, -10, 0], max: [x1, 10, 4] },
})
const NUT = { thread: 'M3', end: 'nut' } as const
/** `b` lies on `a`, hole on hole. */
const upon = (
  a: string,
  b: string,
  xs: readonly number[],
  fastener: JointFastener | null = NUT,
  more: Partial<Joint> & { readonly piece?: number } = {},
): Joint => {
  const { piece = 0, ...rest } = more
  const [low, high] = [plateEnd(a, plainBores(xs), 1), plateEnd(b, plainBores(xs), -1, { piece })]
  return plainJoint(`${a} ${b} ${piece}`, low, high, { fastener, ...rest })
}
const steps = (parts: readonly BoxedPart[], joints: readonly Joint[]) =>
  assemblyWords(parts, {
    ...AIRCRAFT_DEFAULTS,
    joints,
    places: [{ partId: 'deck', positionMm: [0, 0, 0], rotateDeg: [0, 0, 0], mirrored: false }],
  })

describe('assemblyWords', () => {
  it('starts with what most holes are joined to, and goes on to what hangs on it', () => {
    const parts = [plate('tip', 100, 140), plate('arm', 40, 110), plate('deck', -50, 50)]
    expect(steps(parts, [upon('deck', 'arm', [42, 48]), upon('arm', 'tip', [104])])).toEqual([
      'Start with arm.',
      // 4 + 4 mm, nut 4.0, two threads: 13 mm.
      'tip onto arm: 1 × Screw M3 × 16, 1 × Locknut M3.',
      'deck onto arm: 2 × Screw M3 × 16, 2 × Locknut M3.',
    ])
  })

  it('puts in first whose screws a later piece keeps a driver from, and says so', () => {
    // The roof on posts stands over the arm's bolts, and is named before the arm in the frame.
    const parts = [plate('deck', -50, 50), plate('roof', -50, 50), plate('arm', 30, 120)]
    const roof = upon('deck', 'roof', [-40, 0, 10], { thread: 'M3', end: 'post' }, { gapMm: 30 })
    expect(steps(parts, [roof, upon('deck', 'arm', [40, 46])])).toEqual([
      'Start with deck.',
      'arm onto deck: 2 × Screw M3 × 16, 2 × Locknut M3.',
      'roof onto deck: 6 × Screw M3 × 8, 3 × Standoff M3 × 30, round, aluminium.' +
        ' First the screws of arm, which are out of reach after it.',
    ])
    // A roof that ends before the bolts keeps the order of the frame.
    const short = parts.with(1, plate('roof', -50, 12))
    expect(steps(short, [roof, upon('deck', 'arm', [40, 46])])[1]).toMatch(/^roof onto deck/)
  })

  it('takes pieces of one part that go onto the same in one step', () => {
    const parts = [plate('deck', -50, 50), plate('foot', -4, 4, 3)]
    const foot = (piece: number, x: number): Joint => ({
      ...upon('deck', 'foot', [x], null, { piece }),
      b: plateEnd('foot', plainBores([0]), -1, { piece }),
    })
    expect(steps(parts, [foot(0, -40), foot(1, 0)])).toEqual([
      'Start with deck.',
      'foot 1, 2 onto deck.',
    ])
    expect(steps(parts, [foot(0, -40), foot(1, 0), foot(2, 40)])).toEqual([
      'Start with deck.',
      '3 × foot onto deck.',
    ])
  })

  it('sets inserts before all, since they want heat', () => {
    const parts = [plate('deck', -50, 50), plate('arm', 30, 120)]
    const made = upon('deck', 'arm', [40, 46], { thread: 'M3', end: 'insert' })
    expect(steps(parts, [made])[0]).toBe(
      'Set 2 × Heat-set insert M3 × 4 into arm, with heat: mind the fumes and the hot tip.',
    )
  })

  it('ends where covers go round in a ring, and has nothing to say without joints', () => {
    // Two plates above and below one another's bolts.
    const parts = [plate('deck', -50, 50), plate('one', -50, 50), plate('two', -50, 50)]
    const ring = [
      upon('deck', 'one', [-40, 40]),
      {
        ...upon('deck', 'two', [-30, 30]),
        a: plateEnd('deck', plainBores([-30, 30]), -1),
        b: plateEnd('two', plainBores([-30, 30]), 1),
      },
    ]
    expect(steps(parts, ring)).toHaveLength(3)
    expect(steps(parts, [])).toEqual([])
    // Without boxes joints alone give an order.
    const bare = parts.map(({ part }) => ({ part, boxMm: null }))
    expect(steps(bare, ring)).toHaveLength(3)
  })
})
