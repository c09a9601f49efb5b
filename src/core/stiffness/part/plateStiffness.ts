import type { Mesh } from '../../model/mesh.ts'
import type { GeometrySettings } from '../../model/settings.ts'
import { fillCells } from './fillCells.ts'
import { solvePart } from './solvePart.ts'
import type { Grip, LoadCase } from './types.ts'

/** A plate to be cut instead of printed. */
export interface PlateStock {
  readonly youngsGPa: number
  readonly thicknessMm: number
}

/**
 * Load over deflection, N/mm, of a plate of the part's outline, held and pushed where the part is:
 * the part pressed flat and solved, full of the plate's material, alike in all directions. Null
 * where it is not pushed across the plate.
 *
 * @param placed flat on the bed, lowest z at 0. @throws PreweighError as `solvePart` does.
 */
export function plateStiffness(
  placed: Mesh,
  { youngsGPa, thicknessMm }: PlateStock,
  load: LoadCase,
  settings: GeometrySettings,
  cellMm: number,
): number | null {
  if (Math.abs(load.direction[2]) < 0.99) return null
  let heightMm = 0
  for (let i = 2; i < placed.positions.length; i += 3) {
    heightMm = Math.max(heightMm, placed.positions[i]!)
  }
  const pressed = thicknessMm / heightMm
  const positions = placed.positions.slice()
  for (let i = 2; i < positions.length; i += 3) positions[i]! *= pressed
  const press = (grip: Grip): Grip =>
    grip.kind === 'end'
      ? grip
      : {
          kind: 'bores',
          bores: grip.bores.map(({ centreMm: [x, y, z], ...bore }) => ({
            ...bore,
            centreMm: [x, y, z * pressed],
            depthMm: bore.depthMm * pressed,
          })),
        }
  const cells = fillCells({ positions, indices: placed.indices }, [], settings, cellMm)
  const plastic = { youngsMPa: 1000 * youngsGPa, acrossShare: 1 }
  const { deflectionMm } = solvePart({
    cells,
    laid: { plastic, pattern: 'grid', infill: [1] },
    massG: 1,
    load: { ...load, hold: press(load.hold), push: press(load.push) },
    wantTones: false,
  })
  return load.loadN / deflectionMm
}
