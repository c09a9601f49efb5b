import { describe, expect, test } from 'vitest'
import { countAllLayers } from '../../../../src/core/census/countAllLayers.ts'
import { cutSection } from '../../../../src/core/census/section/cutSection.ts'
import type { SectionAxis, SectionRegion } from '../../../../src/core/census/section/types.ts'
import type { Mesh } from '../../../../src/core/model/mesh.ts'
import type { GeometrySettings } from '../../../../src/core/model/settings.ts'
import { box, circle, merge, prism, rectangle, translate } from '../../../support/meshes.ts'

/** Square beads as wide as the line leave no bare strip, so that edges can be told by hand. */
const SETTINGS: GeometrySettings = {
  layerMm: 0.2,
  firstLayerMm: 0.2,
  lineMm: 0.5,
  walls: 2,
  topSkins: 3,
  bottomSkins: 4,
  supports: false,
  supportAngleDeg: 50,
  brimMm: 0,
  habits: {
    bead: 'square',
    outerWidthShare: 1,
    innerWidthShare: 1,
    firstWidthShare: 1,
    holdMm: 0,
    slopeBandMm: 0,
    smallRoomMm2: 0,
  },
}

/** A box of 40 × 30 × 10 mm standing on z = 0 round the origin. */
const BLOCK = translate(box(40, 30, 10), [-20, -15, 0])

const at = (
  regions: readonly SectionRegion[],
  kind: SectionRegion['kind'],
): readonly (readonly [left: number, right: number, bottom: number, top: number])[] =>
  regions
    .filter((region) => region.kind === kind)
    .flatMap(({ boxes }) =>
      Array.from(
        { length: boxes.length / 4 },
        (_, i) => Array.from(boxes.subarray(4 * i, 4 * i + 4)) as [number, number, number, number],
      ),
    )

const areaOf = (regions: readonly SectionRegion[], kind: SectionRegion['kind']): number =>
  at(regions, kind).reduce((sum, [l, r, b, t]) => sum + (r - l) * (t - b), 0)

const rounded = (boxes: readonly (readonly number[])[]) =>
  boxes.map((one) => one.map((value) => Math.round(value * 1000) / 1000))

describe('a section through a part', () => {
  test('a block cut upright: two lines a side, skins above and below, room between, by hand', () => {
    const { regions, frame, layers } = cutSection(BLOCK, [], SETTINGS, 'x', 3)
    expect(layers).toBe(50)
    expect(frame.left).toBeCloseTo(-15, 9)
    expect(frame.top).toBeCloseTo(10, 9)
    expect(rounded(at(regions, 'cut'))).toEqual([[-15, 15, 0, 10]])
    // A line is 0.5 mm wide, 0.15 of it left free between two.
    expect(rounded(at(regions, 'wall'))).toEqual([
      [-15, -14.575, 0, 10],
      [14.575, 15, 0, 10],
      [-14.5, -14.075, 0, 10],
      [14.075, 14.5, 0, 10],
    ])
    expect(rounded(at(regions, 'skin'))).toEqual([
      [-14, 14, 9.4, 10],
      [-14, 14, 0, 0.8],
    ])
    expect(rounded(at(regions, 'room'))).toEqual([[-14, 14, 0.8, 9.4]])
    expect(at(regions, 'support')).toEqual([])
  })

  test('cut level it is one layer: of the skin whole, of the middle its room', () => {
    const middle = cutSection(BLOCK, [], SETTINGS, 'z', 5.05)
    expect(middle.layer).toBe(26)
    // 28 × 38 mm within the walls; rows tell an edge that lies along them to within one, 0.15 mm.
    expect(Math.abs(areaOf(middle.regions, 'room') / (28 * 38) - 1)).toBeLessThan(0.01)
    expect(areaOf(middle.regions, 'skin')).toBe(0)
    const first = cutSection(BLOCK, [], SETTINGS, 'z', 0)
    expect(first.layer).toBe(1)
    expect(areaOf(first.regions, 'room')).toBe(0)
    expect(Math.abs(areaOf(first.regions, 'skin') / (28 * 38) - 1)).toBeLessThan(0.01)
  })

  test('a zone takes its part of the room, the later of two where they overlap', () => {
    const zone = (from: number, to: number): Mesh =>
      translate(box(100, to - from, 100), [-50, from, -50])
    const { regions } = cutSection(BLOCK, [zone(-5, 5), zone(0, 8)], SETTINGS, 'x', 0)
    expect(
      rounded(
        at(
          regions.filter((one) => one.zone === 0),
          'zone',
        ),
      ),
    ).toEqual([[-5, 0, 0.8, 9.4]])
    expect(
      rounded(
        at(
          regions.filter((one) => one.zone === 1),
          'zone',
        ),
      ),
    ).toEqual([[0, 8, 0.8, 9.4]])
    expect(rounded(at(regions, 'room'))).toEqual([
      [-14, -5, 0.8, 9.4],
      [8, 14, 0.8, 9.4],
    ])
  })

  test('supports stand below what hangs over, and only where the settings have them', () => {
    // A post of 10 mm that carries a roof of 40 mm at 8 mm height: 15 mm hang over to either side.
    const mushroom = merge([
      translate(box(10, 10, 8), [-5, -5, 0]),
      translate(box(40, 10, 2), [-20, -5, 8]),
    ])
    const bare = cutSection(mushroom, [], SETTINGS, 'y', 0)
    expect(at(bare.regions, 'support')).toEqual([])
    const { regions } = cutSection(mushroom, [], { ...SETTINGS, supports: true }, 'y', 0)
    const held = at(regions, 'support')
    // A layer may reach out by 0.2 mm × tan 50°, 0.24 mm, without one.
    expect(rounded(held)).toEqual([
      [-20, -5.238, 0, 8],
      [5.238, 20, 0, 8],
    ])
  })

  test.each(['x', 'y', 'z'] as const)(
    'sections along %s, added up, hold what the layers are counted to hold',
    (axis: SectionAxis) => {
      const hole = circle(5, 48, 12, 12)
      const plate = translate(prism(rectangle(40, 24), 6, [hole]), [-20, -12, 0])
      const settings = { ...SETTINGS, habits: { ...SETTINGS.habits, holdMm: 2, slopeBandMm: 1 } }
      const step = merge([plate, translate(box(12, 20, 3), [8, -10, 6])])
      const census = countAllLayers(step, settings)
      const k = { x: 0, y: 1, z: 2 }[axis]
      const low = [-20, -12, 0][k]!
      const high = [20, 12, 9][k]!
      const cuts = axis === 'z' ? 45 : 80
      const each = (high - low) / cuts
      const sums = { cut: 0, skin: 0, room: 0 }
      for (let i = 0; i < cuts; i++) {
        const { regions } = cutSection(step, [], settings, axis, low + (i + 0.5) * each)
        for (const kind of ['cut', 'skin', 'room'] as const)
          sums[kind] += areaOf(regions, kind) * each
      }
      // Steps of 0.5 and 0.3 mm against edges of 6 to 40 mm.
      expect(Math.abs(sums.cut / census.modelMm3 - 1)).toBeLessThan(0.01)
      expect(Math.abs(sums.skin / census.skinMm3 - 1)).toBeLessThan(0.02)
      expect(Math.abs(sums.room / census.roomMm3 - 1)).toBeLessThan(0.02)
    },
  )
})
