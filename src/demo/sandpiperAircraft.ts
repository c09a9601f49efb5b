import type { Place } from '../core/model/aircraft.ts'
import type { Vec3 } from '../core/model/mesh.ts'
import type { DemoAircraft } from './manifest.ts'
import { sampleItem } from './sampleItem.ts'

/*
 * Everything in here is invented. Frame axes: x forward, y left, z up; the origin is the middle of
 * the motor circle, at the height of the motors. Deck files are drawn with x to the right and y
 * ahead, hence a quarter turn.
 */

/** Undersides, mm: arms lie on the lower deck, the boom hangs below it, posts of 22 mm carry the upper deck. */
const ARM_Z = -14
const LOWER_DECK_Z = ARM_Z - 4
const BOOM_Z = LOWER_DECK_Z - 16
const UPPER_DECK_Z = ARM_Z + 22
const PACK_X = -38
/** The arm's motor sits 158 mm from its root. */
const ARM_ROOT_MM = 210 - 158

const place = (
  partId: string,
  positionMm: Vec3,
  rotateDeg: Vec3 = [0, 0, 0],
  mirrored = false,
): Place => ({ partId, positionMm, rotateDeg, mirrored })

const half = ARM_ROOT_MM / 2
const side = tidy(ARM_ROOT_MM * Math.sqrt(0.75))

/** Its four dampers, in the tray's own x and y, nose 35° down with it. */
const TRAY: Vec3 = [62, 0, -40]
const TRAY_TURN: Vec3 = [-35, 0, -90]
const cups = [
  [25.5, 21.5],
  [-25.5, 21.5],
  [25.5, -21.5],
  [-25.5, -21.5],
].map(([right = 0, ahead = 0]): Vec3 => {
  const down = (35 * Math.PI) / 180
  return [tidy(TRAY[0] + ahead * Math.cos(down)), -right, tidy(TRAY[2] - ahead * Math.sin(down))]
})

export const SANDPIPER_AIRCRAFT: DemoAircraft = {
  items: [
    sampleItem('M3 × 10 screw, steel', 'fasteners', 12, 0.75, 0.08),
    sampleItem('M3 × 8 screw, steel', 'fasteners', 8, 0.65, 0.08),
    sampleItem('M3 insert, Ø 4.2 × 5', 'fasteners', 12, 0.25, 0.12),
    sampleItem('M2 × 6 screw, steel', 'fasteners', 4, 0.2, 0.06),
    sampleItem('Alloy post, 22 mm', 'fasteners', 4, 0.5, 0.5, [11, 0, -3]),
    sampleItem('Camera damper', 'fasteners', 4, 0.3, 0.4, [62, 0, -38]),
    sampleItem('Pivot rod, 3 × 60 mm', 'structure', 1, 3.3, 0.6, [-198, 0, -28]),
    sampleItem('Strap', 'structure', 2, 0.75, 0.9, [PACK_X, 0, 22]),
    sampleItem('Motor', 'drive', 3, 30, 14),
    sampleItem('Speed controller', 'drive', 3, 8, 12, [0, 0, -8]),
    sampleItem('Propeller, 6 inch, two blades', 'drive', 3, 4.5, 1.5),
    sampleItem('Flight controller', 'electronics', 1, 8, 38, [8, 0, -6]),
    sampleItem('Receiver', 'electronics', 1, 2, 15, [-12, 0, -8]),
    sampleItem('GPS', 'electronics', 1, 9, 18, [30, 0, 72]),
    sampleItem('Tail servo', 'drive', 1, 12, 11, [-36, 0, -26]),
    sampleItem('Pack, 3 cells, 2200 mAh', 'power', 1, 185, 22, [PACK_X, 0, 25]),
    sampleItem('Action camera', 'payload', 1, 62, 120, [70, 0, -26]),
    sampleItem('Wire and plugs', 'electronics', 1, 30, 9, [0, 0, -6]),
  ],
  weighedG: { 'Front arm': 22.05, 'Upper deck': 15 },
  limitG: 610,
  printedLimitG: 145,
  places: [
    place('Front arm', [half, side, ARM_Z], [0, 0, 60]),
    // The mirror image of the left one over the middle: mirrored in its own x, then turned to point the other way.
    place('Front arm', [half, -side, ARM_Z], [0, 0, 120], true),
    place('Tail boom', [42, 0, BOOM_Z], [0, 0, 180]),
    place('Lower deck', [0, 0, LOWER_DECK_Z], [0, 0, -90]),
    // Its file has the middle of the deck at 110, 110.
    place('Upper deck', [12 - 110, 110, UPPER_DECK_Z], [0, 0, -90]),
    place('Camera tray', TRAY, TRAY_TURN),
    place('Tail yoke', [-210, 0, -8], [180, 0, 0]),
    place('Pivot collar', [-190, 0, -28], [0, 90, 0]),
    place('Lens hood', [92, 0, -42], [125, 0, 90]),
    place('Battery pad', [PACK_X, 0, UPPER_DECK_Z + 3]),
    place('GPS mast', [30, 0, UPPER_DECK_Z + 3]),
    ...cups.map((at) => place('Damper cup', at, TRAY_TURN)),
    // The three feet share one file and so cannot be placed one by one: they stay out of the
    // balance, and the page says so.
  ],
  flight: {
    motors: 3,
    motorThrustG: 620,
    propDiameterMm: 152.4,
    packCells: 3,
    packMah: 2200,
    voltsPerCell: 3.7,
    usableShare: 0.8,
    avionicsW: 3,
    motorRadiusMm: 210,
  },
  wing: null,
  // Six crashes in sixty flights broke three booms, two feet and one arm.
  season: {
    flights: 60,
    crashesPerFlight: 0.1,
    breakShare: { 'Tail boom': 0.5, 'Feet (three)': 0.33, 'Front arm': 0.17 },
    carbonLeadDays: 7,
    carbonPartPrice: 10,
  },
}

/** To a micrometre: the last bits of sine and cosine are the engine's own, the file's bytes must not be. */
function tidy(lengthMm: number): number {
  return Math.round(lengthMm * 1000) / 1000
}
