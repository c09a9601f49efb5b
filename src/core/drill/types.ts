import type { Neck } from '../mesh/holes/findNecks.ts'
import type { Lies } from '../mesh/holes/numberHoles.ts'
import type { WholeHole } from '../mesh/holes/wholeHoles.ts'
import type { HoleUse } from '../model/drill.ts'
import type { Material, Range } from '../model/figures.ts'
import type { Part } from '../model/frame.ts'

/** A hole with what stands round it. */
export interface WalledHole extends WholeHole {
  /** From its own wall to the nearest other surface; Infinity where there is none. mm */
  readonly wallMm: number
}

/** What is found on a part's mesh, in its own axes and mm. */
export interface PartHoles {
  readonly partId: string
  readonly holes: readonly WalledHole[]
  readonly necks: readonly Neck[]
}

export interface DrillPart {
  readonly part: Part
  readonly material: Material
  readonly found: PartHoles
}

/** How it is known what a hole is for. */
export type UseKnown = 'joint' | 'chosen' | 'guess'

/** One hole of a part as the drill list has it. */
export interface DrillRow {
  readonly partId: string
  readonly part: string
  /** As on the part's drawing: `2.1`, or `2` where it is alone. */
  readonly number: string
  readonly group: number
  readonly hole: WalledHole
  /** What is drilled: its narrowest part, or the mouth over it that an insert is set into. mm */
  readonly diameterMm: number
  readonly depthMm: number
  readonly lies: Lies
  readonly use: HoleUse
  readonly known: UseKnown
  /** Likely free diameter of the printed hole. mm */
  readonly comesOutMm: Range
  /** What it has to be; null where nothing asks for a size. mm */
  readonly wantedMm: number | null
  /** The drill to fetch; null where none is needed or none is that wide. mm */
  readonly drillMm: number | null
  /** Of the wall round it once it is drilled. */
  readonly leftMm: number
  readonly leftLines: number
  /** Enough of it stands. */
  readonly stands: boolean
  /**
   * How it is known, and what it is like. Metric, in sentences; `toldWords` puts them into the
   * reader's units.
   */
  readonly told: readonly string[]
  /** What is to be minded, in the same way. */
  readonly notes: readonly string[]
}
