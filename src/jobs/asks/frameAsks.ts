import type { Shared } from '../../core/joints/clashes.ts'
import type { JoinablePart } from '../../core/joints/equalPatterns.ts'
import type { JointOffer } from '../../core/joints/offerJoints.ts'
import type { LoosePiece, Meeting, Way } from '../../core/joints/waysFor.ts'
import type { Repeat } from '../../core/joints/repeatWay.ts'
import type { ItemBody } from '../../core/model/aircraft.ts'
import type { LengthUnit, Vec3 } from '../../core/model/mesh.ts'
import type { LineDrawing, Motion, Sheet, View } from '../../core/drawing/types.ts'
import type { MeshSource } from './fileAsks.ts'
import type { PartHoles } from '../../core/drill/types.ts'
import type { PieceOutline, Unfit } from '../../core/runs/types.ts'
import type { PlannedRun, RunPart, RunWorkshop } from '../../core/runs/planBeds.ts'
import type { Pose } from '../../core/model/settings.ts'
import type { RigidMap } from '../../core/mesh/rigidMaps.ts'
import type { RunWay } from '../../core/model/runs.ts'

/** A view of the whole frame in lines. */
export interface DrawAsk {
  readonly kind: 'draw'
  readonly parts: readonly DrawPart[]
  readonly view: View
  readonly sheet: Sheet
  /** How far the pieces stand apart, 0–1. */
  readonly apart: number
  /** Along each side of a px: 1 while it turns, 2 to keep. */
  readonly samples: 1 | 2
  /** Pieces that are not there, drawn by themselves at the same scale and place. */
  readonly ghosts: readonly DrawPart[]
  /** Bodies of bought things, which hide nothing of what is printed; they go apart with it. */
  readonly bought: readonly BoughtDrawPart[]
}

/** Propellers hide nothing of what they turn on. */
export interface BoughtDrawPart extends DrawPart {
  readonly isSwept: boolean
}

export interface DrawPart {
  /** Id of the part, or of the bought thing. */
  readonly item: string
  readonly source: MeshSource
  readonly unit: LengthUnit
  /** Where each placed piece goes, from the mesh's own unit. */
  readonly motions: readonly Motion[]
  /**
   * Which way each of them goes when all is drawn apart; null where no joint tells. Left out where
   * none has one.
   */
  readonly ways?: readonly (Vec3 | null)[]
  /** Pieces without a place. */
  readonly looseCount: number
}

/** What is drawn, and what could not be. */
export interface DrawAnswer {
  /** Null when there is nothing to draw. */
  readonly drawing: LineDrawing | null
  /** Ids of parts whose mesh could not be read. */
  readonly left: readonly string[]
  /** The pieces without a place, which lie in rows; null where all have one. */
  readonly loose: LooseRow | null
  /** The ghosts, on the same sheet; null without any. */
  readonly ghost: LineDrawing | null
  /** Bought things, on the same sheet; null without any. */
  readonly bought: LineDrawing | null
}

export interface LooseRow {
  /** Ids of their parts, each once. */
  readonly items: readonly string[]
  /** Left, top, right, bottom of all of them, px. */
  readonly boxPx: readonly [number, number, number, number]
}

/** Ways in which the parts of a frame could be joined. */
export interface OffersAsk {
  readonly kind: 'offers'
  readonly parts: readonly OffersPart[]
}

export interface OffersPart {
  readonly partId: string
  readonly source: MeshSource
  readonly unit: LengthUnit
  /** How many of it fly, and how many of those are mirror images. */
  readonly pieces: number
  readonly mirrored: number
  /** Of something bought. */
  readonly body?: ItemBody
}

export interface OffersAnswer {
  readonly offers: readonly JointOffer[]
  /** What of each part can be joined, by part id. */
  readonly shapes: Readonly<Record<string, JoinablePart>>
  /** Ids of parts whose mesh could not be read. */
  readonly left: readonly string[]
}

/** How much of some pieces is in each other, and where. */
export interface ClashesAsk {
  readonly kind: 'clashes'
  readonly pieces: readonly {
    readonly source: MeshSource
    readonly unit: LengthUnit
    /** Where it goes, in mm, from the axes it was drawn in. */
    readonly motion: RigidMap
  }[]
  /** Places in `pieces`. */
  readonly pairs: readonly (readonly [one: number, other: number])[]
}

export interface ClashesAnswer {
  /** Pair by pair. */
  readonly shared: readonly Shared[]
}

/** Ways for one loose piece to be joined to what stands. */
export interface WaysAsk {
  readonly kind: 'ways'
  readonly loose: LoosePiece
  readonly frame: Meeting
  /** Told apart by it: offers and shapes of one id are the same. */
  readonly offersId: string
}

export interface WaysAnswer {
  readonly ways: readonly Way[]
}

/** How a way can be repeated with further loose pieces of its part. */
export interface RepeatsAsk {
  readonly kind: 'repeats'
  readonly way: Way
  readonly others: readonly LoosePiece[]
  readonly frame: Meeting
  readonly offersId: string
}

export interface RepeatsAnswer {
  readonly repeats: readonly Repeat[]
}

/** Holes of the parts of a frame, with what stands round them. */
export interface HolesAsk {
  readonly kind: 'holes'
  readonly parts: readonly Pick<OffersPart, 'partId' | 'source' | 'unit'>[]
}

/** A part whose mesh cannot be read is left out. */
export type HolesAnswer = readonly PartHoles[]

/** A frame's pieces to be laid into print runs. */
export interface RunsAsk {
  readonly kind: 'runs'
  readonly parts: readonly RunsPart[]
  readonly workshop: RunWorkshop
  /** The ways to divide the pieces that are asked for. */
  readonly ways: readonly RunWay[]
  /** Whether each part is drawn from above. */
  readonly draws: boolean
}

export interface RunsPart extends Omit<RunPart, 'outline'> {
  readonly source: MeshSource
  readonly unit: LengthUnit
  readonly pose: Pose
  readonly supportAngleDeg: number
}

export interface RunsAnswer {
  /** The ways that were asked for; none where there are too many pieces. */
  readonly ways: Readonly<Partial<Record<RunWay, readonly PlannedRun[]>>>
  readonly unfit: readonly Unfit[]
  /** From above, turned by nothing, and the bed it covers; by part, empty unless asked for. */
  readonly plans: Readonly<Record<string, PiecePlan>>
}

export interface PiecePlan {
  readonly drawing: LineDrawing
  readonly outline: PieceOutline
}
