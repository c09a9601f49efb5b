import { DRILLS_MM, NECK_SQUEEZE } from '../data/drills.ts'
import { INSERT_HOLES_MM, SCREW_HOLES, type HoleFit } from '../data/screwHoles.ts'
import type { HoleUse } from '../model/drill.ts'

export interface Wanted {
  /** mm; null where nothing asks for a size. */
  readonly mm: number | null
  /** Of a clearance hole, by ISO 273. */
  readonly fit: HoleFit | null
}

/** A hole is drawn for a fit if it comes this near to it. mm */
const MEANT_MM = 0.06
/**
 * A shaft that slides in by hand needs this much more than its own diameter (common practice, no
 * source). mm
 */
const SLIDE_MM = 0.1

/**
 * How wide a hole has to be: clearance by ISO 273, of the widest fit that it is drawn for and else
 * the fine one; tapping drill for 75 % of thread; what an insert is set into; of a damper its neck
 * less what rubber is squeezed by.
 */
export function wantedSize(use: HoleUse, drawnMm: number): Wanted {
  switch (use.kind) {
    case 'none':
      return { mm: null, fit: null }
    case 'screw': {
      const { clearanceMm } = rowOf(use.thread)
      const fit = (['coarse', 'medium'] as const).find(
        (each) => clearanceMm[each] <= drawnMm + MEANT_MM,
      )
      return { mm: clearanceMm[fit ?? 'fine'], fit: fit ?? 'fine' }
    }
    case 'tapped':
      return { mm: rowOf(use.thread).tappingMm, fit: null }
    case 'insert':
      return { mm: INSERT_HOLES_MM[use.thread], fit: null }
    case 'damper':
      return { mm: Math.round(10 * use.neckMm * (1 - NECK_SQUEEZE.usual)) / 10, fit: null }
    case 'shaft':
      return { mm: use.shaftMm + SLIDE_MM, fit: null }
  }
}

/** The narrowest drill that is at least so wide; null where the table has none. mm */
export function drillFor(wantedMm: number): number | null {
  return DRILLS_MM.find((each) => each >= wantedMm - 0.005) ?? null
}

function rowOf(thread: string): (typeof SCREW_HOLES)[number] {
  const found = SCREW_HOLES.find(({ size }) => size === thread)
  if (found === undefined) throw new RangeError(`No hole table row for ${thread}`)
  return found
}
