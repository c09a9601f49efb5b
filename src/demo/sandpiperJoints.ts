import type { Vec3 } from '../core/model/mesh.ts'
import { CUP_PITCH_MM } from './camera.ts'
import type { DrawnJoint } from './joints.ts'
import { DOWN, end, joint, UP } from './joints.ts'

const M3_INSERT = { thread: 'M3', end: 'insert' } as const
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
    { thread: 'M3', end: 'tapped' },
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
  // The yoke turns about the rod, a washer of 1 mm behind the spigot.
  joint(
    end('Tail boom', [[232, 0, 6]], [1, 0, 0]),
    end('Tail yoke', [[22, 0, 20]], [1, 0, 0]),
    null,
    1,
  ),
]
