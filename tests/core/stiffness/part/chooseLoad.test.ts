import { describe, expect, test } from 'vitest'
import { chooseLoad, LOAD_PICK_AUTO } from '../../../../src/core/stiffness/part/chooseLoad.ts'
import type { GripBore } from '../../../../src/core/stiffness/part/types.ts'
import { box } from '../../../support/meshes.ts'

const bore = (x: number, diameterMm = 3.2): GripBore => ({
  centreMm: [x, 5, 2],
  axis: [0, 0, 1],
  diameterMm,
  depthMm: 4,
})
const arm = box(100, 10, 4)

describe('how a part is held and pushed', () => {
  test('an arm: at its joints, by the motor’s bores at the far end, upwards', () => {
    const chosen = chooseLoad(
      arm,
      [bore(5), bore(17)],
      [bore(85), bore(95), bore(50)],
      LOAD_PICK_AUTO,
    )
    expect(chosen).toMatchObject({ held: 'joints', pushed: 'bores', direction: 'z' })
    expect(chosen.load.push).toMatchObject({ bores: [bore(85), bore(95)] })
  })

  test('the same the other way round, and without bores at its end', () => {
    expect(chooseLoad(arm, [bore(95), bore(80)], [bore(50)], LOAD_PICK_AUTO)).toMatchObject({
      held: 'joints',
      pushed: 'x-low',
    })
  })

  test('joints all over a plate hold all of it: an end is held instead', () => {
    expect(chooseLoad(arm, [bore(5), bore(95)], [], LOAD_PICK_AUTO)).toMatchObject({
      held: 'x-low',
      pushed: 'x-high',
    })
  })

  test('a tube’s bore at the end is no motor', () => {
    expect(
      chooseLoad(arm, [bore(5), bore(17)], [bore(90, 12), bore(95, 12)], LOAD_PICK_AUTO).pushed,
    ).toBe('x-high')
  })

  test('standing it is pushed sideways; what is picked holds', () => {
    const post = box(10, 10, 60)
    expect(chooseLoad(post, [], [], LOAD_PICK_AUTO)).toMatchObject({
      held: 'z-low',
      pushed: 'z-high',
      direction: 'x',
    })
    const picked = { hold: 'y-high', push: 'x-low', direction: 'y' } as const
    expect(chooseLoad(post, [bore(1), bore(2)], [], picked)).toMatchObject({
      held: 'y-high',
      pushed: 'x-low',
      direction: 'y',
    })
  })
})
