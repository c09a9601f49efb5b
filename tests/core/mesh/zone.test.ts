import { describe, expect, test } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { depositOf } from '../../../src/core/figures/deposit.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { placeTogether } from '../../../src/core/mesh/pose.ts'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { countSomeLayers } from '../../../src/core/census/countSomeLayers.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { relative } from '../../support/censusCase.ts'
import { box, translate } from '../../support/meshes.ts'
import { PLAIN_HABITS } from '../../support/plainHabits.ts'

const recipe = { ...RECIPE_DEFAULTS, infillPct: 20, habits: PLAIN_HABITS }
const arm = translate(box(100, 20, 14), [50, 30, 7])
/** The first 30 mm of the arm, drawn generously around it. */
const root = translate(box(40, 40, 40), [40, 20, -5])

function censusOf(zones: readonly Mesh[], pose = POSE_AS_DRAWN) {
  const { placed, others } = placeTogether(arm, zones, 1, pose)
  return countAllLayers(placed, recipe, undefined, others)
}

const censusWith = (zone: Mesh | null, pose = POSE_AS_DRAWN) => {
  const census = censusOf(zone === null ? [] : [zone], pose)
  return { ...census, zone: census.zones[0] ?? null }
}

const figures = (zone: Mesh | null, zonePct: number) =>
  partFigures(
    censusWith(zone),
    { ...recipe, zonePcts: [zonePct] },
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
    expect(whole.zones).toEqual([])
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
    const { placed, others } = placeTogether(arm, [root], 1, POSE_AS_DRAWN)
    const coarse = countSomeLayers(placed, recipe, others)
    expect(coarse.zones[0]!.roomMm3).toBeGreaterThan(0)
  })
})

describe('several zones', () => {
  /**
   * Inside the 0.8 mm walls, the four skins and the arm: from x to x of the arm, all of its width
   * and height.
   */
  const roomBetween = (from: number, to: number): number => (to - from) * 18.4 * (14 - 1.6)
  const block = (from: number, to: number): Mesh =>
    translate(box(to - from, 40, 40), [from, 20, -5])
  const rooms = (zones: readonly Mesh[]) => {
    const census = censusOf(zones)
    return [census, ...census.zones].map((each) => each?.roomMm3 ?? 0)
  }

  test('side by side take each their own share, in either order', () => {
    const [rest, near, far] = rooms([block(40, 80), block(100, 130)])
    expect(relative(near!, roomBetween(50.8, 80))).toBeLessThan(1e-3)
    expect(relative(far!, roomBetween(100, 130))).toBeLessThan(1e-3)
    const left = roomBetween(80, 100) + roomBetween(130, 149.2)
    expect(relative(rest!, left)).toBeLessThan(1e-3)
    const [sameRest, sameFar, sameNear] = rooms([block(100, 130), block(40, 80)])
    expect([sameRest, sameFar, sameNear].map((each) => each!.toFixed(6))).toEqual(
      [rest, far, near].map((each) => each!.toFixed(6)),
    )
  })

  test('where they overlap the later one holds', () => {
    const [rest, root100, spar] = rooms([block(40, 100), block(80, 130)])
    expect(relative(root100!, roomBetween(50.8, 80))).toBeLessThan(1e-3)
    expect(relative(spar!, roomBetween(80, 130))).toBeLessThan(1e-3)
    expect(relative(rest!, roomBetween(130, 149.2))).toBeLessThan(1e-3)
    const [, late, early] = rooms([block(80, 130), block(40, 100)])
    expect(relative(early!, roomBetween(50.8, 100))).toBeLessThan(1e-3)
    expect(relative(late!, roomBetween(100, 130))).toBeLessThan(1e-3)
  })

  test('one that later ones cover whole has no room', () => {
    const census = censusOf([block(90, 100), block(80, 130)])
    expect(census.zones[0]).toBeNull()
    expect(census.zones[1]!.roomMm3).toBeGreaterThan(0)
  })

  test('each is filled by its own infill: a wing at 6 and 12 per cent', () => {
    // Two zones that leave nothing outside: all infill is theirs, a share of their room and the
    // turns on top.
    const census = censusOf([block(40, 90), block(90, 160)])
    expect(census.roomMm3).toBe(0)
    const infillMm3 = (...zonePcts: number[]): number => {
      const habits = { ...PLAIN_HABITS, joinedShare: 0 }
      return depositOf(census, { ...recipe, habits, infillPct: 50, zonePcts }).infillMm3
    }
    const [near, far] = [roomBetween(50.8, 90), roomBetween(90, 149.2)]
    expect(relative(infillMm3(6, 12), 0.06 * near + 0.12 * far)).toBeLessThan(1e-3)
    expect(relative(infillMm3(12, 6), 0.12 * near + 0.06 * far)).toBeLessThan(1e-3)
    expect(relative(infillMm3(0, 100), far)).toBeLessThan(1e-3)
  })

  test('a solid one is doubted like skin, however open the rest', () => {
    const census = censusOf([block(40, 160)])
    const own = (infillPct: number, zonePct: number): number => {
      const laid = { ...recipe, infillPct, zonePcts: [zonePct] }
      const figuresOf = partFigures(census, laid, MATERIALS[0]!, PRINTER_DEFAULT, PRICES_DEFAULTS)
      return figuresOf.doubt.mass.own
    }
    expect(own(10, 100)).toBeCloseTo(own(100, 100), 12)
    expect(own(100, 10)).toBeGreaterThan(own(100, 100))
  })
})
