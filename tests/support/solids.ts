import type { Elastic } from '../../src/core/stiffness/moduli/elastic.ts'
import { buildLevel } from '../../src/core/stiffness/solid/buildLevel.ts'
import { conjugateGradients } from '../../src/core/stiffness/solid/conjugateGradients.ts'
import { holdPart } from '../../src/core/stiffness/solid/multigrid.ts'
import type { Field, Level, SolidGrid } from '../../src/core/stiffness/solid/types.ts'

export const evenLines = (length: number, cells: number): Float64Array =>
  Float64Array.from({ length: cells + 1 }, (_, i) => (length * i) / cells)

/** A block of cells, full where `full` says so of a cell's middle. */
export function blockOf(
  lines: SolidGrid['linesMm'],
  elastic: Elastic,
  full: (x: number, y: number, z: number) => boolean = () => true,
): SolidGrid {
  const [xs, ys, zs] = lines
  const middles = (all: Float64Array): number[] =>
    Array.from({ length: all.length - 1 }, (_, i) => (all[i]! + all[i + 1]!) / 2)
  const cells = middles(zs).flatMap((z) =>
    middles(ys).flatMap((y) => middles(xs).map((x) => (full(x, y, z) ? 1 : 0))),
  )
  return { linesMm: lines, cells: Uint16Array.from(cells), moduli: [elastic] }
}

export type Place = readonly [x: number, y: number, z: number]

/** Where each node lies, mm. */
export function placesOf({ nodes, lineOf, linesMm }: Level): Place[] {
  return Array.from({ length: nodes }, (_, node): Place => [
    linesMm[0][lineOf[3 * node]!]!,
    linesMm[1][lineOf[3 * node + 1]!]!,
    linesMm[2][lineOf[3 * node + 2]!]!,
  ])
}

/**
 * Solves a held and pushed block. `hold` tells which directions of a node do not move, `push` its
 * force as if the face had one number of cells a node: forces are scaled to `loadN` in all.
 */
export function pushBlock(
  grid: SolidGrid,
  hold: (place: Place) => readonly [boolean, boolean, boolean] | boolean,
  push: (place: Place) => Place | null,
  tolerance = 1e-7,
): { level: Level; places: Place[]; moves: Field; steps: number } {
  const level = buildLevel(grid)
  const places = placesOf(level)
  const held = new Uint8Array(3 * level.nodes)
  const load = new Float64Array(3 * level.nodes)
  places.forEach((place, node) => {
    const fixed = hold(place)
    const axes = typeof fixed === 'boolean' ? [fixed, fixed, fixed] : fixed
    axes.forEach((is, k) => (held[3 * node + k] = is ? 1 : 0))
    push(place)?.forEach((force, k) => {
      if (!axes[k]) load[3 * node + k] = force
    })
  })
  const system = holdPart(level, held)
  const { moves, steps } = conjugateGradients(system.apply, system.precondition, load, {
    tolerance,
    mostSteps: 2000,
  })
  return { level, places, moves, steps }
}

/** What part of a line's neighbours a node stands for, mm: half of each side. */
export function shareOf(lines: Float64Array, at: number): number {
  const i = lines.indexOf(at)
  return ((lines[i + 1] ?? lines[i]!) - (lines[i - 1] ?? lines[i]!)) / 2
}
