import type { Bead } from '../model/habits.ts'
import { ROUND_LACK } from '../model/habits.ts'
import type { Pattern } from '../model/settings.ts'
import type { LineKind, LineMeasure, SeenHabits, SeenLayer, SeenRecipe } from '../model/toolpath.ts'

/** What the layers added up to, before it is read as a recipe. */
export interface RecipeEvidence {
  readonly layers: readonly SeenLayer[]
  readonly kinds: Readonly<Record<LineKind, LineMeasure>>
  /** Width of the first layer's lines; null where there were none. mm */
  readonly firstWidthMm: number | null
  /** mm of outline by number of wall lines; see `WallCount`. */
  readonly filled: Float64Array
  readonly thin: Float64Array
  /** Cells of columns by number of solid layers; see `SkinCount`. */
  readonly bottom: Float64Array
  readonly under: Float64Array
  readonly top: Float64Array
  readonly cellMm2: number
  /** Of the rooms' cores: volume, and plastic that lies in it. mm³ */
  readonly coreMm3: number
  readonly coreDepositMm3: number
  /** Of infill lines in them. mm */
  readonly coreLengthMm: number
  readonly pattern: Pattern | null
  /** See `OverlapSeen`, `StrandSeen` and `BeadSeen`. */
  readonly overlapMm: number | null
  readonly strandShare: number | null
  readonly bead: Bead | null
  /** What the printer's lines are known to be where the moves do not tell. */
  readonly knownBead: Bead | null
  /** See `SmallRooms`. mm² */
  readonly leastRoomMm2: number | null
  /** See `SkinBands`. */
  readonly bandMm: (skins: number) => number | null
}

/**
 * A count that another with more evidence beats, but that has so much of its evidence, is the one
 * meant.
 */
const WALLS_SHARE = 0.6
/**
 * Skins only grow, over slopes and inner steps: the least count with this share of the commonest.
 */
const SKINS_SHARE = 0.4
/** Skins under less than this may be chance, unless nearly all agree. mm² */
const SKINS_MM2 = 150
const SKINS_FEW_MM2 = 15
const SKINS_AGREE = 0.8
/** Rooms smaller than this in all have skins by chance. mm³ */
const CORE_MM3 = 6
/** Less infill than this, away from walls, says little of its share. mm */
const CORE_LINES_MM = 40

/** Reads the recipe off the evidence; null for what it does not tell. */
export function recipeSeen(evidence: RecipeEvidence): SeenRecipe {
  const { layers, coreMm3, coreDepositMm3, coreLengthMm } = evidence
  const [first] = layers
  const roomy = coreMm3 >= CORE_MM3
  const filled = roomy && coreLengthMm >= CORE_LINES_MM
  return {
    layerMm: commonHeight(layers.slice(1)),
    firstLayerMm: first ? toMicron(first.heightMm) : null,
    lineMm: lineOf(evidence),
    walls: wallsOf(evidence),
    topSkins: roomy ? skinsOf(evidence.top, evidence.cellMm2) : null,
    bottomSkins: roomy ? bottomOf(evidence) : null,
    infillPct: filled ? Math.round((1000 * coreDepositMm3) / coreMm3) / 10 : null,
    pattern: filled ? evidence.pattern : null,
  }
}

/** Widths of the kinds against the line width, and what else the moves tell. */
export function habitsSeen(evidence: RecipeEvidence): SeenHabits {
  const { kinds, firstWidthMm, overlapMm, strandShare, bead, leastRoomMm2, layers } = evidence
  const line = lineOf(evidence)
  if (line === null) return {}
  const lackMm = lackOf(evidence)
  const firstLackMm = isRound(evidence) ? ROUND_LACK * (layers[0]?.heightMm ?? 0) : 0
  const share = (fillsMm: number | null, lacksMm = lackMm): number | null =>
    fillsMm === null ? null : toMicron((fillsMm + lacksMm) / line)
  const shares = {
    outerWidthShare: share(kinds.outer.widthMm),
    innerWidthShare: share(kinds.inner.widthMm),
    skinWidthShare: share(kinds.skin.widthMm),
    infillWidthShare: share(kinds.infill.widthMm),
    firstWidthShare: share(firstWidthMm, firstLackMm),
    overlapShare: share(overlapMm, 0),
    strandShare: strandShare === null ? null : toMicron(strandShare),
    smallRoomMm2: leastRoomMm2,
  }
  const known = Object.entries(shares).filter(([, value]) => value !== null)
  const gaps = kinds.gap.volumeMm3 > 0 ? { gapLines: true } : {}
  const ends = bead === null ? {} : { bead }
  return {
    ...(Object.fromEntries(known) as SeenHabits),
    ...ends,
    ...gaps,
    ...bandsOf(evidence),
    ...undersidesOf(evidence),
  }
}

/** Bands under slopes and steps and what wider bare places are held by are not told apart. */
function bandsOf(evidence: RecipeEvidence): Pick<SeenHabits, 'holdMm' | 'slopeBandMm'> {
  const skins = skinsOf(evidence.top, evidence.cellMm2)
  const bandMm = skins === null || evidence.coreMm3 < CORE_MM3 ? null : evidence.bandMm(skins)
  if (bandMm === null) return {}
  // Never −0, which no saved file gives back.
  const told = Math.max(0, Math.round(10 * bandMm) / 10)
  return { slopeBandMm: told, holdMm: told }
}

/** Skins on the bed; of a part that has none there, those over its undersides in the air. */
function bottomOf({ bottom, under, cellMm2 }: RecipeEvidence): number | null {
  return skinsOf(bottom, cellMm2) ?? skinsOf(under, cellMm2)
}

/**
 * Told only by a part with rooms over the bed, over an underside and under a top, if top and bottom
 * differ.
 */
function undersidesOf(evidence: RecipeEvidence): Pick<SeenHabits, 'undersides'> {
  const { bottom, under, top, cellMm2, coreMm3 } = evidence
  if (coreMm3 < CORE_MM3) return {}
  const onBed = skinsOf(bottom, cellMm2)
  const onTop = skinsOf(top, cellMm2)
  const inAir = skinsOf(under, cellMm2)
  if (onBed === null || onTop === null || onTop <= onBed) return {}
  if (inAir === onTop) return { undersides: 'most' }
  return inAir === onBed ? { undersides: 'bottom' } : {}
}

function isRound({ bead, knownBead }: RecipeEvidence): boolean {
  return (bead ?? knownBead) === 'round'
}

/** What a line is wider than its plastic fills. mm */
function lackOf(evidence: RecipeEvidence): number {
  return isRound(evidence) ? ROUND_LACK * (commonHeight(evidence.layers.slice(1)) ?? 0) : 0
}

/** The width that walls have by length; without walls, that of the skins. */
function lineOf(evidence: RecipeEvidence): number | null {
  const { outer, inner, skin } = evidence.kinds
  const lackMm = lackOf(evidence)
  const walls = [outer, inner].filter(({ widthMm }) => widthMm !== null)
  const lengthM = walls.reduce((sum, each) => sum + each.lengthM, 0)
  if (lengthM === 0) return skin.widthMm === null ? null : toMicron(skin.widthMm + lackMm)
  const widthM = walls.reduce((sum, each) => sum + each.lengthM * (each.widthMm ?? 0), 0)
  return toMicron(widthM / lengthM + lackMm)
}

function wallsOf({ filled, thin }: RecipeEvidence): number | null {
  const most = Math.max(...filled)
  if (most > 0) return filled.findLastIndex((weight) => weight >= WALLS_SHARE * most)
  const back = thin.indexOf(Math.max(...thin))
  return back > 0 ? Math.ceil(back / 2) : null
}

function skinsOf(cells: Float64Array, cellMm2: number): number | null {
  const all = cells.reduce((sum, each) => sum + each, 0)
  const most = Math.max(...cells)
  const allMm2 = all * cellMm2
  const agree = most >= SKINS_AGREE * all
  if (allMm2 < (agree ? SKINS_FEW_MM2 : SKINS_MM2)) return null
  // A single layer between air and room is mostly a corner of a wall.
  if (agree) return cells.indexOf(most)
  return cells.findIndex((count, layers) => layers > 1 && count >= SKINS_SHARE * most)
}

/** The height that most plastic is laid at. */
function commonHeight(layers: readonly SeenLayer[]): number | null {
  const deposits = new Map<number, number>()
  for (const { heightMm, depositMm3 } of layers) {
    const height = toMicron(heightMm)
    deposits.set(height, (deposits.get(height) ?? 0) + depositMm3)
  }
  const [most] = [...deposits].sort(([, a], [, b]) => b - a)
  return most ? most[0] : null
}

const toMicron = (lengthMm: number): number => Math.round(1000 * lengthMm) / 1000
