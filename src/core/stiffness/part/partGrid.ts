import type { Pattern } from '../../model/settings.ts'
import { mixElastic, type Elastic } from '../moduli/elastic.ts'
import { infillElastic, solidElastic, type PlasticModuli } from '../moduli/printedModuli.ts'
import type { SolidGrid } from '../solid/types.ts'
import { readShare, type CellShare } from './cellShares.ts'
import type { PartCells } from './types.ts'

/** What the plastic is, and how sparse it lies. */
export interface Laid {
  readonly plastic: PlasticModuli
  readonly pattern: Pattern
  /** Infill 0–1 outside all zones, then of each zone. */
  readonly infill: readonly number[]
}

export interface PartGrid {
  readonly grid: SolidGrid
  /** By row of the grid's moduli: share of the cell in walls and skins, and plastic in all, 0–1. */
  readonly solidShare: Float64Array
  readonly plasticShare: Float64Array
}

/** Shares are told apart in so many steps: what they are off by is nobody's. */
const STEPS = 32

/** Gives each cell its moduli. */
export function partGrid(cells: PartCells, { plastic, pattern, infill }: Laid): PartGrid {
  const solidMade = solidElastic(plastic)
  const roomMade = infill.map((share) => infillElastic(pattern, share, plastic, cells.turnDeg))
  const rows = new Map<number, number>()
  const moduli: Elastic[] = []
  const solidShare: number[] = []
  const plasticShare: number[] = []
  const into = new Uint16Array(cells.solid.length)
  const share: CellShare = { solid: 0, room: 0, zone: 0 }
  for (let cell = 0; cell < into.length; cell++) {
    if (!readShare(cells, cell, share)) continue
    const { solid, room, zone } = share
    const sparse = roomMade[zone] ?? null
    const roomSteps = sparse === null ? 0 : Math.round(room * STEPS)
    const solidSteps = Math.round(solid * STEPS)
    if (roomSteps + solidSteps === 0) continue
    const key = (zone * (STEPS + 1) + roomSteps) * (STEPS + 1) + solidSteps
    let row = rows.get(key)
    if (row === undefined) {
      const parts: [number, Elastic][] = [[solidSteps / STEPS, solidMade]]
      if (sparse !== null) parts.push([roomSteps / STEPS, sparse])
      row = moduli.push(mixElastic(parts))
      rows.set(key, row)
      solidShare.push(solidSteps / STEPS)
      plasticShare.push(solidSteps / STEPS + (infill[zone]! * roomSteps) / STEPS)
    }
    into[cell] = row
  }
  return {
    grid: { linesMm: cells.linesMm, cells: into, moduli },
    solidShare: Float64Array.from(solidShare),
    plasticShare: Float64Array.from(plasticShare),
  }
}
