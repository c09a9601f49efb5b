import { tidy } from './tidy.ts'
import type { Point, Solid, Workshop } from './workshop.ts'

/** Camera tray: x to the right, y ahead, 66 × 58 × 3, four damper holes Ø 8.0. */
export function cameraTray(shop: Workshop): Solid {
  const outline = shop.soften(
    shop.bothSides(
      shop.polygon([
        [-1, 29],
        [33, 29],
        [33, 12],
        [28, 6],
        [28, -8],
        [33, -14],
        [33, -29],
        [-1, -29],
      ]),
    ),
    4,
  )
  const dampers: readonly Point[] = [
    [25.5, 21.5],
    [25.5, -21.5],
  ]
  const holes = shop.fuse(
    shop.bothSides(shop.fuse(...dampers.map((at) => shop.disc(8, at)))),
    shop.disc(6.6, [0, -14]),
    shop.bothSides(shop.slot(3, [16, -2], [16, 8])),
    shop.soften(shop.rectangle(22, 18, [0, 8]), 2),
  )
  return shop.cut(
    shop.raise(shop.pierce(outline, holes), 3),
    // Head of the camera screw, from below.
    shop.rod(13, 1.2, [0, -14, 0]),
    // The lens hood's screws, into the front edge.
    ...[-14.5, 14.5].map((x) =>
      shop.move(shop.turn(shop.rod(1.6, 8, [0, 0, 0]), [90, 0, 0]), [x, 29, 1.5]),
    ),
  )
}

/**
 * Lens hood: 34 × 30 × 24, one skin of 0.8 mm: a low collar with a visor above and two ears below
 * for the tray's edge.
 */
export function lensHood(shop: Workshop): Solid {
  const skin = 0.8
  const tube = shop.cut(shop.rod(30, 24, [0, 0, 0]), shop.rod(30 - 2 * skin, 24, [0, 0, 0]))
  const keep = shop.join(
    shop.block([40, 40, 4], [-20, -20, 0]),
    shop.hull(shop.block([26, 20, 1], [-13, 0, 3]), shop.block([11, 20, 1], [-5.5, 0, 23])),
  )
  const ears = shop.cut(
    shop.raise(shop.soften(shop.rectangle(34, 6, [0, -12]), 2), skin),
    shop.rod(29, 2, [0, 0, -0.5]),
    shop.rod(2.4, 2, [14.5, -12, -0.5]),
    shop.rod(2.4, 2, [-14.5, -12, -0.5]),
  )
  return shop.join(shop.common(tube, keep), ears)
}

/** How far the camera looks down. */
export const NOSE_DOWN_DEG = 35
/** Where the rear cup sits on a bracket, in the bracket's own x and y. */
export const BRACKET_REAR_CUP: Point = [23, 8.5]
/** Leaves 2.2 mm of plastic beside an insert. */
export const BRACKET_WIDTH_MM = 8.6
/** Cups along the slope. */
export const CUP_PITCH_MM = 43

/**
 * Bracket that carries one side of the tray, lying on its side: x ahead, y up from the deck it
 * stands on, 8.6 thick. A foot with two seats for inserts, and a bar that falls ahead at the
 * camera's angle with a bore for each cup's screw.
 */
export function trayBracket(shop: Workshop): Solid {
  const angle = (NOSE_DOWN_DEG * Math.PI) / 180
  const slope = (along: number, below: number): Point => [
    tidy(BRACKET_REAR_CUP[0] + along * Math.cos(angle) - below * Math.sin(angle)),
    tidy(BRACKET_REAR_CUP[1] - along * Math.sin(angle) - below * Math.cos(angle)),
  ]
  const bar = 5
  const side = shop.soften(
    shop.polygon([
      [0, 0],
      [19, 0],
      slope(15, bar),
      slope(CUP_PITCH_MM + 5, bar),
      slope(CUP_PITCH_MM + 5, 0),
      slope(-5, 0),
      [9, 6.5],
      [0, 6.5],
    ]),
    0.8,
  )
  const bore = (diameter: number, depth: number, turnDeg: number, [x, y]: Point): Solid =>
    shop.move(shop.turn(shop.rod(diameter, depth, [0, 0, 0]), [-90, 0, turnDeg]), [
      x,
      y,
      BRACKET_WIDTH_MM / 2,
    ])
  return shop.cut(
    shop.raise(side, BRACKET_WIDTH_MM),
    ...[3.5, 13.5].map((x) => bore(4.2, 6, 0, [x, -1])),
    ...[0, CUP_PITCH_MM].map((along) => bore(1.7, 8, -NOSE_DOWN_DEG, slope(along, 6))),
  )
}

/** Damper cup: 12 × 12 × 5, grips the plate with a groove. */
export function damperCup(shop: Workshop): Solid {
  const outside = shop.join(
    shop.rod(10.6, 0.7, [0, 0, 0], 12),
    shop.rod(12, 1, [0, 0, 0.7]),
    shop.rod(8.2, 2.5, [0, 0, 1.7]),
    shop.rod(11, 0.8, [0, 0, 4.2]),
  )
  return shop.cut(outside, shop.rod(2.4, 5, [0, 0, 0]), shop.rod(4.2, 1.2, [0, 0, 3.8], 5.4))
}
