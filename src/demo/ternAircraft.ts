import type { Place } from '../core/model/aircraft.ts'
import type { Vec3 } from '../core/model/mesh.ts'
import type { DemoAircraft } from '../core/model/demoAircraft.ts'
import type { ItemBody } from '../core/model/aircraft.ts'
import { sampleItem } from './sampleItem.ts'

/*
 * Everything in here is invented. Frame axes: x forward, y left, z up; the origin is the leading
 * edge at the root. The wing is taken as flat. Panels are drawn with x back from the spar, y up and
 * z along the span.
 */

/** The spar runs a third of the root chord (170 mm) behind its leading edge. */
const SPAR_X = -56.7
/** Mean chord of a wing that tapers from 170 to 110 mm: 2/3 (170 + 110 − 170 · 110 / 280). */
const MEAN_CHORD_MM = 142.1
const TAIL_X = -675
/**
 * The pod's bay starts here and is 150 mm long; the spar crosses it 128 mm behind its front and 14
 * mm above its middle.
 */
const BAY_X = SPAR_X + 128
const POD_Z = -14
/** The root ribs touch the bay's seats. */
const ROOT_RIB_Y = 24
const LEFT: Vec3 = [90, 0, 180]
const RIGHT: Vec3 = [90, 0, 0]

/** Bodies of what is bought, all invented. */
const MOTOR: ItemBody = {
  kind: 'motor',
  sizeMm: [28, 28, 16],
  holes: { layout: 'cross', aMm: 16, bMm: 16, thread: 'M3', depthMm: 4 },
  shaftMm: 4,
}
const PACK: ItemBody = { kind: 'pack', sizeMm: [65, 30, 25], holes: null, shaftMm: 0 }

/** A left piece and its mirror image to the right. */
const pair = (partId: string, x: number, y: number, z: number): readonly Place[] => [
  { partId, positionMm: [x, y, z], rotateDeg: LEFT, mirrored: false },
  { partId, positionMm: [x, -y, z], rotateDeg: RIGHT, mirrored: true },
]

export const TERN_AIRCRAFT: DemoAircraft = {
  items: [
    sampleItem('Carbon spar tube, 8 mm × 1.1 m', 'structure', 1, 22, 9, [SPAR_X, 0, 0]),
    sampleItem('Carbon boom tube, 10 mm × 0.56 m', 'structure', 1, 18, 8, [-435, 0, -14]),
    sampleItem('Motor with folding propeller', 'drive', 1, 70, 24, null, MOTOR),
    sampleItem('Speed controller', 'drive', 1, 18, 13, [85, 0, -22]),
    sampleItem('Servo, wing', 'drive', 2, 9, 6, [-90, 0, -6]),
    sampleItem('Servo, tail', 'drive', 2, 9, 6, [-520, 0, -14]),
    sampleItem('Receiver', 'electronics', 1, 6, 15, [-40, 0, -14]),
    sampleItem('Pack, 3 cells, 1500 mAh', 'power', 1, 138, 17, [33, 0, -18], PACK),
    sampleItem('Wire, rods, glue and tape', 'structure', 1, 39, 6, [-160, 0, -10]),
  ],
  weighedG: {},
  limitG: 520,
  printedLimitG: null,
  places: [
    ...pair('Wing panel, root', SPAR_X, ROOT_RIB_Y, 0),
    ...pair('Wing panel, middle', SPAR_X, ROOT_RIB_Y + 183, 0),
    ...pair('Wing panel, tip', SPAR_X, ROOT_RIB_Y + 366, 0),
    ...pair('Tail plane half', TAIL_X, 5.5, POD_Z + 9.5),
    {
      partId: 'Fin',
      positionMm: [TAIL_X - 9.6, 0, POD_Z + 13],
      rotateDeg: [0, 0, 180],
      mirrored: false,
    },
    {
      partId: 'Tail seat',
      positionMm: [TAIL_X + 8, 0, POD_Z + 13],
      rotateDeg: [0, 180, 0],
      mirrored: false,
    },
    // Before the nose's face, its cross of holes turned by 45°.
    {
      partId: 'Motor with folding propeller',
      positionMm: [BAY_X + 60, 0, POD_Z],
      rotateDeg: [90, -45, 90],
      mirrored: false,
    },
    { partId: 'Pod nose', positionMm: [BAY_X, 0, POD_Z], rotateDeg: [90, 0, 90], mirrored: false },
    { partId: 'Pod bay', positionMm: [BAY_X, 0, POD_Z], rotateDeg: [90, 0, -90], mirrored: false },
    {
      partId: 'Pod tail cone',
      positionMm: [BAY_X - 150, 0, POD_Z],
      rotateDeg: [90, 0, -90],
      mirrored: false,
    },
  ],
  flight: null,
  wing: {
    areaDm2: 15.4,
    meanChordMm: MEAN_CHORD_MM,
    // A third of 170 − 142.1 behind the root's leading edge, as the spar is straight.
    leadingEdgeMm: -9.3,
    // 57 to 67 mm behind the leading edge at the root.
    balanceMm: [47.7, 57.7],
  },
  season: {
    flights: 40,
    crashesPerFlight: 0.05,
    breakShare: { 'Wing panel, tip': 0.4, Fin: 0.2 },
    carbonLeadDays: 7,
    carbonPartPrice: 10,
  },
}
