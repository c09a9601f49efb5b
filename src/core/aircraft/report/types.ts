import type { PlateId } from '../../model/aircraft.ts'
import type { FrameBalance } from '../balance/frameBalance.ts'
import type { PartMoments } from '../balance/partMoments.ts'
import type { WingBalance } from '../balance/wingBalance.ts'
import type { Census } from '../../model/census.ts'
import type { Range } from '../../model/figures.ts'
import type { BoreMark } from '../../model/joints.ts'
import type { Bounds } from '../../model/mesh.ts'
import type { Cruise } from '../flight/cruise.ts'
import type { HoverFigures } from '../flight/hover.ts'
import type { WingLoading } from '../flight/wing.ts'
import type { LineStanding } from '../../frame/crossings.ts'
import type { CostBlame } from '../../frame/costBlame.ts'
import type { MassOdds } from '../../frame/odds.ts'
import type { FrameRow, FrameSum } from '../../frame/types.ts'
import type { BreakCosts } from '../season/breakEven.ts'
import type { SeasonSide } from '../season/side.ts'
import type { Flatness } from '../twin/flatness.ts'
import type { ArmShake } from '../twin/armShake.ts'
import type { NoBeam, PartSections } from '../../stiffness/part/sections.ts'
import type { FlatTwin } from '../twin/flatTwin.ts'
import type { JointFinding } from './jointFindings.ts'
import type { PlateOutline } from '../twin/outline.ts'
import type { FrameSides } from '../twin/sides.ts'

/**
 * What the aircraft needs of a mesh besides its census: a few dozen numbers and ten a bore, free to
 * send.
 */
export interface PartTraits {
  /** As the part lies on the bed, in mm; null where a cut half-way up meets nothing. */
  readonly outline: Pick<
    PlateOutline,
    'areaMm2' | 'cutLengthMm' | 'sheetMm' | 'longDeg' | 'crossing'
  > | null
  /** In the axes the part was drawn in, mm. */
  readonly moments: PartMoments
  /** Its round bores, in the same axes, mm. */
  readonly bores: readonly BoreMark[]
  /** The box it fills, in the same axes, mm. */
  readonly boxMm: Bounds
}

/** What is known of a part's mesh besides its figures. */
export interface PartLook {
  /** Null while the layers are not counted: no twin then, and the mass is spread evenly. */
  readonly census: Census | null
  /** Null while the mesh is not at hand: no twin and no place in the balance then. */
  readonly traits: PartTraits | null
  /** As a beam, where it was looked at; arms with a typed free length are. */
  readonly sections?: PartSections | NoBeam | null
  /** First tone by its solid model, with what sits at its tip, Hz; arms are solved. */
  readonly solidHz?: Range | null
  /**
   * Bending stiffness by the solid model, N·m² per metre of width: that of a plate of its outline
   * that gives as much where it is pushed; left out where nobody solved it.
   */
  readonly solidBendingNm?: number | undefined
}

/** A part of the frame with everything known about one piece of it. */
export interface ReportPart extends FrameRow, PartLook {}

/** The chance to end under one line. */
export interface OddsEntry {
  /** `limit` for the builder's own, else the id of the mass line. */
  readonly id: string
  readonly name: string
  readonly odds: MassOdds
}

/** Whether a printed part could be cut from plate, and what it would then be. */
export interface TwinEntry {
  readonly partId: string
  readonly name: string
  /** Pieces that fly. */
  readonly quantity: number
  readonly kind: Flatness['kind']
  readonly words: string
  /** What its equal stiffness is reckoned by: strips of its layers, or its solid model. */
  readonly by: 'layers' | 'solid'
  /** Of one piece; null for a part that stays printed. */
  readonly twin: FlatTwin | null
}

export interface TwinReport {
  readonly plate: PlateId
  /** Every part whose layers were counted, in the order of the frame. */
  readonly parts: readonly TwinEntry[]
  readonly sides: FrameSides
  /**
   * Arms that could be cut, and parts with a typed free length; none for a plane and without
   * motors.
   */
  readonly arms: readonly ArmShake[]
}

/** Money after so many broken pieces of the part that breaks most. */
export interface BreakReport {
  readonly partId: string
  readonly name: string
  readonly printed: BreakCosts
  readonly carbon: BreakCosts
  /**
   * What one piece cut from plate costs, where the carbon piece is a bought one; null where it is
   * that itself or stays printed.
   */
  readonly cutPiece: number | null
  /** Least number of broken pieces from which on that frame has cost less; null for never. */
  readonly printedCheaperFrom: number | null
  readonly carbonCheaperFrom: number | null
}

export interface SeasonReport {
  readonly printed: SeasonSide
  /** Null where there is neither a bought frame nor a part that could be cut. */
  readonly carbon: SeasonSide | null
  /** Which carbon frame it is: the bought one where the frame has one. */
  readonly carbonFrame: 'bought' | 'cut' | null
  /** Null without a carbon frame and while no part is said to break. */
  readonly breaks: BreakReport | null
}

export interface WingReport {
  /** Null without a wing area. */
  readonly loading: WingLoading | null
  /** Null while nothing has a place. */
  readonly balance: WingBalance | null
  readonly cruise: Cruise
}

export type CautionCode =
  | 'parts-missing'
  | 'parts-by-scale'
  | 'plate-dust'
  | 'props'
  | 'pack'
  | 'first-flight'
  | 'rules'
  | 'not-placed'

/** Said where a decision is made. `code` is stable; `message` is not. */
export interface Caution {
  readonly code: CautionCode
  readonly message: string
}

/**
 * The whole aircraft, as page and command line show it. Each block is worked out when it is first
 * read.
 */
export interface AircraftReport {
  readonly sum: FrameSum
  /** Where the basic mass stands, in the order of the mass lines. */
  readonly standings: readonly LineStanding[]
  /** For the builder's own limit, where there is one, then for every mass line. */
  readonly odds: readonly OddsEntry[]
  readonly twin: TwinReport
  readonly season: SeasonReport
  /** Null until a part or an item has a place. */
  readonly balance: FrameBalance | null
  /** Null for an aircraft without wing. */
  readonly wing: WingReport | null
  /** At the basic mass; null without a complete flight set-up, and for a plane. */
  readonly flight: HoverFigures | null
  /** What carries the doubt of the printed parts' cost, spares included. */
  readonly costBlame: readonly CostBlame[]
  readonly cautions: readonly Caution[]
  /** The order of assembly, a sentence a step; empty without joints. */
  readonly assembly: readonly string[]
  /** What is left over or wrong where pieces are joined. */
  readonly jointFindings: readonly JointFinding[]
}
