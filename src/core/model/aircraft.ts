import type { Joint, JointThread } from './joints.ts'
import type { Vec3 } from './mesh.ts'

/** How a mass is known, in the order of trust; terms as in AIAA S-120A-2015. */
export type MassStatus = 'estimated' | 'calculated' | 'weighed'

/** How the mass of an item came about. */
export type MassBasis = 'published' | 'computed' | 'memory' | 'typed'

export type ItemGroup =
  'fasteners' | 'structure' | 'drive' | 'power' | 'electronics' | 'payload' | 'other'

/**
 * What a bought thing is to what it meets: a motor has windings above its screws, a board is bare,
 * a propeller is a disc it sweeps.
 */
export type BodyKind = 'motor' | 'board' | 'camera' | 'pack' | 'prop' | 'other'

/** Holes that a bought thing is held by. mm */
export interface BodyHoles {
  /**
   * Of four in its underside: sides of a rectangle, or distances across a cross; `sides`: one in
   * each side.
   */
  readonly layout: 'rectangle' | 'cross' | 'sides'
  readonly aMm: number
  readonly bMm: number
  readonly thread: JointThread
  /** Of thread before a screw meets what is behind it; null where the screws go right through. */
  readonly depthMm: number | null
}

/**
 * The simple body of a bought thing, in axes of its own: x along it, y across, z out of its top,
 * the origin in the middle of its underside.
 */
export interface ItemBody {
  readonly kind: BodyKind
  /** Along, across and high; of a motor and a propeller both level ones are its diameter. mm */
  readonly sizeMm: Vec3
  /** Null where none is bolted: it lies on its face, by strap, pad or tape. */
  readonly holes: BodyHoles | null
  /** Of a motor's shaft out of its top, or of a propeller's bore; 0 without. mm */
  readonly shaftMm: number
}

/** Something bought, not printed: a screw, a rod, a motor, the camera. */
export interface Item {
  readonly id: string
  readonly name: string
  readonly group: ItemGroup
  readonly quantity: number
  /** Of one piece. */
  readonly massG: number
  readonly costEach: number
  readonly status: MassStatus
  readonly basis: MassBasis
  /**
   * Where it sits; null when nobody said. mm, in the frame's own axes (x forward, y to the left, z
   * up).
   */
  readonly positionMm: Vec3 | null
  /**
   * Where each piece sits that has a place: only of lines that follow from joints, which are kept
   * nowhere.
   */
  readonly sitesMm?: readonly Vec3[]
  /** The hole pattern it is bolted by, as "30.5 × 30.5"; left out where nobody said. */
  readonly boltPattern?: string
  /** By which joints hold it; left out where it is only a mass. */
  readonly body?: ItemBody
}

/** Mass added for what is not known yet, % of the basic mass, by status. */
export interface GrowthAllowance {
  readonly estimatedPct: number
  readonly calculatedPct: number
  readonly weighedPct: number
}

/** A mass at which rules change. Below means strictly below. */
export interface MassLine {
  readonly id: string
  readonly name: string
  readonly thresholdG: number
  /** What changes there, in one sentence. */
  readonly meaning: string
  /** The day it was read, ISO 8601. */
  readonly readOn: string
  readonly source: string
}

/**
 * One piece of a part in its place on the frame; mirrored first (in x), then turned about x, y, z,
 * then moved.
 */
export interface Place {
  readonly partId: string
  readonly positionMm: Vec3
  readonly rotateDeg: Vec3
  readonly mirrored: boolean
}

/**
 * Where a file puts one piece, from where its mesh lies, in the part's own unit; mirrored, turned
 * and moved like `Place`.
 */
export interface DrawnPlace {
  readonly position: Vec3
  readonly rotateDeg: Vec3
  readonly mirrored: boolean
}

/** What makes a multirotor hover. */
export interface FlightSetup {
  readonly motors: number
  /** Of one motor at full throttle. g */
  readonly motorThrustG: number
  readonly propDiameterMm: number
  readonly packCells: number
  readonly packMah: number
  /** Nominal, not charged. */
  readonly voltsPerCell: number
  /** Share of the pack flown before landing, 0–1. */
  readonly usableShare: number
  /** Camera, video, controller. */
  readonly avionicsW: number
  /** Distance of a motor from the middle. mm */
  readonly motorRadiusMm: number
  /** Of one propeller; left out, two. */
  readonly blades?: Blades
  /** Propellers in pairs on one axis, one above the other; left out, side by side. */
  readonly coaxial?: boolean
  /** A hover that was timed; left out where none was. */
  readonly flown?: FlownHover
}

export type Blades = 2 | 3 | 4

/** A timed hover, with the aircraft as it then was. */
export interface FlownHover {
  readonly minutes: number
  /** Taken from the pack. */
  readonly usedWh: number
  readonly auwG: number
  readonly motors: number
  readonly propDiameterMm: number
  /** As in `FlightSetup`. */
  readonly coaxial?: boolean
}

/** What a plane is judged by. */
export interface WingSetup {
  readonly areaDm2: number
  /** Tip to tip; left out while nobody typed it. */
  readonly spanMm?: number
  /** Level flight speed to reckon with; left out while nobody typed it. */
  readonly cruiseMS?: number
  /** Drag coefficient of the whole plane without lift, on its wing area; left out, an estimate. */
  readonly dragCoefficient?: number
  readonly meanChordMm: number
  /** Leading edge of the mean chord, on the frame's x axis (forward positive). mm */
  readonly leadingEdgeMm: number
  /** Where the balance point may lie, behind the leading edge. mm */
  readonly balanceMm: readonly [low: number, high: number]
  /** Where a nose weight would sit, forward of the middle; left out while nobody typed it. mm */
  readonly noseMm?: number
}

export type PlateId = 'carbon' | 'g10' | 'plywood' | 'aluminium'

/** How the flat parts would be cut from plate. */
export interface TwinSetup {
  readonly plate: PlateId
  /** Thickness by part id, mm; a part not named gets the thickness of equal bending stiffness. */
  readonly thicknessMm: Readonly<Record<string, number>>
  /**
   * Length of an arm that is free to swing, by part id, mm; of an arm not named a share of its own
   * length.
   */
  readonly freeMm?: Readonly<Record<string, number>>
  readonly platePricePerDm2: number
  readonly cutPricePerM: number
  readonly deliveryDays: number
}

/** A season of flying and breaking. */
export interface SeasonSetup {
  readonly flights: number
  readonly crashesPerFlight: number
  /**
   * Chance that one crash breaks one piece of the part, by part id; a part not named never breaks.
   */
  readonly breakShare: Readonly<Record<string, number>>
  /** Days until a carbon part is there. */
  readonly carbonLeadDays: number
  readonly carbonPartPrice: number
  /** How often a carbon part breaks where the printed one would, 0–1; left out, 1. */
  readonly carbonBreakFactor?: number
}

/** Everything about the aircraft beyond its printed parts. */
export interface Aircraft {
  readonly items: readonly Item[]
  readonly growth: GrowthAllowance
  /** The builder's own limit for the whole aircraft; null for none. g */
  readonly limitG: number | null
  /** The builder's own limit for the printed pieces that fly; null for none. g */
  readonly printedLimitG: number | null
  readonly massLines: readonly MassLine[]
  /** As typed; where pieces really are follows from these and from the joints. */
  readonly places: readonly Place[]
  readonly joints: readonly Joint[]
  readonly flight: FlightSetup | null
  readonly wing: WingSetup | null
  readonly twin: TwinSetup
  readonly season: SeasonSetup
}
