import { readFileSync } from 'node:fs'
import { readMesh } from '../../src/core/formats/read.ts'
import { placeMesh } from '../../src/core/mesh/pose.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { POSE_AS_DRAWN } from '../../src/core/model/settings.ts'
import {
  box,
  circle,
  cone,
  cubeWithHole,
  merge,
  prism,
  rotate,
  scale,
  specimenOutline,
  sphere,
  torus,
  translate,
  tube,
} from './meshes.ts'

const demo = (name: string) => (): Mesh =>
  readMesh(new Uint8Array(readFileSync(`public/demo/${name}`)), name).mesh

/** A frame of thin walls around a large opening. */
export const thinFrame = (wallMm: number): Mesh =>
  prism(
    [
      [0, 0],
      [60, 0],
      [60, 40],
      [0, 40],
    ],
    4,
    [
      [
        [wallMm, wallMm],
        [60 - wallMm, wallMm],
        [60 - wallMm, 40 - wallMm],
        [wallMm, 40 - wallMm],
      ],
    ],
  )

/** A bar across the lines' directions. */
export const askewBar = (): Mesh => placeMesh(rotate(box(50, 8, 5), [0, 0, 30]), 1, POSE_AS_DRAWN)

/**
 * A collar of 20 mm with a bore and a clamp, drawn in inches: rooms about as wide as infill lines
 * are apart.
 */
export const pivotCollar = (): Mesh =>
  placeMesh(scale(demo('pivot-collar.stl')(), 25.4), 1, POSE_AS_DRAWN)

/** A blade whose room is a few lines wide along all its chord. */
export const fin = (): Mesh => placeMesh(demo('fin.stl')(), 1, POSE_AS_DRAWN)

/** A cup of 10 mm. */
export const damperCup = (): Mesh => placeMesh(demo('damper-cup.stl')(), 1, POSE_AS_DRAWN)

/** An arm whose infill room is 2.4 mm wide. */
export const narrowArm = (): Mesh => box(60, 4, 4)

/** Six rings whose infill rooms are two lines wide. */
export const narrowRooms = (): Mesh =>
  merge(
    Array.from({ length: 6 }, (_, i) =>
      translate(tube(4, 1.6, 6, 48), [(i % 3) * 14, Math.floor(i / 3) * 14, 0]),
    ),
  )

/** Blocks and rings in rows of twelve, apart from each other. */
export const islands = (count: number): Mesh =>
  merge(
    Array.from({ length: count }, (_, i) =>
      translate(i % 3 === 0 ? tube(4, 1.2, 4, 32) : box(7 + (i % 4), 7, 4), [
        (i % 12) * 14,
        Math.floor(i / 12) * 13,
        0,
      ]),
    ),
  )

const shapes: readonly (readonly [name: string, make: () => Mesh])[] = [
  ['a low box', () => box(20, 20, 4)],
  ['a bar', () => box(80, 10, 4)],
  [
    'a triangle',
    () =>
      prism(
        [
          [0, 0],
          [40, 0],
          [20, 34],
        ],
        5,
      ),
  ],
  [
    'a tapered arm',
    () =>
      prism(
        [
          [0, -8],
          [90, -3],
          [90, 3],
          [0, 8],
        ],
        5,
      ),
  ],
  ['a tensile bar', () => prism(specimenOutline('IV'), 4)],
  [
    'a plate with holes',
    () =>
      prism(
        [
          [0, 0],
          [60, 0],
          [60, 40],
          [0, 40],
        ],
        3,
        [
          circle(1.6, 48, 8, 8),
          circle(1.6, 48, 52, 8),
          circle(10, 64, 30, 20),
          circle(4, 32, 12, 28),
        ],
      ),
  ],
  ['a cube with a hole', () => cubeWithHole(20, 5, 64)],
  ['a tube', () => tube(15, 9, 4, 128)],
  ['a cone', () => cone(20, 18, 96)],
  ['a needle', () => cone(2.5, 30, 48)],
  ['a ball', () => sphere(14, 96)],
  ['a ring', () => torus(14, 4, 96, 32)],
  ['a frame of two thin lines', () => thinFrame(0.8)],
  ['a frame of four thin lines', () => thinFrame(1.6)],
  [
    'a T',
    () =>
      prism(
        [
          [0, 0],
          [12, 0],
          [12, 18],
          [30, 18],
          [30, 26],
          [-18, 26],
          [-18, 18],
          [0, 18],
        ],
        6,
      ),
  ],
  [
    'a gallows',
    () =>
      rotate(
        prism(
          [
            [0, 0],
            [10, 0],
            [10, 16],
            [34, 16],
            [34, 21],
            [0, 21],
          ],
          12,
        ),
        [90, 0, 0],
      ),
  ],
  ['a lens hood', demo('lens-hood.stl')],
  ['a tail boom', demo('tail-boom.stl')],
  ['a lower deck', demo('lower-deck.stl')],
  ['a tail yoke', demo('tail-yoke.stl')],
  ['a camera tray', demo('camera-tray.obj')],
]

const large: typeof shapes = [
  ['a front arm', demo('front-arm.stl')],
  ['a mast', demo('gps-mast.stl')],
]

/** Varied parts on the bed; `large` ones take the oracle half a minute each. */
export const motionParts = (withLarge: boolean): { name: string; mesh: () => Mesh }[] =>
  [...shapes, ...(withLarge ? large : [])].map(([name, make]) => ({
    name,
    mesh: () => placeMesh(make(), 1, POSE_AS_DRAWN),
  }))
