import type { Outline, Point, Solid, Workshop } from './workshop.ts'

/** Where the two bolts to the lower deck pass the front arm, mm from its root end. */
const ARM_BOLTS_X = [8, 20] as const
/** Where a foot is bolted on from below: a foot's holes are 26 mm apart. */
const ARM_FOOT_X = [115, 141] as const
/** Where the three bolts to the lower deck pass the tail boom, mm from its front end. */
const BOOM_BOLTS_X = [8, 56, 82] as const
const BOOM_FOOT_X = [162, 188] as const
/** The cross bolt of the pivot collar passes above the pivot rod. */
const CROSS_BOLT = { x: 215, z: 9.9 } as const

/** Left front arm: x from the root, 168 × 20 × 14, bottom flat on the bed. */
export function frontArm(shop: Workshop): Solid {
  const motorX = 158
  const plan = shop.soften(
    shop.fuse(
      shop.rectangle(40, 20, [20, 0]),
      shop.polygon([
        [30, -9],
        [150, -5.5],
        [150, 5.5],
        [30, 9],
      ]),
      shop.disc(20, [motorX, 0]),
    ),
    3,
  )
  const body = shop.common(
    shop.raise(plan, 14),
    alongX(shop, 20, [
      [0, 0],
      [168, 0],
      [168, 5.5],
      // A motor of 28 mm stands clear of the slope.
      [143, 5.5],
      [138.5, 9],
      [52, 14],
      [0, 14],
    ]),
  )
  const motorHoles = [45, 135, 225, 315].map((degrees): Point => {
    const angle = (degrees * Math.PI) / 180
    return [motorX + 6 * Math.cos(angle), 6 * Math.sin(angle)]
  })
  return shop.cut(
    body,
    ...ARM_BOLTS_X.flatMap((x) => [
      shop.rod(3.2, 14, [x, 0, 0]),
      // Seats for heat-set inserts.
      shop.rod(4.2, 5, [x, 0, 9]),
    ]),
    ...ARM_FOOT_X.map((x) => shop.rod(4.2, 5, [x, 0, 0])),
    shop.rod(6, 6, [motorX, 0, 0]),
    ...motorHoles.flatMap(([x, y]) => [shop.rod(2.4, 6, [x, y, 0]), shop.rod(4.4, 2.5, [x, y, 0])]),
    // The wire channel leaves on the outer side: this is what makes the right arm a mirror image.
    shop.raise(
      shop.fuse(
        shop.slot(4.4, [34, 2], [132, 2]),
        shop.slot(4.4, [34, 2], [34, 14]),
        shop.slot(4.4, [132, 2], [140, 9]),
      ),
      20,
      6,
    ),
    shop.raise(shop.soften(lightening(shop, 52, 108, 4, -2.6), 0.9), 14),
  )
}

/**
 * Tail boom: x from the front end, 232 × 18 × 16, a keel whose flat top bolts under the deck and
 * that ends in a round spigot for the pivot collar.
 */
export function tailBoom(shop: Workshop): Solid {
  const plan = shop.soften(
    shop.fuse(
      shop.rectangle(22, 18, [11, 0]),
      shop.polygon([
        [18, -9],
        [62, -5.5],
        [62, 5.5],
        [18, 9],
      ]),
      shop.rectangle(150, 11, [131, 0]),
    ),
    2.5,
  )
  const beam = shop.common(
    shop.raise(plan, 16),
    alongX(shop, 18, [
      [0, 0],
      [206, 0],
      [206, 10.5],
      [130, 10.5],
      [88, 16],
      [0, 16],
    ]),
  )
  // The collar sits on the spigot against a shoulder, flush with its end.
  const round = (diameter: number, from: number, to: number) =>
    shop.turn(shop.rod(diameter, to - from, [-6, 0, from]), [0, 90, 0])
  const spigot = shop.common(
    shop.join(round(12, 198, 232), round(16, 204, 210)),
    shop.block([240, 16, 16], [0, -8, 0]),
  )
  return shop.cut(
    shop.join(beam, spigot),
    ...BOOM_BOLTS_X.flatMap((x) => [shop.rod(3.2, 16, [x, 0, 0]), shop.rod(4.2, 5, [x, 0, 11])]),
    ...BOOM_FOOT_X.map((x) => shop.rod(4.2, 5, [x, 0, 0])),
    // Pivot rod and its cross bolt.
    shop.turn(shop.rod(3.1, 40, [-6, 0, 192]), [0, 90, 0]),
    shop.turn(shop.rod(2.4, 30, [CROSS_BOLT.x, CROSS_BOLT.z, -15]), [90, 0, 0]),
    // Wire duct, open at the top.
    shop.raise(shop.slot(6, [24, 0], [44, 0]), 12, 4),
    shop.raise(shop.slot(6, [66, 0], [74, 0]), 12, 4),
    shop.raise(shop.slot(5.6, [98, 0], [184, 0]), 12, 6.2),
    // Screws of the tail servo, which hangs below.
    shop.rod(1.8, 5.4, [97, 0, 0]),
    shop.rod(1.8, 5.4, [125, 0, 0]),
    shop.raise(shop.soften(boomWindows(shop), 1.2), 16),
  )
}

/** A side view (x, z) drawn out along y, `width` wide about the plane y = 0. */
function alongX(shop: Workshop, width: number, side: readonly Point[]): Solid {
  const raised = shop.raise(shop.polygon(side), width)
  return shop.move(shop.turn(raised, [90, 0, 0]), [0, width / 2, 0])
}

function lightening(shop: Workshop, from: number, to: number, count: number, y: number): Outline {
  const pitch = (to - from) / count
  const windows = Array.from({ length: count }, (_, i) =>
    shop.rectangle(pitch - 4, 2.6, [from + (i + 0.5) * pitch, y]),
  )
  return shop.fuse(...windows)
}

function boomWindows(shop: Workshop): Outline {
  return shop.fuse(...[111, 138, 151, 175].map((x) => shop.rectangle(9, 4.4, [x, 0])))
}
