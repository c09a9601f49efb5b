import type { Mesh, Vec3 } from '../model/mesh.ts'
import type { Recipe } from '../model/settings.ts'
import { RECIPE_DEFAULTS } from '../model/settings.ts'

/** A block to print and to weigh by itself. */
export interface CalibrationPiece {
  readonly name: string
  /** Width, depth, height. mm */
  readonly sizeMm: Vec3
  readonly recipe: Recipe
  /** What its mass tells, in one sentence. */
  readonly tells: string
}

/** One print: what goes on the bed together, and is timed together. */
export interface CalibrationPrint {
  readonly name: string
  readonly fileName: string
  readonly pieces: readonly CalibrationPiece[]
  /** What its time tells, in one sentence. */
  readonly tells: string
}

/** To be printed with one width for every kind of line, so that widths are not in doubt. */
const ONE_WIDTH: Recipe = {
  ...RECIPE_DEFAULTS,
  walls: 1,
  habits: {
    outerWidthShare: 1,
    innerWidthShare: 1,
    skinWidthShare: 1,
    infillWidthShare: 1,
    firstWidthShare: 1,
  },
}

/** Between pieces on the bed. mm */
const GAP_MM = 10

/**
 * Two prints that tell a spool's and a printer's errors apart. The wall of the tube lies line on
 * line with nothing beside it: its grams are those of the plastic pushed. The plate is skin all
 * through, line beside line: what it lacks against the tube is packing. The comb is turns more than
 * anything else has: what it lacks or has too much of is line ends. Tube and plate are long lines,
 * so speed decides their time; the comb's are short, so acceleration does.
 */
export const CALIBRATION_WALK: readonly CalibrationPrint[] = [
  {
    name: 'Print 1, tube and plate',
    fileName: 'calibration-1-tube-and-plate.stl',
    pieces: [
      {
        name: 'Tube',
        sizeMm: [80, 80, 40],
        recipe: { ...ONE_WIDTH, topSkins: 0, bottomSkins: 0, infillPct: 0 },
        tells:
          'One line on top of the other, nothing beside it: its grams tell the plastic pushed, ' +
          'that is density, filament diameter and flow together.',
      },
      {
        name: 'Plate',
        sizeMm: [80, 60, 1.6],
        recipe: ONE_WIDTH,
        tells:
          'Skin all through, line beside line: what it weighs against the tube tells the packing.',
      },
    ],
    tells: 'Lines of 60 to 80 mm at full speed: its time tells the pace of the printer.',
  },
  {
    name: 'Print 2, comb',
    fileName: 'calibration-2-comb.stl',
    pieces: [
      {
        name: 'Comb',
        sizeMm: [150, 5, 30],
        recipe: {
          ...ONE_WIDTH,
          topSkins: 0,
          bottomSkins: 0,
          infillPct: 25,
          pattern: 'grid',
        },
        tells:
          'Short infill lines and a turn at each end: what it weighs against the other two tells ' +
          'whether line ends are joined.',
      },
    ],
    tells: 'Lines of 4 mm, stop after stop: against print 1 its time tells the acceleration.',
  },
]

/** A block from a corner to the opposite one; triangles counter-clockwise seen from outside. */
export function blockMesh(pieces: readonly Pick<CalibrationPiece, 'sizeMm'>[]): Mesh {
  const positions: number[] = []
  const indices: number[] = []
  let atMm = 0
  for (const { sizeMm } of pieces) {
    const [width, depth, height] = sizeMm
    const first = positions.length / 3
    for (const corner of CORNERS) {
      const [x, y, z] = corner
      positions.push(x * width, atMm + y * depth, z * height)
    }
    indices.push(...FACES.flat().map((corner) => first + corner))
    atMm += depth + GAP_MM
  }
  return { positions: Float64Array.from(positions), indices: Uint32Array.from(indices) }
}

const CORNERS: readonly Vec3[] = [
  [0, 0, 0],
  [1, 0, 0],
  [1, 1, 0],
  [0, 1, 0],
  [0, 0, 1],
  [1, 0, 1],
  [1, 1, 1],
  [0, 1, 1],
]

const FACES: readonly (readonly number[])[] = [
  [0, 2, 1, 0, 3, 2],
  [4, 5, 6, 4, 6, 7],
  [0, 1, 5, 0, 5, 4],
  [1, 2, 6, 1, 6, 5],
  [2, 3, 7, 2, 7, 6],
  [3, 0, 4, 3, 4, 7],
]
