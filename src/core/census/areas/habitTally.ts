import type { HabitVolumes } from '../../model/census.ts'
import type { LayerAreas } from './layerAreas.ts'

/** Adds up what hangs on habits. */
export interface HabitTally {
  add(areas: LayerAreas, heightMm: number): void
  /** Strands with nothing beneath, mm³. */
  addAir(mm3: number): void
  finish(): HabitVolumes
}

export function createHabitTally(tie: boolean): HabitTally {
  let heldMm3 = 0
  let overlapMm3 = 0
  let roomOverlapMm3 = 0
  let smallSolidMm3 = 0
  let smallSparseMm3 = 0
  let thinMm3 = 0
  let airMm3 = 0
  return {
    add(areas, heightMm) {
      heldMm3 += areas.heldMm2 * heightMm
      overlapMm3 += areas.overlapMm2 * heightMm
      roomOverlapMm3 += areas.roomOverlapMm2 * heightMm
      smallSolidMm3 += areas.smallSolidMm2 * heightMm
      smallSparseMm3 += areas.smallSparseMm2 * heightMm
      thinMm3 += areas.thinMm2 * heightMm
    },
    addAir(mm3) {
      airMm3 += mm3
    },
    finish: () => ({
      heldMm3,
      overlapMm3,
      roomOverlapMm3,
      smallSolidMm3,
      smallSparseMm3,
      thinMm3,
      airMm3,
      tie,
    }),
  }
}
