import { describe, expect, test } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { placeTogether } from '../../../src/core/mesh/pose.ts'
import { takeCensus } from '../../../src/core/census/takeCensus.ts'
import { takeCoarseCensus } from '../../../src/core/census/takeCoarseCensus.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { relative } from '../../support/censusCase.ts'
import { box, translate } from '../../support/meshes.ts'
import { PLAIN_HABITS } from '../../support/plainHabits.ts'

const recipe = { ...RECIPE_DEFAULTS, infillPct: 20, habits: PLAIN_HABITS }
const arm = translate(box(100, 20, 14), [50, 30, 7])
/** The first 30 mm of the arm, drawn generously around it. */
const root = translate(box(40, 40, 40), [40, 20, -5])

function censusWith(zone: Mesh | null, pose = POSE_AS_DRAWN) {
  const [part, other] = placeTogether(arm, zone ?? arm, 1, pose)
  return takeCensus(part, recipe, undefined, zone && other)
}

const figures = (zone: Mesh | null, zonePct: number) =>
  partFigures(
    censusWith(zone),
    { ...recipe, zonePct },
    MATERIALS[0]!,
    PRINTER_DEFAULT,
    PRICES_DEFAULTS,
  )

describe('a zone around the root of an arm', () => {
  test('takes its share of the room and leaves walls and skins alone', () => {
    const whole = censusWith(null)
    const split = censusWith(root)
    // Inside the 0.8 mm wall the zone reaches from 50.8 to 80 mm of the arm's 50 to 150.
    const inZone = 29.2 * 18.4 * (14 - 1.6)
    expect(relative(split.zone!.roomMm3, inZone)).toBeLessThan(1e-3)
    expect(relative(split.roomMm3 + split.zone!.roomMm3, whole.roomMm3)).toBeLessThan(1e-9)
    expect(split.wallMm3).toBe(whole.wallMm3)
    expect(split.skinMm3).toBe(whole.skinMm3)
    expect(whole.zone).toBeNull()
  })

  test('turned with the part, the same zone', () => {
    const flat = censusWith(root)
    const onSide = censusWith(root, { rotateDeg: [90, 0, 0] })
    expect(
      relative(onSide.roomMm3 + onSide.zone!.roomMm3 + onSide.skinMm3 + onSide.wallMm3, 28_000),
    ).toBeLessThan(1e-3)
    const share = (census: typeof flat): number =>
      census.zone!.roomMm3 / (census.roomMm3 + census.zone!.roomMm3)
    expect(share(onSide)).toBeCloseTo(share(flat), 2)
  })

  test('solid, it adds what the room there can hold; at the same infill, next to nothing', () => {
    const plain = figures(null, 100)
    const solid = figures(root, 100)
    const same = figures(root, 20)
    const inZone = 29.2 * 18.4 * (14 - 1.6)
    const added = solid.infillMm3 - same.infillMm3
    // 80 % of the room and less the turns it had.
    expect(added).toBeLessThan(0.8 * inZone)
    expect(added).toBeGreaterThan(0.7 * inZone)
    expect(solid.massG.mid).toBeGreaterThan(plain.massG.mid)
    expect(solid.timeS.mid).toBeGreaterThan(plain.timeS.mid + 60)
    // The cut through the room adds its own turns.
    expect(relative(same.massG.mid, plain.massG.mid)).toBeLessThan(0.03)
    expect(relative(same.timeS.mid, plain.timeS.mid)).toBeLessThan(0.06)
  })

  test('that misses the part changes nothing', () => {
    const beside = translate(box(10, 10, 10), [500, 500, 0])
    expect(censusWith(beside).zone).toBeNull()
    expect(figures(beside, 100).massG).toEqual(figures(null, 100).massG)
  })

  test('is in the coarse count too', () => {
    const [part, other] = placeTogether(arm, root, 1, POSE_AS_DRAWN)
    const coarse = takeCoarseCensus(part, recipe, other)
    expect(coarse.zone!.roomMm3).toBeGreaterThan(0)
  })
})
