import type { Aircraft, DrawnPlace } from './aircraft.ts'
import type { ChosenUse, HoleReading } from './drill.ts'
import type { LengthUnit } from './mesh.ts'
import type { Material, Prices, Printer } from './figures.ts'
import type { ClockTime, LaidReading, WholeWeighing } from './readings.ts'
import type { RunSettings } from './runs.ts'
import type { Pose, Recipe } from './settings.ts'

/** One row of the ledger. The mesh itself is kept apart, under `meshHash`. */
export interface Part {
  readonly id: string
  readonly name: string
  readonly fileName: string
  /** SHA-256 of the file's bytes, lower-case hex. */
  readonly meshHash: string
  /**
   * Unit the coordinates are taken in. 3MF states it; for STL and OBJ millimetre until the user
   * says otherwise.
   */
  readonly unit: LengthUnit
  readonly quantity: number
  readonly spares: number
  /** How many of `quantity` are mirrored copies; they weigh the same. */
  readonly mirrored: number
  readonly materialId: string
  readonly recipe: Recipe
  /**
   * The preset the recipe came from, or whose duty a role of one's own has; null once edited by
   * hand.
   */
  readonly role: RoleId | null
  /** Id of the role of one's own that the recipe came from; left out where it came from none. */
  readonly ownRole?: string
  readonly pose: Pose
  readonly note: string
  /** Regions with an infill of their own. Where two overlap, the later one holds. */
  readonly zones: readonly PartZone[]
  /**
   * Where the build of a 3MF puts the pieces; left out where the file does not say. They become
   * places only when chosen.
   */
  readonly drawnPlaces?: readonly DrawnPlace[]
  /** Loose bodies thinner than a line stay in; without it they are left out (see `findHairs`). */
  readonly keepsHairs?: boolean
  /**
   * All layers are counted, however long it takes; without it figures are coarse past some seconds
   * (see `core/census/budget`).
   */
  readonly countsFully?: boolean
  /** What a scale said of one piece; left out where none was weighed. */
  readonly weighIn?: WeighIn
  /** What its builder said holes of it are for; left out where nobody said anything. */
  readonly holeUses?: readonly ChosenUse[]
}

/**
 * A weighing, and what was weighed. While that is still what the part is, the scale stands for it;
 * see `core/frame/weighIn`.
 */
export interface WeighIn {
  /** One piece, supports and brim off; the mean where several lay on the scale; above zero. */
  readonly massG: number
  /** How many lay on the scale together; left out, one. */
  readonly pieces?: number
  /** What lay on the scale besides and is taken off already; left out, nothing. */
  readonly tareG?: number
  /** Its user stands by it, however odd it looks. */
  readonly trusted?: boolean
  /** The smallest step the scale shows; null where nobody said. */
  readonly stepG: number | null
  /** The day, ISO 8601; null where nobody said. */
  readonly date: string | null
  readonly of: WeighedPiece
  /**
   * What was calculated for that piece, which `massG` is held against later; null while its layers
   * were not counted.
   */
  readonly calculatedG: number | null
}

/** Everything a piece's mass depends on, as it was when it was weighed. */
export interface WeighedPiece {
  readonly meshHash: string
  readonly unit: LengthUnit
  readonly pose: Pose
  readonly recipe: Recipe
  readonly zones: readonly Omit<PartZone, 'fileName'>[]
  readonly materialId: string
  /** The material's flow then; a density typed later does not change what was weighed. */
  readonly flow: number
  readonly printerId: string
}

/**
 * A mesh drawn in the part's own place and unit: rooms inside it get its infill. Walls and skins
 * stay as they are.
 */
export interface PartZone {
  readonly fileName: string
  /** SHA-256 of the file's bytes, lower-case hex. */
  readonly meshHash: string
  /** 0–100. */
  readonly infillPct: number
}

export type RoleId = 'arm' | 'plate' | 'mount' | 'soft' | 'wing-skin'

/** A recipe that its user gave a name. */
export interface OwnRole {
  readonly id: string
  readonly name: string
  /** What parts of it have to do, where that is known. */
  readonly duty: RoleId | null
  readonly recipe: Recipe
}

/** How one part is printed. */
export interface PartWay {
  readonly recipe: Recipe
  readonly materialId: string
}

/**
 * Other ways to print the parts, kept beside what stands. A part it does not name stays as it is.
 */
export interface Variant {
  readonly id: string
  readonly name: string
  /** By part id. */
  readonly ways: Readonly<Record<string, PartWay>>
}

/** A frame to compare with, as bought. */
export interface CarbonFrame {
  readonly massG: number
  readonly price: number
}

/** Everything a project file holds besides the meshes. */
export interface Frame {
  readonly version: 8
  readonly id: string
  readonly name: string
  readonly parts: readonly Part[]
  /** Materials the user added or changed; they shadow the built-in ones by id. */
  readonly materials: readonly Material[]
  /** Roles of the user's own; left out where there are none. */
  readonly roles?: readonly OwnRole[]
  readonly printer: Printer
  /** Others that print it beside `printer`, none of the same id; left out where there are none. */
  readonly printers?: readonly Printer[]
  readonly prices: Prices
  readonly carbon: CarbonFrame | null
  readonly aircraft: Aircraft
  /**
   * Everything printed, or everything that flies, on one scale; left out where nobody weighed it.
   */
  readonly wholes?: readonly WholeWeighing[]
  /** What the clock said of prints; left out where nobody timed one. */
  readonly clocks?: readonly ClockTime[]
  /** What printer's files lay of its parts; left out where none was taken as a reading. */
  readonly laid?: readonly LaidReading[]
  /** What pins and callipers said of printed holes; left out where nobody measured one. */
  readonly holeReadings?: readonly HoleReading[]
  /** How its pieces are printed together; left out, as people start with. */
  readonly runs?: RunSettings
  /**
   * Kept to be weighed against what stands, at most `VARIANTS_MOST`; left out where there are none.
   */
  readonly variants?: readonly Variant[]
}
