import { ring } from './decks.ts'
import type { Solid, Workshop } from './workshop.ts'

/** Tail yoke: the tilting motor's cradle, 44 × 30 × 26, rod bores along x. */
export function tailYoke(shop: Workshop): Solid {
  const rodZ = 20
  const base = shop.raise(shop.soften(shop.fuse(shop.disc(30), shop.rectangle(44, 18)), 3), 3.6)
  const cheek = shop.hull(
    shop.block([4.6, 18, 3.6], [17.4, -9, 0]),
    shop.turn(shop.rod(12, 4.6, [-rodZ, 0, 17.4]), [0, 90, 0]),
  )
  const rib = shop.hull(
    shop.block([0.1, 2.4, 8], [17.4, -1.2, 3.6]),
    shop.block([6, 2.4, 0.1], [11.5, -1.2, 3.5]),
  )
  const boss = shop.turn(shop.rod(8, 2, [-rodZ, 0, 15.4]), [0, 90, 0])
  const side = shop.join(cheek, rib, boss)
  return shop.cut(
    shop.join(base, side, shop.mirrorX(side)),
    shop.turn(shop.rod(3.1, 60, [-rodZ, 0, -30]), [0, 90, 0]),
    shop.rod(5, 4, [0, 0, 0]),
    // The motor stands on its back; heads are let in from the cradle's side.
    ...ring(4, 6, 45).flatMap(([x, y]) => [
      shop.rod(2.4, 4, [x, y, 0]),
      shop.rod(4.4, 1.4, [x, y, 2.6]),
    ]),
  )
}

/**
 * Pivot collar: clamps on the boom's spigot, 28 × 26 × 22 in mm (its file is written in inches).
 */
export function pivotCollar(shop: Workshop): Solid {
  const lug = shop.hull(
    shop.block([4, 12, 13], [7, -6, 0]),
    shop.block([4.5, 12, 8], [10.5, -6, 0]),
  )
  const body = shop.join(
    shop.rod(26, 4, [0, 0, 0]),
    shop.rod(26, 2.5, [0, 0, 4], 19.4),
    shop.rod(19.4, 18, [0, 0, 4]),
    lug,
  )
  const open = shop.cut(
    body,
    shop.rod(12.2, 22, [0, 0, 0]),
    // Clamp slit and its bolt.
    shop.block([20, 1.6, 22], [5, -0.8, 0]),
    shop.turn(shop.rod(3.2, 26, [11.5, 5, -13]), [90, 0, 0]),
    // The cross bolt passes beside the pivot rod.
    shop.turn(shop.rod(2.4, 26, [-3.9, 17, -13]), [90, 0, 0]),
    ...ring(6, 10.2, 0)
      .slice(1)
      .map(([x, y]) => shop.rod(2.4, 4, [x, y, 0])),
  )
  // From −13 to 15 in x: 28 mm.
  return shop.common(open, shop.block([28, 26, 22], [-13, -13, 0]))
}
