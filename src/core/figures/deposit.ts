import type { Census } from '../model/census.ts'
import { habitsOf } from '../model/habits.ts'
import type { LaidRecipe, Recipe } from '../model/settings.ts'
import type { Rooms } from './infill.ts'
import { infillLaid, roomsOf } from './infill.ts'

/**
 * Plastic laid for one piece by kind, mm³, as the space it fills on the part (before a foaming
 * flow).
 */
export interface Deposit {
  readonly wallMm3: number
  /** The part of `wallMm3` in gap lines. */
  readonly gapMm3: number
  readonly skinMm3: number
  /** The part of `skinMm3` that is laid as strands. */
  readonly strandMm3: number
  /** Rooms that infill is laid in, those of zones with them. */
  readonly roomMm3: number
  readonly infillMm3: number
  /** Of `infillMm3` what does not lie line beside line: all of it at next to 0 %, none at 100 %. */
  readonly sparseMm3: number
  /** Of walls, skins and infill, what lies line beside line. */
  readonly packedMm3: number
  /** Of walls and skins, what lies in the first layer. */
  readonly firstMm3: number
  /** The part of `infillMm3` that lies in turns. */
  readonly turnMm3: number
  /** The part of `turnMm3` that lies there only if line ends are joined as usual: nobody said. */
  readonly unsureTurnMm3: number
  readonly supportMm3: number
  /** How much more or less of it there may be, for layers that were not counted. */
  readonly unsureSupportMm3: number
  readonly brimMm3: number
}

/**
 * How much of a support column is plastic (common practice, no source): half to twice that is its
 * range, `SUPPORT` in doubt/factors.ts. Nothing was measured: none of the 27 toolpaths of
 * ../shared/toolpaths has supports. By arithmetic, lines of 0.4 mm 2 to 4 mm apart are 0.1 to 0.2
 * of a column; one line around a column of 10 mm adds 0.16, and two dense layers on top of 50 add
 * 0.03.
 */
export const SUPPORT_SHARE = 0.15

/**
 * From this infill share on, strands lose their thickness; lines that touch hold what lies on them.
 */
const STRANDS_BELOW = 0.5

/**
 * Plastic of a strand ÷ that of a plain line: as the habit says over sparse rooms, less over dense
 * ones, 1 over solid.
 */
function strandOf(recipe: Recipe): number {
  const free = Math.min(1, (1 - recipe.infillPct / 100) / (1 - STRANDS_BELOW))
  return 1 + (habitsOf(recipe).strandShare - 1) * free
}

/** Strands of all layers as they are laid, over sparse rooms and over air. mm³ */
export function laidStrandMm3({ strandMm3, byHabit }: Census, recipe: Recipe): number {
  const { airMm3 } = byHabit
  return strandOf(recipe) * (strandMm3 - airMm3) + habitsOf(recipe).strandShare * airMm3
}

/**
 * Share of wall lines' sides that another line lies against: of N lines the outermost has a free
 * side, and the innermost one as far as the body inside is not `filled` (0–1).
 */
export function packedWallShare(walls: number, filled: number): number {
  return walls > 0 ? 1 - (2 - filled) / (2 * walls) : 0
}

/** Of all rooms; see `Deposit`. */
interface RoomDeposit {
  readonly roomMm3: number
  readonly infillMm3: number
  readonly turnMm3: number
  /**
   * Of rooms and infill, what is taken to lie line beside line: as large a share as the infill's.
   */
  readonly fullMm3: number
  readonly touchingMm3: number
}

function infillIn(all: readonly Rooms[]): RoomDeposit {
  let roomMm3 = 0
  let infillMm3 = 0
  let turnMm3 = 0
  let fullMm3 = 0
  let touchingMm3 = 0
  for (const { census, recipe } of all) {
    const laid = infillLaid(census, recipe)
    const touching = Math.min(1, recipe.infillPct / 100)
    roomMm3 += census.roomMm3
    infillMm3 += laid.infillMm3
    turnMm3 += laid.turnMm3
    fullMm3 += touching * census.roomMm3
    touchingMm3 += touching * laid.infillMm3
  }
  return { roomMm3, infillMm3, turnMm3, fullMm3, touchingMm3 }
}

/**
 * Adds up what the layers hold under a recipe whose geometry settings are those of the census.
 * Of infill its own share is taken to lie line beside line: all of it at 100 %.
 */
export function depositOf(census: Census, recipe: LaidRecipe): Deposit {
  const { layers } = census
  const { roomMm3, infillMm3, turnMm3, fullMm3, touchingMm3 } = infillIn(roomsOf(census, recipe))
  const strandMm3 = laidStrandMm3(census, recipe)
  const inside = census.skinMm3 + roomMm3
  const full = census.skinMm3 + fullMm3
  return {
    wallMm3: census.wallMm3,
    gapMm3: census.gapMm3,
    skinMm3: census.skinMm3 + strandMm3 - census.strandMm3,
    strandMm3,
    packedMm3:
      packedWallShare(recipe.walls, inside > 0 ? full / inside : 0) * census.wallMm3 +
      census.skinMm3 +
      touchingMm3,
    firstMm3: ((layers.wallMm2[0] ?? 0) + (layers.skinMm2[0] ?? 0)) * (layers.heightMm[0] ?? 0),
    roomMm3,
    infillMm3,
    sparseMm3: infillMm3 - touchingMm3,
    turnMm3,
    unsureTurnMm3: recipe.habits?.joinedShare === undefined ? turnMm3 : 0,
    supportMm3: census.supportMm3 * SUPPORT_SHARE,
    unsureSupportMm3: census.coarseSupportMm3 * SUPPORT_SHARE,
    brimMm3: census.brimMm3,
  }
}
