import type { Place } from '../core/model/aircraft.ts'
import type { Vec3 } from '../core/model/mesh.ts'
import type { DemoAircraft } from '../core/model/demoAircraft.ts'
import { BRACKET_REAR_CUP, BRACKET_WIDTH_MM, CUP_PITCH_MM, NOSE_DOWN_DEG } from './camera.ts'
import type { ItemBody } from '../core/model/aircraft.ts'
import { sampleItem } from './sampleItem.ts'
import { tidy } from './tidy.ts'

/*
 * Everything in here is invented. Frame axes: x forward, y left, z up; the origin is the middle of
 * the motor circle, on the underside of the lower deck, which is the height of the front motors.
 * Arms and boom hang under the lower deck; posts of 22 mm carry the upper deck. The lower deck's
 * file is drawn with x to the right and y ahead, hence a quarter turn.
 */

/** Undersides, mm. */
const ARM_Z = -14
const BOOM_Z = -16
const UPPER_DECK_Z = 4 + 22
/**
 * The boom starts here and ends in its spigot 232 mm further back; a washer of 1 mm parts it from
 * the yoke.
 */
const BOOM_X = 45
const SPIGOT_END_X = BOOM_X - 232
const ROD_Z = BOOM_Z + 6
const PACK_X = -32
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

const BRACKET: Vec3 = [31, 0, 4]
/**
 * A point of the camera's slope: `along` it from the rear cups, `above` the brackets, to the
 * `left`, in mm.
 */
function onSlope(along: number, above: number, left = 0): Vec3 {
  const down = (NOSE_DOWN_DEG * Math.PI) / 180
  const [x, z] = BRACKET_REAR_CUP
  return [
    tidy(BRACKET[0] + x + along * Math.cos(down) + above * Math.sin(down)),
    left,
    tidy(BRACKET[2] + z - along * Math.sin(down) + above * Math.cos(down)),
  ]
}
const CUP_LEFT_MM = 25.5
/**
 * A ring of rubber between bracket and cup, then the cup's lower flange, which carries the tray.
 */
const DAMPER_MM = 2
const FLANGE_MM = 1.7
/** The tray's own x to the right, its y down the slope. */
const SLOPE_TURN: Vec3 = [-NOSE_DOWN_DEG, 0, -90]
const cups = [0, CUP_PITCH_MM].flatMap((along) =>
  [CUP_LEFT_MM, -CUP_LEFT_MM].map((left) => onSlope(along, DAMPER_MM, left)),
)

/** Bodies of what is bought, as simple as a sample needs them; all invented. */
const MOTOR: ItemBody = {
  kind: 'motor',
  sizeMm: [28, 28, 17],
  holes: { layout: 'cross', aMm: 12, bMm: 12, thread: 'M2', depthMm: 3 },
  shaftMm: 5,
}
const PROPELLER: ItemBody = { kind: 'prop', sizeMm: [152.4, 152.4, 7], holes: null, shaftMm: 5 }
const CONTROLLER: ItemBody = {
  kind: 'board',
  sizeMm: [36, 36, 6],
  holes: { layout: 'rectangle', aMm: 30.5, bMm: 30.5, thread: 'M3', depthMm: null },
  shaftMm: 0,
}
const PACK: ItemBody = { kind: 'pack', sizeMm: [86, 34, 29], holes: null, shaftMm: 0 }
/** On tape: as high as twice what lies between the face that carries it and its own middle. */
const RECEIVER: ItemBody = { kind: 'board', sizeMm: [14, 14, 8], holes: null, shaftMm: 0 }
const GPS: ItemBody = { kind: 'board', sizeMm: [25, 25, 6], holes: null, shaftMm: 0 }
const SERVO: ItemBody = { kind: 'other', sizeMm: [23, 12, 16], holes: null, shaftMm: 0 }
const CAMERA: ItemBody = { kind: 'camera', sizeMm: [36, 58, 26], holes: null, shaftMm: 0 }

/** Where motors stand: on the arms' ends, 5.5 mm high, and on the back of the yoke. */
const MOTORS_AT: readonly [Vec3, Vec3, Vec3] = [
  [105, tidy(210 * Math.sqrt(0.75)), ARM_Z + 5.5],
  [105, tidy(-210 * Math.sqrt(0.75)), ARM_Z + 5.5],
  [-210, 0, ROD_Z + 20],
]

export const SANDPIPER_AIRCRAFT: DemoAircraft = {
  items: [
    // Screws come from the joints; typed are those of none: of the feet, which share a file, and
    // across the collar.
    sampleItem('M3 × 6 screw of a foot, steel', 'fasteners', 6, 0.58, 0.08, [16, 0, -17]),
    sampleItem('M3 insert for a foot, Ø 4.2 × 5', 'fasteners', 6, 0.25, 0.12, [16, 0, -14]),
    sampleItem('M3 × 16 screw and nut, steel', 'fasteners', 1, 1.4, 0.12, [-182, 0, -22]),
    sampleItem('M2 × 20 screw and nut, steel', 'fasteners', 1, 0.5, 0.1, [-170, 0, -6]),
    sampleItem('Camera damper', 'fasteners', 4, 0.3, 0.4, [72, 0, 2]),
    sampleItem('Pivot rod, 3 × 80 mm', 'structure', 1, 4.4, 0.7, [-192, 0, ROD_Z]),
    sampleItem('Strap', 'structure', 2, 0.75, 0.9, [PACK_X, 0, 40]),
    sampleItem('Motor', 'drive', 3, 30, 14, null, MOTOR),
    sampleItem('Speed controller', 'drive', 3, 8, 12, [0, 0, 8]),
    sampleItem('Propeller, 6 inch, two blades', 'drive', 3, 4.5, 1.5, null, PROPELLER),
    sampleItem('Flight controller', 'electronics', 1, 8, 38, null, CONTROLLER),
    sampleItem('Receiver', 'electronics', 1, 2, 15, null, RECEIVER),
    sampleItem('GPS', 'electronics', 1, 9, 18, null, GPS),
    sampleItem('Tail servo', 'drive', 1, 12, 11, null, SERVO),
    sampleItem('Pack, 3 cells, 2200 mAh', 'power', 1, 185, 22, null, PACK),
    sampleItem('Action camera', 'payload', 1, 62, 120, null, CAMERA),
    sampleItem('Wire and plugs', 'electronics', 1, 13, 9, [0, 0, 8]),
  ],
  weighedG: { 'Front arm': 22.05, 'Upper deck': 15 },
  limitG: 610,
  printedLimitG: 145,
  places: [
    place('Front arm', [half, side, ARM_Z], [0, 0, 60]),
    // The mirror image of the left one over the middle: mirrored in its own x, then turned to point
    // the other way.
    place('Front arm', [half, -side, ARM_Z], [0, 0, 120], true),
    place('Tail boom', [BOOM_X, 0, BOOM_Z], [0, 0, 180]),
    place('Lower deck', [0, 0, 0], [0, 0, -90]),
    // Its file has the middle of the deck at 110, 110.
    place('Upper deck', [-20 - 110, -110, UPPER_DECK_Z]),
    place('Camera tray', onSlope(CUP_PITCH_MM / 2, DAMPER_MM + FLANGE_MM), SLOPE_TURN),
    ...[CUP_LEFT_MM, -CUP_LEFT_MM].map((left) =>
      place('Tray bracket', [BRACKET[0], left + BRACKET_WIDTH_MM / 2, BRACKET[2]], [90, 0, 0]),
    ),
    place('Tail yoke', [-210, 0, ROD_Z + 20], [180, 0, 0]),
    place('Pivot collar', [SPIGOT_END_X, 0, ROD_Z], [0, 90, 0]),
    // Its ears on the tray's front edge, 29 mm from the tray's middle; their holes lie 12 mm below
    // its own.
    place('Lens hood', onSlope(CUP_PITCH_MM / 2 + 29, DAMPER_MM + FLANGE_MM + 1.5 + 12), [
      90 + NOSE_DOWN_DEG,
      0,
      90,
    ]),
    place('Battery pad', [PACK_X, 0, UPPER_DECK_Z + 3]),
    place('GPS mast', [28, 0, UPPER_DECK_Z + 3], [0, 0, -90]),
    ...cups.map((at) => place('Damper cup', at, SLOPE_TURN)),
    // The three feet share one file and so cannot be placed one by one until it is taken apart.
    // Where they lie as one, below the boom, is the middle of where they will be bolted: two arms
    // and the boom.
    place('Feet (three)', [15.7, 0, BOOM_Z], [180, 0, 0]),
    // Bought things, which joints hold; a motor's cross of holes stands 45° off its arm.
    place('Motor', MOTORS_AT[0], [0, 0, 105]),
    place('Motor', MOTORS_AT[1], [0, 0, 255]),
    place('Motor', MOTORS_AT[2], [0, 0, -45]),
    ...MOTORS_AT.map(([x, y, z], i) =>
      place(
        'Propeller, 6 inch, two blades',
        [x, y, z + MOTOR.sizeMm[2]],
        [0, 0, [105, 255, -45][i] ?? 0],
      ),
    ),
    place('Flight controller', [2, 0, 8]),
    place('Receiver', [-24, 0, 4]),
    place('GPS', [28, 0, UPPER_DECK_Z + 3 + 58]),
    place('Tail servo', [-66, 0, BOOM_Z], [180, 0, 0]),
    place('Action camera', onSlope(CUP_PITCH_MM / 2, DAMPER_MM + FLANGE_MM + 3 + 1), [
      0,
      NOSE_DOWN_DEG,
      0,
    ]),
    place('Pack, 3 cells, 2200 mAh', [PACK_X, 0, UPPER_DECK_Z + 3 + 2.4]),
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
