import { ring } from './decks.ts'
import type { Solid, Workshop } from './workshop.ts'

/** GPS mast: stands on three toes, 58 tall on 26 × 26. */
export function gpsMast(shop: Workshop): Solid {
  const toes = ring(3, 9.5, 90).map((at) => shop.slot(6, [0, 0], at))
  const base = shop.raise(shop.soften(shop.fuse(shop.disc(11), ...toes), 2), 2.4)
  const gussets = [90, 210, 330].map((degrees) =>
    shop.turn(
      shop.hull(
        shop.block([7.5, 1.6, 0.1], [0, -0.8, 2.3]),
        shop.block([2, 1.6, 10], [0, -0.8, 2]),
      ),
      [0, 0, degrees],
    ),
  )
  const post = shop.rod(6.8, 54, [0, 0, 0], 5.8)
  const head = shop.join(
    shop.rod(5.8, 3.6, [0, 0, 52], 12),
    shop.raise(
      shop.soften(shop.fuse(shop.disc(13), shop.rectangle(26, 4.6), shop.rectangle(4.6, 26)), 2),
      2.4,
      55.6,
    ),
  )
  return shop.cut(
    shop.join(base, ...gussets, post, head),
    shop.rod(3, 60, [0, 0, -1]),
    ...ring(3, 9.5, 90).map(([x, y]) => shop.rod(2.4, 4, [x, y, -1])),
    ...ring(4, 10.8, 0).map(([x, y]) => shop.rod(1.7, 4, [x, y, 54.6])),
  )
}
