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
    shop.soften(shop.rectangle(22, 15, [0, 8]), 2),
  )
  return shop.cut(
    shop.raise(shop.pierce(outline, holes), 3),
    // Head of the camera screw, from below.
    shop.rod(13, 1.2, [0, -14, 0]),
  )
}

/** Lens hood: 34 × 30 × 24, one skin of 0.8 mm: a low collar with a visor on one side. */
export function lensHood(shop: Workshop): Solid {
  const skin = 0.8
  const tube = shop.cut(shop.rod(30, 24, [0, 0, 0]), shop.rod(30 - 2 * skin, 24, [0, 0, 0]))
  const keep = shop.join(
    shop.block([40, 40, 4], [-20, -20, 0]),
    shop.hull(shop.block([26, 20, 1], [-13, 0, 3]), shop.block([11, 20, 1], [-5.5, 0, 23])),
  )
  const ears = shop.cut(
    shop.raise(shop.soften(shop.rectangle(34, 8), 2), skin),
    shop.rod(29, 2, [0, 0, -0.5]),
    shop.rod(1.2, 2, [15.8, 0, -0.5]),
    shop.rod(1.2, 2, [-15.8, 0, -0.5]),
  )
  return shop.join(shop.common(tube, keep), ears)
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
