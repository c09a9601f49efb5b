import { ring } from './decks.ts'
import { wingDowel } from './wing.ts'
import type { Point, Solid, Workshop } from './workshop.ts'

/** The pod's shell is three lines thick. */
const SHELL_MM = 1.2
const BAY_MM = 150
/** Where the wing's spar crosses the bay, and where its root ribs touch, all mm. */
const SPAR = { z: 128, depth: 14 } as const
const ROOT_RIB_X = 24

/** An ellipse of the pod: full width in x and depth in y, at height z, all mm. */
type Station = readonly [width: number, depth: number, z: number]

/** Nose, standing on its open end with the motor's face on top: 46 × 52 × 60. */
export function podNose(shop: Workshop): Solid {
  const shell = hollow(
    shop,
    taper(60, (share) => 1 - 0.36 * share * share),
    3,
  )
  return shop.cut(
    shop.join(shell, pinSeats(shop, 0)),
    pins(shop, 0),
    shop.rod(9, 20, [0, 0, 50]),
    ...ring(4, 8, 45).map(([x, y]) => shop.rod(3.2, 20, [x, y, 50])),
    // Cooling air goes in through both sides.
    shop.turn(shop.rod(7, 60, [-32, 0, -30]), [0, 90, 0]),
  )
}

/**
 * Battery bay, standing: a tube with a hatch, two ribs and a seat at either side for the wing, 48 ×
 * 52 × 150.
 */
export function podBay(shop: Workshop): Solid {
  const outer: readonly Station[] = [
    [46, 52, 0],
    [46, 52, BAY_MM],
  ]
  const rib = (z: number) =>
    shop.cut(
      loft(shop, [
        [45, 51, z],
        [45, 51, z + 1.6],
      ]),
      shop.raise(shop.soften(shop.rectangle(34, 38), 6), 4, z - 1),
    )
  const [ahead, up] = wingDowel()
  const seats = shop.cut(
    shop.join(
      across(shop, 13, 2 * ROOT_RIB_X, SPAR.depth, SPAR.z),
      across(shop, 8, 2 * ROOT_RIB_X, SPAR.depth + up, SPAR.z + ahead),
    ),
    shop.block([34, 60, BAY_MM], [-17, -30, 0]),
  )
  return shop.cut(
    shop.join(
      hollow(shop, outer, 0),
      rib(40),
      rib(112),
      seats,
      pinSeats(shop, 0),
      pinSeats(shop, BAY_MM - PIN_SEAT_MM),
    ),
    pins(shop, 0),
    pins(shop, BAY_MM - PIN_MM),
    // Hatch over the battery tray, which slides 40 mm.
    shop.move(
      shop.turn(shop.raise(shop.soften(shop.rectangle(28, 84), 6), 30), [90, 0, 0]),
      [0, 0, 62],
    ),
    across(shop, 8.3, 60, SPAR.depth, SPAR.z),
    across(shop, 3.1, 60, SPAR.depth + up, SPAR.z + ahead),
  )
}

/** Tail cone, standing on its wide end, with the socket of the 10 mm boom: 46 × 52 × 110. */
export function podTail(shop: Workshop): Solid {
  const stations = taper(110, (share) => 1 - 0.6 * share * Math.sqrt(share))
  // Two crossed webs, trimmed by the cone, carry the socket.
  const webs = shop.join(
    shop.block([1.2, 60, 34], [-0.6, -30, 76]),
    shop.block([60, 1.2, 34], [-30, -0.6, 76]),
  )
  return shop.cut(
    shop.join(
      hollow(shop, stations, 0),
      shop.common(shop.join(shop.rod(13, 34, [0, 0, 76]), webs), loft(shop, stations)),
      pinSeats(shop, 0),
    ),
    pins(shop, 0),
    shop.rod(10.2, 60, [0, 0, 60]),
  )
}

/** Pins of 3 mm are glued in where two pieces of the pod meet. */
const PIN_MM = 8
const PIN_SEAT_MM = 10
const PINS_AT: readonly Point[] = [
  [-18.6, 0],
  [18.6, 0],
]

function pinSeats(shop: Workshop, z: number): Solid {
  return shop.join(...PINS_AT.map(([x, y]) => shop.rod(6.6, PIN_SEAT_MM, [x, y, z])))
}

function pins(shop: Workshop, z: number): Solid {
  return shop.join(...PINS_AT.map(([x, y]) => shop.rod(3.1, PIN_MM, [x, y, z])))
}

/** A rod from side to side. */
function across(shop: Workshop, diameter: number, length: number, depth: number, z: number): Solid {
  return shop.turn(shop.rod(diameter, length, [-z, depth, -length / 2]), [0, 90, 0])
}

/**
 * Stations of a body that starts as wide as the bay; `shrink` must bulge outwards, or the hull
 * would fill the hollows.
 */
function taper(height: number, shrink: (share: number) => number): Station[] {
  return Array.from({ length: 9 }, (_, i) => {
    const factor = shrink(i / 8)
    return [46 * factor, 52 * factor, (height * i) / 8]
  })
}

/** A convex shell over the stations; `capMm` closes the top (0: open at both ends). */
function hollow(shop: Workshop, stations: readonly Station[], capMm: number): Solid {
  const inner = stations.map(([width, depth, z]): Station => [
    width - 2 * SHELL_MM,
    depth - 2 * SHELL_MM,
    z,
  ])
  const shell = shop.cut(loft(shop, stations), loft(shop, inner))
  const [width, depth, top] = stations.at(-1) ?? [0, 0, 0]
  if (capMm === 0) return shell
  return shop.join(
    shell,
    loft(shop, [
      [width, depth, top - capMm],
      [width, depth, top],
    ]),
  )
}

function loft(shop: Workshop, stations: readonly Station[]): Solid {
  // Thin plates: hull() takes bodies, and 0.01 mm is far below a layer.
  const plates = stations.map(([width, depth, z], i) => {
    const at = i === stations.length - 1 ? z - 0.01 : z
    return shop.raise(shop.squash(shop.disc(2), width / 2, depth / 2), 0.01, at)
  })
  return shop.hull(...plates)
}
