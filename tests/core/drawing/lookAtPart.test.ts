import { describe, expect, test } from 'vitest'
import { lookAtPart } from '../../../src/core/drawing/lookAtPart.ts'
import { onSheet } from '../../../src/core/drawing/onSheet.ts'
import { PART_VIEWS } from '../../../src/core/drawing/partViews.ts'
import { box, circle, merge, prism, rectangle, translate } from '../../support/meshes.ts'

const SHEET = { widthPx: 500, heightPx: 400, marginPx: 50 }

/** 40 × 30 × 6 mm with two bores of 5 mm and one of 8 mm upright through it, round the origin. */
const PLATE = translate(
  prism(rectangle(40, 30), 6, [
    circle(2.5, 64, 8, 15),
    circle(2.5, 64, 32, 15),
    circle(4, 64, 20, 15),
  ]),
  [-20, -15, 0],
)

describe('a look at a part', () => {
  test('its holes are grouped by size, each where its mouth is', () => {
    const look = lookAtPart(PLATE, [], PART_VIEWS.top, SHEET, 50)!
    // 400 px for 40 mm.
    expect(look.drawing.scale).toBeCloseTo(10, 6)
    expect(
      look.holes.map(({ diameterMm, depthMm, through, lies, places }) => ({
        diameterMm: Math.round(diameterMm * 100) / 100,
        depth: Math.round(depthMm.high * 100) / 100,
        through,
        lies,
        at: places.map(({ x, y }) => [Math.round(x), Math.round(y)]),
        seen: places.map(({ isSeen }) => isSeen),
      })),
    ).toEqual([
      {
        diameterMm: 5,
        depth: 6,
        through: true,
        lies: 'upright',
        at: [
          [130, 200],
          [370, 200],
        ],
        seen: [true, true],
      },
      { diameterMm: 8, depth: 6, through: true, lies: 'upright', at: [[250, 200]], seen: [true] },
    ])
  })

  test('a hole seen edge-on, or with something before it, is not seen', () => {
    const seenIn = (view: keyof typeof PART_VIEWS, mesh = PLATE) =>
      lookAtPart(mesh, [], PART_VIEWS[view], SHEET, 50)!.holes.flatMap(({ places }) =>
        places.map(({ isSeen }) => isSeen),
      )
    expect(seenIn('front')).toEqual([false, false, false])
    expect(seenIn('below')).toEqual([true, true, true])
    const roofed = merge([PLATE, translate(box(50, 50, 2), [-25, -25, 30])])
    expect(seenIn('top', roofed)).toEqual([false, false, false])
    expect(seenIn('below', roofed)).toEqual([true, true, true])
  })

  test('what hangs over is found through the part, and has its area', () => {
    const roof = merge([
      translate(box(10, 10, 8), [-5, -5, 0]),
      translate(box(40, 10, 2), [-20, -5, 8]),
    ])
    const look = lookAtPart(roof, [], PART_VIEWS.top, SHEET, 50)!
    expect(look.overhang.areaMm2).toBeCloseTo(400, 6)
    expect(look.overhang.path).not.toBe('')
    expect(look.overhang.anchors).not.toBeNull()
    // Edge-on there is nothing of it to hatch; the area stays.
    const edgeOn = lookAtPart(roof, [], PART_VIEWS.front, SHEET, 50)!
    expect(edgeOn.overhang.areaMm2).toBeCloseTo(400, 6)
    expect(lookAtPart(PLATE, [], PART_VIEWS.top, SHEET, 50)!.overhang.areaMm2).toBe(0)
  })

  test('a zone takes the place and scale of the part', () => {
    const zone = translate(box(10, 20, 50), [0, -10, -20])
    const { zones, drawing } = lookAtPart(PLATE, [zone], PART_VIEWS.top, SHEET, 50)!
    const points = [...(zones[0]?.path ?? '').matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(
      ([, x, y]) => [Number(x), Number(y)] as const,
    )
    const [left, top] = onSheet(drawing, [0, 10, 0])
    const [right, bottom] = onSheet(drawing, [10, -10, 0])
    expect(Math.min(...points.map(([x]) => x))).toBeCloseTo(left, 0)
    expect(Math.max(...points.map(([x]) => x))).toBeCloseTo(right, 0)
    expect(Math.min(...points.map(([, y]) => y))).toBeCloseTo(top, 0)
    expect(Math.max(...points.map(([, y]) => y))).toBeCloseTo(bottom, 0)
    expect([left, right, top, bottom].map(Math.round)).toEqual([250, 350, 100, 300])
  })
})
