import { isotropic } from '../../src/core/stiffness/moduli/elastic.ts'
import { buildLevel } from '../../src/core/stiffness/solid/buildLevel.ts'
import {
  byDiagonal,
  conjugateGradients,
} from '../../src/core/stiffness/solid/conjugateGradients.ts'
import { holdPart } from '../../src/core/stiffness/solid/multigrid.ts'
import { blockOf, evenLines } from '../support/solids.ts'

const TOLERANCE = 1e-3

export interface SolidArm {
  readonly cells: number
  /** Builds all levels and solves. */
  readonly ours: () => unknown
  /** The same system by conjugate gradients with its diagonal. */
  readonly byDiagonal: () => unknown
}

/** A solid arm of 168 × 20 × 14 mm, held at one end and pushed up at the other. */
export function solidArm(cellMm: number): SolidArm {
  const sides = [168, 20, 14].map((side) => evenLines(side, Math.round(side / cellMm)))
  const lines = sides as [Float64Array, Float64Array, Float64Array]
  const grid = blockOf(lines, isotropic(2000, 0.35))
  const level = buildLevel(grid)
  const held = new Uint8Array(3 * level.nodes)
  const load = new Float64Array(3 * level.nodes)
  for (let node = 0; node < level.nodes; node++) {
    const x = level.lineOf[3 * node]!
    if (x === 0) held.fill(1, 3 * node, 3 * node + 3)
    if (x === level.size[0]) load[3 * node + 2] = 1
  }
  const options = { tolerance: TOLERANCE, mostSteps: 20_000 }
  const { apply, inverseDiagonal } = holdPart(level, held)
  return {
    cells: level.rowOf.length,
    ours: () => {
      const system = holdPart(buildLevel(grid), held)
      return conjugateGradients(system.apply, system.precondition, load, options)
    },
    byDiagonal: () => conjugateGradients(apply, byDiagonal(inverseDiagonal), load, options),
  }
}
