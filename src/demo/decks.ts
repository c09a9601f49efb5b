import { tidy } from './tidy.ts'
import type { Outline, Point, Solid, Workshop } from './workshop.ts'

/**
 * Where the 22 mm posts stand, seen in the lower deck's coordinates; the other side is the mirror
 * image.
 */
const POSTS: readonly Point[] = [
  [17, 29],
  [24, -14],
]
/** The upper deck's middle lies this far ahead of the lower deck's. */
const UPPER_DECK_Y = -20

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
    controllerHoles(shop, [0, 2]),
    shop.bothSides(shop.fuse(...POSTS.map((post) => shop.disc(3.2, post)))),
    shop.bothSides(shop.fuse(...ARM_BOLTS.map((at) => shop.disc(3.2, at)))),
    ...BOOM_BOLTS_Y.map((y) => shop.disc(3.2, [0, y])),
    shop.bothSides(shop.fuse(...BRACKET_BOLTS.map((at) => shop.disc(3.2, at)))),
  )
  const relief = shop.fuse(
    shop.soften(shop.rectangle(21, 20, [0, 2]), 4),
    shop.bothSides(
      shop.fuse(
        shop.soften(
          shop.polygon([
            [26, 26],
            [40, 31],
            [43, 20],
            [38, 5],
            [27, 2],
          ]),
          2.5,
        ),
        shop.soften(
          shop.polygon([
            [7, -4],
            [13, -18],
            [19, -22],
            [14, -43],
            [7, -43],
          ]),
          1.8,
        ),
      ),
    ),
  )
  return shop.raise(shop.pierce(outline, holes, relief), 4)
}

/**
 * Upper deck: x ahead, y to the left, 124 × 66 × 3; the pack lies along it, the mast stands at its
 * front.
 */
export function upperDeck(shop: Workshop): Solid {
  const outline = shop.soften(
    shop.bothSides(
      shop.polygon([
        [-1, 62],
        [14, 62],
        [26, 48],
        [33, 12],
        [33, -4],
        [23, -26],
        [23, -62],
        [-1, -62],
      ]),
    ),
    5,
  )
  const holes = shop.fuse(
    shop.bothSides(shop.fuse(...POSTS.map(([x, y]) => shop.disc(3.2, [x, y - UPPER_DECK_Y])))),
    // Mast: three bolts at 120°.
    ...ring(3, 9.5, 90).map(([x, y]) => shop.disc(2.4, [x, y + 48])),
    shop.disc(5, [0, 48]),
    // The battery pad's two holes and two straps.
    shop.disc(3.2, [0, 29]),
    shop.disc(3.2, [0, -53]),
    shop.bothSides(
      shop.fuse(shop.rectangle(2.4, 14, [15, 10]), shop.rectangle(2.4, 14, [15, -34])),
    ),
    shop.soften(shop.rectangle(22, 24, [0, 8]), 4),
    shop.soften(shop.rectangle(22, 30, [0, -30]), 4),
  )
  return shop.turn(shop.raise(shop.pierce(outline, holes), 3), [0, 0, -90])
}

/**
 * An arm starts 52 mm from the middle, 60° off the way ahead; its bolts are 8 and 20 mm further
 * out.
 */
const ARM_BOLTS = [60, 72].map((r): Point => [tidy(r * Math.sqrt(0.75)), r / 2])
/** The boom starts 45 mm ahead of the middle. */
const BOOM_BOLTS_Y = [37, -11, -37] as const
/** Of the camera tray's brackets. */
const BRACKET_BOLTS: readonly Point[] = [
  [25.5, 34.5],
  [25.5, 44.5],
]

/**
 * Four Ø 3.2 holes, 30.5 × 30.5 mm apart, as flight controllers have them (common practice, no
 * source).
 */
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
