import type { Vec3 } from '../core/model/mesh.ts'
import { CUP_PITCH_MM } from './camera.ts'
import type { DrawnJoint } from './joints.ts'
import { DOWN, end, face, joint, UP } from './joints.ts'

const M3_INSERT = { thread: 'M3', end: 'insert' } as const
const M3_NUT = { thread: 'M3', end: 'nut' } as const
const M2_TAPPED = { thread: 'M2', end: 'tapped' } as const
const M2_NUT = { thread: 'M2', end: 'nut' } as const

/** Left, then right; the lower deck and the tray are drawn with x to the right. */
const SIDES = [-1, 1] as const

/** Rear, then front: where a cup's screw enters the bracket, and the cup's hole in the tray. */
const CUPS = [
  { bracket: [23, 8.5, 4.3], trayY: -CUP_PITCH_MM / 2 },
  { bracket: [58.2, -16.2, 4.3], trayY: CUP_PITCH_MM / 2 },
] as const
const SLOPE_NORMAL: Vec3 = [Math.sin((35 * Math.PI) / 180), Math.cos((35 * Math.PI) / 180), 0]
/** A ring of rubber, and the lower flange of a cup. */
const DAMPER_MM = 2
const FLANGE_MM = 1.7

/** A motor's four holes stand on a circle of 12 mm. */
const ROUND_MM = 6
const CORNERS = [45, 135, 225, 315].map((degrees) => {
  const angle = (degrees * Math.PI) / 180
  return [ROUND_MM * Math.cos(angle), ROUND_MM * Math.sin(angle)] as const
})
/**
 * The holes of a motor's underside, by the corners of what it stands on, as seen from below or from
 * above.
 */
const motor = (piece: number, turn: 1 | -1) =>
  end(
    'Motor',
    [
      [ROUND_MM, 0, 0],
      [0, turn * ROUND_MM, 0],
      [-ROUND_MM, 0, 0],
      [0, -turn * ROUND_MM, 0],
    ],
    DOWN,
    { piece },
  )
const PROPELLER = 'Propeller, 6 inch, two blades'
const MOTOR_HIGH_MM = 17
/** Four holes for a flight controller, in the lower deck's coordinates and in the board's own. */
const BOARD = [
  [1, 1],
  [-1, 1],
  [-1, -1],
  [1, -1],
] as const
const HALF = 30.5 / 2

const deck = (mouths: readonly Vec3[], normal: Vec3) => end('Lower deck', mouths, normal)

/** How the tricopter is bolted together. The feet are not in here: they share one file. */
export const SANDPIPER_JOINTS: readonly DrawnJoint[] = [
  ...SIDES.map((side, piece) =>
    joint(
      deck(
        [
          [52 * side, 30, 0],
          [62 * side, 36, 0],
        ],
        DOWN,
      ),
      end(
        'Front arm',
        [
          [8, 0, 14],
          [20, 0, 14],
        ],
        UP,
        { piece },
      ),
      M3_INSERT,
    ),
  ),
  joint(
    deck(
      [
        [0, 37, 0],
        [0, -11, 0],
        [0, -37, 0],
      ],
      DOWN,
    ),
    end(
      'Tail boom',
      [
        [8, 0, 16],
        [56, 0, 16],
        [82, 0, 16],
      ],
      UP,
    ),
    M3_INSERT,
  ),
  // Posts of 22 mm between the decks.
  joint(
    deck(
      [
        [-17, 29, 4],
        [17, 29, 4],
        [-24, -14, 4],
        [24, -14, 4],
      ],
      UP,
    ),
    end(
      'Upper deck',
      [
        [159, 127, 0],
        [159, 93, 0],
        [116, 134, 0],
        [116, 86, 0],
      ],
      DOWN,
    ),
    { thread: 'M3', end: 'post' },
    22,
  ),
  joint(
    end(
      'Upper deck',
      [
        [139, 110, 3],
        [57, 110, 3],
      ],
      UP,
    ),
    end(
      'Battery pad',
      [
        [41, 0, 0],
        [-41, 0, 0],
      ],
      DOWN,
    ),
  ),
  joint(
    end(
      'Upper deck',
      [
        [167.5, 110, 3],
        [153, 118, 3],
        [153, 102, 3],
      ],
      UP,
    ),
    end(
      'GPS mast',
      [
        [0, 9.5, 0],
        [-8.2, -4.7, 0],
        [8.2, -4.7, 0],
      ],
      DOWN,
    ),
    M2_NUT,
  ),
  ...SIDES.flatMap((side, piece) => [
    joint(
      deck(
        [
          [25.5 * side, 34.5, 4],
          [25.5 * side, 44.5, 4],
        ],
        UP,
      ),
      end(
        'Tray bracket',
        [
          [3.5, 0, 4.3],
          [13.5, 0, 4.3],
        ],
        [0, -1, 0],
        { piece },
      ),
      M3_INSERT,
    ),
    joint(
      end(
        'Tray bracket',
        CUPS.map(({ bracket }) => bracket),
        SLOPE_NORMAL,
        { piece },
      ),
      end(
        'Camera tray',
        CUPS.map(({ trayY }): Vec3 => [25.5 * side, trayY, 0]),
        DOWN,
      ),
      null,
      DAMPER_MM + FLANGE_MM,
    ),
  ]),
  ...CUPS.flatMap(({ bracket, trayY }, row) =>
    SIDES.flatMap((side, piece) => {
      const cup = (normal: Vec3, behindMm: number) =>
        end('Damper cup', [[0, 0, 0]], normal, { piece: 2 * row + piece, behindMm })
      return [
        joint(
          end('Tray bracket', [bracket], SLOPE_NORMAL, { piece }),
          cup(DOWN, 0),
          M2_TAPPED,
          DAMPER_MM,
        ),
        // Its flange carries the tray; the groove is half a millimetre too narrow for the plate.
        joint(end('Camera tray', [[25.5 * side, trayY, 0]], DOWN), cup(UP, -FLANGE_MM)),
      ]
    }),
  ),
  joint(
    end(
      'Camera tray',
      [
        [-14.5, 29, 1.5],
        [14.5, 29, 1.5],
      ],
      [0, 1, 0],
    ),
    end(
      'Lens hood',
      [
        [14.5, -12, 0],
        [-14.5, -12, 0],
      ],
      DOWN,
    ),
    M2_TAPPED,
  ),
  // The collar is slipped over the spigot up to its shoulder and kept by a bolt across both.
  joint(
    end('Tail boom', [[232, 0, 6]], [1, 0, 0], { behindMm: 22 }),
    end('Pivot collar', [[0, 0, 0]], UP, { behindMm: -22 }),
    null,
    0,
    -90,
  ),
  // Motors on the ends of the arms, the right one a mirror image, and on the back of the yoke,
  // which is upside down.
  ...SIDES.map((_, piece) =>
    joint(
      end(
        'Front arm',
        CORNERS.map(([x, y]): Vec3 => [158 + x, y, 5.5]),
        UP,
        { piece },
      ),
      motor(piece, piece === 0 ? 1 : -1),
      M2_TAPPED,
    ),
  ),
  joint(
    end(
      'Tail yoke',
      CORNERS.map(([x, y]): Vec3 => [x, y, 0]),
      DOWN,
    ),
    motor(2, -1),
    M2_TAPPED,
  ),
  ...[0, 1, 2].map((piece) =>
    joint(face('Motor', [0, 0, MOTOR_HIGH_MM], UP, piece), face(PROPELLER, [0, 0, 0], DOWN, piece)),
  ),
  // On four rings of rubber.
  joint(
    deck(
      BOARD.map(([right, ahead]): Vec3 => [right * HALF, 2 + ahead * HALF, 4]),
      UP,
    ),
    end(
      'Flight controller',
      BOARD.map(([right, ahead]): Vec3 => [ahead * HALF, -right * HALF, 0]),
      DOWN,
    ),
    M3_NUT,
    4,
  ),
  // On tape: behind the controller, on the mast's head, under the boom.
  joint(face('Lower deck', [0, -24, 4], UP), face('Receiver', [0, 0, 0], DOWN), null, 0, 90),
  joint(face('GPS mast', [0, 0, 58], UP), face('GPS', [0, 0, 0], DOWN), null, 0, 90),
  joint(face('Tail boom', [111, 0, 0], DOWN), face('Tail servo', [0, 0, 0], DOWN), null, 0, 180),
  // On a sheet of rubber, held by its screw from below.
  joint(face('Camera tray', [0, 0, 3], UP), face('Action camera', [0, 0, 0], DOWN), null, 1, 90),
  joint(face('Battery pad', [0, 0, 2.4], UP), face('Pack, 3 cells, 2200 mAh', [0, 0, 0], DOWN)),
  // The yoke turns about the rod, a washer of 1 mm behind the spigot.
  joint(
    end('Tail boom', [[232, 0, 6]], [1, 0, 0]),
    end('Tail yoke', [[22, 0, 20]], [1, 0, 0]),
    null,
    1,
  ),
]
