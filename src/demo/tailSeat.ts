import { FIN_PIN_X, TAIL_PIN_X } from './wing.ts'
import type { Solid, Workshop } from './workshop.ts'

/** Mm from the seat's front end to the dowels of the tail plane and of the fin. */
const TAIL_DOWEL_X = 8
const FIN_DOWEL_X = 17.6
/** Above the fin's face, which lies on the bed: the tail plane's dowels and the boom. */
const TAIL_DOWEL_Z = 3.5
const BOOM_Z = 13

/**
 * What fin and tail plane sit on, upside down as it is printed: 50 × 13.4 × 19.7, glued on the 10
 * mm boom.
 */
export function tailSeat(shop: Workshop): Solid {
  const along = (diameter: number) => shop.turn(shop.rod(diameter, 50, [-BOOM_Z, 0, 0]), [0, 90, 0])
  const across = (diameter: number, x: number) =>
    shop.turn(shop.rod(diameter, 12, [x, TAIL_DOWEL_Z, -6]), [90, 0, 0])
  return shop.cut(
    shop.join(shop.block([50, 11, 11], [0, -5.5, 0]), along(13.4)),
    along(10.2),
    across(3.1, TAIL_DOWEL_X),
    across(2.1, TAIL_DOWEL_X + TAIL_PIN_X),
    shop.rod(3.1, 6, [FIN_DOWEL_X, 0, 0]),
    shop.rod(2.1, 6, [FIN_DOWEL_X + FIN_PIN_X, 0, 0]),
  )
}
