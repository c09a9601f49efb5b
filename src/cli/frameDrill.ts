import { drillList } from '../core/drill/drillList.ts'
import { fitChecks, type FitCheck } from '../core/drill/fitChecks.ts'
import { findPartHoles } from '../core/drill/findPartHoles.ts'
import type { DrillRow } from '../core/drill/types.ts'
import { useWords } from '../core/drill/useWords.ts'
import { inMm } from '../core/mesh/inMm.ts'
import type { Frame } from '../core/model/frame.ts'
import type { BedPart } from './frameRuns.ts'

/** One hole of one kind of part. */
export interface DrillReport {
  readonly part: string
  /** As on the part's drawing: alike holes share the number before the point. */
  readonly hole: string
  /** As drawn; width of a slot, flats of a hexagon. */
  readonly diameterMm: number
  readonly depthMm: number
  readonly use: string
  /** The drill to fetch; null where none is needed, or none is that wide. */
  readonly drillMm: number | null
  readonly note: string
}

/** Holes of a frame, reckoned but not told yet. */
export interface FrameHoles {
  readonly rows: readonly DrillRow[]
  readonly checks: readonly FitCheck[]
}

/** Every hole of the parts that could be priced. */
export function holesOfFrame(counted: readonly BedPart[], frame: Frame): FrameHoles {
  const parts = counted.map(({ part, material, outward }) => {
    return { part, material, found: findPartHoles(part.id, inMm(outward, part.unit)) }
  })
  const { printer, aircraft, holeReadings = [] } = frame
  const rows = drillList(parts, aircraft.joints, printer.id, holeReadings)
  return { rows, checks: fitChecks(rows, parts, aircraft.items) }
}

export function drillReports(rows: readonly DrillRow[]): readonly DrillReport[] {
  return rows.map(({ part, number, diameterMm, depthMm, use, drillMm, told, notes }) => ({
    part,
    hole: number,
    diameterMm: rounded(diameterMm),
    depthMm: rounded(depthMm),
    use: useWords(use),
    drillMm,
    note: [...told, ...notes].join(' '),
  }))
}

/** Meshes are good for a thousandth of a mm at best. */
const rounded = (mm: number): number => Math.round(1000 * mm) / 1000
