import type { Outline, Point, Solid, Workshop } from './workshop.ts'

/** Where the 22 mm posts stand, seen in the lower deck's coordinates; the other side is the mirror image. */
const POSTS: readonly Point[] = [
  [29, 36],
  [19, -14],
]
/** The upper deck's middle lies this far ahead of the lower deck's. */
const UPPER_DECK_Y = 12

/** Lower deck: x to the right, y ahead, 136 × 98 × 4. */
export function lowerDeck(shop: Workshop): Solid {
  const outline = shop.soften(
    shop.bothSides(
      shop.polygon([
        [-1, 49],
        [30, 49],
        [54, 46],
        [68, 41],
        [68, 29],
        [50, 6],
        [32, -16],
        [20, -49],
        [-1, -49],
      ]),
    ),
    5,
  )
  const holes = shop.fuse(
    controllerHoles(shop, [0, 8]),
    shop.bothSides(shop.fuse(...POSTS.map((post) => shop.disc(3.2, post)))),
    shop.bothSides(shop.fuse(shop.disc(3.2, ARM_BOLTS[0]), shop.disc(3.2, ARM_BOLTS[1]))),
    ...BOOM_BOLTS_Y.map((y) => shop.disc(3.2, [0, y])),
    // Camera dampers hang ahead of the controller.
    shop.bothSides(shop.disc(8, [17, 42])),
  )
  const relief = shop.fuse(
    shop.soften(shop.rectangle(21, 21, [0, 8]), 4),
    shop.bothSides(
      shop.fuse(
        shop.soften(
          shop.polygon([
            [26, 28],
            [42, 36],
            [42, 20],
            [37, 8],
            [28, 6],
          ]),
          2.5,
        ),
        shop.soften(
          shop.polygon([
            [8, -21],
            [18, -22],
            [13, -40],
            [8, -40],
          ]),
          1.8,
        ),
        // Strap.
        shop.slot(3, [22, -4], [22, 2]),
      ),
    ),
  )
  const plate = shop.raise(shop.pierce(outline, holes, relief), 4)
  const seats = [...ARM_BOLTS, ...ARM_BOLTS.map(([x, y]): Point => [-x, y])]
  return shop.cut(
    plate,
    // Countersinks for the arm bolts, from below.
    ...seats.map(([x, y]) => shop.rod(6.4, 1.6, [x, y, 0], 3.2)),
  )
}

/** Upper deck: x to the right, y ahead, 124 × 66 × 3. */
export function upperDeck(shop: Workshop): Solid {
  const outline = shop.soften(
    shop.bothSides(
      shop.polygon([
        [-1, 33],
        [36, 33],
        [62, 22],
        [62, 4],
        [40, -8],
        [24, -33],
        [-1, -33],
      ]),
    ),
    5,
  )
  const posts = POSTS.map(([x, y]): Point => [x, y - UPPER_DECK_Y])
  const holes = shop.fuse(
    shop.bothSides(shop.fuse(...posts.map((post) => shop.disc(3.2, post)))),
    // Mast: three bolts at 120°.
    ...ring(3, 9.5, 90).map(([x, y]) => shop.disc(2.4, [x, y + 18])),
    shop.disc(5, [0, 18]),
    shop.bothSides(
      shop.fuse(
        shop.soften(
          shop.polygon([
            [38, 24],
            [55, 17],
            [55, 8],
            [40, 0],
          ]),
          2.5,
        ),
        shop.slot(3, [20, 8], [20, 16]),
        shop.slot(3, [20, -20], [20, -12]),
      ),
    ),
    shop.soften(shop.rectangle(22, 24, [0, -10]), 4),
  )
  const plate = shop.raise(shop.pierce(outline, holes), 3)
  return shop.cut(
    plate,
    ...posts
      .flatMap(([x, y]): Point[] => [
        [x, y],
        [-x, y],
      ])
      .map(([x, y]) => shop.rod(3.2, 1.6, [x, y, 1.4], 6.4)),
  )
}

const ARM_BOLTS: readonly [Point, Point] = [
  [52, 30],
  [61.5, 35.5],
]
const BOOM_BOLTS_Y = [34, -14, -40] as const

/** Four Ø 3.2 holes, 30.5 × 30.5 mm apart, as flight controllers have them (common practice, no source). */
function controllerHoles(shop: Workshop, [x, y]: Point): Outline {
  const half = 30.5 / 2
  return shop.bothSides(
    shop.fuse(shop.disc(3.2, [x + half, y + half]), shop.disc(3.2, [x + half, y - half])),
  )
}

/** `count` points on a circle of radius `radius`, mm, the first at `startDeg` from the x axis. */
export function ring(count: number, radius: number, startDeg: number): Point[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = ((startDeg + (360 * i) / count) * Math.PI) / 180
    return [tidy(radius * Math.cos(angle)), tidy(radius * Math.sin(angle))]
  })
}

/**
 * To a millionth of a millimetre: the last bits of sine and cosine are the engine's own, the files'
 * bytes must not be.
 */
function tidy(lengthMm: number): number {
  return Math.round(lengthMm * 1e6) / 1e6
}
