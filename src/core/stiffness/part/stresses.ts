import type { Vec3 } from '../../model/mesh.ts'
import type { Elastic } from '../moduli/elastic.ts'
import { eachStrain } from '../solid/strains.ts'
import type { Field, Level } from '../solid/types.ts'

/** The highest stress of one kind, in the plastic of walls and skins. */
export interface Peak {
  readonly mpa: number
  /** Middle of its cell, in the grid's frame. mm */
  readonly atMm: Vec3
}

export interface Stresses {
  /** Pull across the layers. */
  readonly across: Peak
  /** Pull or push along the layers. */
  readonly along: Peak
  /** Highest pull across by line of cells, from the bed up: its middle, mm, and MPa. */
  readonly acrossByHeight: readonly { readonly zMm: number; readonly mpa: number }[]
}

/** Cells with less solid plastic in them than this tell more of the grid than of the part. */
const SOUND = 0.9

/**
 * Stresses of the solid plastic at the faces of each cell; cells at a grip are left out, where
 * they grow with every finer grid.
 *
 * @param solidShare by row of the level's table.
 * @param skip by node: 1 at grips.
 */
export function stressesOf(
  level: Level,
  moves: Field,
  solid: Elastic,
  solidShare: Float64Array,
  skip: Uint8Array,
): Stresses {
  const { c11, c22, c33, c12, c13, c23, g12 } = solid
  const { linesMm, runs, rowOf } = level
  const none: Peak = { mpa: 0, atMm: [0, 0, 0] }
  let across = none
  let along = none
  const byHeight = new Float64Array(level.size[2])
  const gripped = grippedCells(runs, rowOf.length, skip)
  const middleOf = (k: 0 | 1 | 2, i: number): number => (linesMm[k][i]! + linesMm[k][i + 1]!) / 2
  eachStrain(level, moves, (cell, { middle, bending }, x, y, z) => {
    if (gripped[cell] === 1 || solidShare[rowOf[cell]!]! < SOUND) return
    const shear = g12 * middle[3]!
    let pull = 0
    let most = 0
    for (let face = 0; face < 3; face++) {
      const relaxed = relaxAcross(face, bending, solid)
      for (const sign of [-1, 1]) {
        const e1 = middle[0]! + sign * relaxed[0]
        const e2 = middle[1]! + sign * relaxed[1]
        const e3 = middle[2]! + sign * relaxed[2]
        const sx = c11 * e1 + c12 * e2 + c13 * e3
        const sy = c12 * e1 + c22 * e2 + c23 * e3
        pull = Math.max(pull, c13 * e1 + c23 * e2 + c33 * e3)
        const principal = Math.abs(sx + sy) / 2 + Math.hypot((sx - sy) / 2, shear)
        most = Math.max(most, principal)
      }
    }
    if (pull > byHeight[z]!) byHeight[z] = pull
    if (pull <= across.mpa && most <= along.mpa) return
    const atMm: Vec3 = [middleOf(0, x), middleOf(1, y), middleOf(2, z)]
    if (pull > across.mpa) across = { mpa: pull, atMm }
    if (most > along.mpa) along = { mpa: most, atMm }
  })
  const acrossByHeight = Array.from(byHeight, (mpa, z) => ({ zMm: middleOf(2, z), mpa }))
  return { across, along, acrossByHeight }
}

/** Bending strains at a face, with that across it which makes the stress across it nothing. */
function relaxAcross(
  face: number,
  bending: Float64Array,
  { c11, c22, c33, c12, c13, c23 }: Elastic,
): readonly [number, number, number] {
  const [e1, e2, e3] = [bending[3 * face]!, bending[3 * face + 1]!, bending[3 * face + 2]!]
  if (face === 0) return [-(c12 * e2 + c13 * e3) / c11, e2, e3]
  if (face === 1) return [e1, -(c12 * e1 + c23 * e3) / c22, e3]
  return [e1, e2, -(c13 * e1 + c23 * e2) / c33]
}

/** Cells that touch a node of a grip. */
function grippedCells(runs: Int32Array, cells: number, skip: Uint8Array): Uint8Array {
  const marked = new Uint8Array(cells)
  let cell = 0
  for (let run = 0; run < runs.length; run += 8) {
    for (let i = 0; i < runs[run + 3]!; i++, cell++) {
      for (let edge = 4; edge < 8; edge++) {
        const node = runs[run + edge]! + i
        if (skip[node] === 1 || skip[node + 1] === 1) marked[cell] = 1
      }
    }
  }
  return marked
}
