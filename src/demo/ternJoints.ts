import type { Vec3 } from '../core/model/mesh.ts'
import type { DrawnJoint } from './joints.ts'
import { DOWN, end, joint, UP } from './joints.ts'

const M3_TAPPED = { thread: 'M3', end: 'tapped' } as const
/** Half the circle that the motor's four screws stand on. */
const ROUND_MM = 8

const PANELS = ['root', 'middle', 'tip'].map((where) => `Wing panel, ${where}`)
const PANEL_MM = 183
/** Chords where panels meet: the dowel lies a fifth of it ahead of the spar. */
const DOWEL_X = [-34, -30, -26] as const

/** Left, then right. A standing bay has its left side at negative x. */
const SIDES = [-1, 1] as const

/** Spar, then dowel, at one end of a panel. */
const rib = (name: string, piece: number, dowelX: number, z: number, normal: Vec3) =>
  end(
    name,
    [
      [0, 0, z],
      [dowelX, -1.3, z],
    ],
    normal,
    { piece },
  )

const bay = (z: number, normal: Vec3) =>
  end(
    'Pod bay',
    [
      [-18.6, 0, z],
      [18.6, 0, z],
    ],
    normal,
  )

/** How the glider is put together: on its spar, on dowels and pins, on the boom's tube. */
export const TERN_JOINTS: readonly DrawnJoint[] = [
  joint(
    bay(0, DOWN),
    end(
      'Pod nose',
      [
        [18.6, 0, 0],
        [-18.6, 0, 0],
      ],
      DOWN,
    ),
  ),
  joint(
    bay(150, UP),
    end(
      'Pod tail cone',
      [
        [-18.6, 0, 0],
        [18.6, 0, 0],
      ],
      DOWN,
    ),
  ),
  // The motor stands before the nose's face, its screws come from inside.
  joint(
    end(
      'Pod nose',
      [45, 135, 225, 315].map((degrees): Vec3 => {
        const angle = (degrees * Math.PI) / 180
        return [ROUND_MM * Math.cos(angle), ROUND_MM * Math.sin(angle), 60]
      }),
      UP,
    ),
    end(
      'Motor with folding propeller',
      [
        [ROUND_MM, 0, 0],
        [0, ROUND_MM, 0],
        [-ROUND_MM, 0, 0],
        [0, -ROUND_MM, 0],
      ],
      DOWN,
    ),
    M3_TAPPED,
  ),
  ...SIDES.flatMap((side, piece) => [
    joint(
      end(
        'Pod bay',
        [
          [24 * side, 14, 128],
          [24 * side, 12.5, 94],
        ],
        [side, 0, 0],
      ),
      rib('Wing panel, root', piece, DOWEL_X[0], 0, DOWN),
    ),
    ...([1, 2] as const).map((at) =>
      joint(
        rib(PANELS[at - 1] ?? '', piece, DOWEL_X[at], PANEL_MM, UP),
        rib(PANELS[at] ?? '', piece, DOWEL_X[at], 0, DOWN),
      ),
    ),
  ]),
  // The tube of the boom lies between them.
  joint(
    end('Pod tail cone', [[0, 0, 110]], UP),
    end('Tail seat', [[0, 0, 13]], [-1, 0, 0]),
    null,
    478.3,
    180,
  ),
  ...SIDES.map((side, piece) =>
    joint(
      end(
        'Tail seat',
        [
          [8, -5.5 * side, 3.5],
          [27.2, -5.5 * side, 3.5],
        ],
        [0, -side, 0],
      ),
      end(
        'Tail plane half',
        [
          [0, 0, 0],
          [19.2, 0, 0],
        ],
        DOWN,
        { piece },
      ),
    ),
  ),
  joint(
    end(
      'Tail seat',
      [
        [17.6, 0, 0],
        [42.8, 0, 0],
      ],
      DOWN,
    ),
    end(
      'Fin',
      [
        [0, 0, 0],
        [25.2, 0, 0],
      ],
      DOWN,
    ),
  ),
]
