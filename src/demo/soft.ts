import type { Solid, Workshop } from './workshop.ts'

/**
 * One foot, upside down as it is printed: the pad that takes the arm lies on the bed, 36 × 18 × 22.
 */
function foot(shop: Workshop): Solid {
  const pad = shop.raise(
    shop.soften(shop.fuse(shop.slot(11, [-12.5, 0], [12.5, 0]), shop.disc(13)), 3),
    2,
  )
  const leg = shop.join(
    shop.rod(12, 3, [0, 0, 2], 7.6),
    shop.rod(7.6, 12, [0, 0, 5], 6.6),
    shop.rod(6.6, 4, [0, 0, 16], 17),
    shop.rod(17, 1, [0, 0, 20], 18),
    shop.rod(18, 1, [0, 0, 21]),
  )
  return shop.cut(
    shop.join(pad, leg),
    shop.rod(3.2, 4, [-13, 0, -1]),
    shop.rod(3.2, 4, [13, 0, -1]),
    shop.rod(3, 24, [0, 0, -1]),
    shop.rod(6, 5, [0, 0, 17], 14),
  )
}

/** Three feet in a row along y, 6 mm apart, as one file holds them. */
export function threeFeet(shop: Workshop): Solid {
  const one = foot(shop)
  return shop.join(shop.move(one, [0, -24, 0]), one, shop.move(one, [0, 24, 0]))
}

/**
 * Battery pad: 92 × 36 × 2.4, a plain sheet with a slot at either side for each of two straps and a
 * hole at each end.
 */
export function batteryPad(shop: Workshop): Solid {
  const sheet = shop.soften(shop.rectangle(92, 36), 5)
  const straps = [-22, 22].flatMap((x) => [-15, 15].map((y) => shop.rectangle(14, 2.4, [x, y])))
  const ties = [-41, 41].map((x) => shop.disc(3.2, [x, 0]))
  return shop.raise(shop.pierce(sheet, ...straps, ...ties), 2.4)
}
